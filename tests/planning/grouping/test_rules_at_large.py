"""Two thousand sets of rules: each can hold, with a placement, or names a smallest set that can't."""

from __future__ import annotations

import time
from collections.abc import Sequence
from random import Random

import pytest

from tests.planning.grouping.oracle import rules_can_hold
from trivet.model.roster import PairRule, RuleKind
from trivet.planning.grouping.conflict import conflicting, decide, quick
from trivet.planning.grouping.feasible import Answer
from trivet.planning.grouping.rules import Tables, broken, tables_of, ties_of
from trivet.planning.team_sizes import class_shape

SETS, BLOCKS = 2_000, 8
MIXES = ((5, 2, 1, 1, 0, 0, 0), (5, 1, 1, 0, 1, 1, 3), (2, 3, 2, 3, 0, 0, 0), (3, 0, 4, 1, 0, 0, 0), (1, 0, 0, 0, 0, 0, 0))
"""How often each kind of rule comes, in the order of RuleKind; from mostly "not in one team" to nothing else."""

SECONDS = 2.0


def random_rules(seed: int) -> tuple[int, tuple[PairRule, ...]]:
    """Return a class of 12 to 40 and up to 60 rules among a few or all of its students."""
    chance = Random(seed)
    students = chance.randint(12, 40)
    count, mix = chance.choice([3, 8, 15, 25, 40, 60]), chance.choice(MIXES)
    seats = chance.sample(range(1, students + 1), chance.choice([8, min(students, 14), students]))
    return students, tuple(
        sorted({PairRule(chance.choices(list(RuleKind), mix)[0], *sorted(chance.sample(seats, 2))) for _ in range(count)})
    )


def placed(rules: Sequence[PairRule], tables: Tables) -> bool:
    """Say whether a placement is found that breaks no rule and fits the teams, looking at the placement alone."""
    found = decide(rules, tables)
    if found.answer is not Answer.YES:
        return False
    team_of = {seat: team for block, team in zip(ties_of(rules).blocks, found.team_of_block, strict=True) for seat in block}
    held = list(team_of.values())
    assert all(held.count(team) <= size for team, size in enumerate(tables.sizes))
    return not broken(rules, team_of, {seat: tables.group_of[team] for seat, team in team_of.items()})


@pytest.mark.parametrize("block", range(BLOCKS))
def test_decided_and_smallest(block: int) -> None:
    """Each set is decided in under two seconds of work: a placement shows that it can hold, or the named rules can't (HiGHS agrees) while
    a placement shows that without any one of them the others can."""
    for seed in range(block, SETS, BLOCKS):
        students, rules = random_rules(seed)
        shape = class_shape(students)
        tables = tables_of(shape)
        began = time.process_time()
        answer, named, minimal = decide(rules, tables).answer, rules, True
        if answer is Answer.NO:
            named, minimal = conflicting(rules, lambda some, t=tables: decide(some, t).answer, lambda some, t=tables: quick(some, t))
        assert time.process_time() - began < SECONDS
        assert answer is not Answer.UNKNOWN
        if answer is Answer.YES:
            assert placed(rules, tables)
            continue
        assert minimal and set(named) <= set(rules)
        assert not rules_can_hold(named, shape)
        assert all(placed([rule for rule in named if rule != left_out], tables) for left_out in named)
