"""Rules: exact feasibility, and conflicting sets that are as small as they can be."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.planning.grouping.classes import NOT_GROUP, NOT_TEAM, SAME_GROUP, SAME_TEAM, all_apart, rule, rule_sets
from trivet.model.roster import PairRule
from trivet.planning.grouping.conflict import conflicting, decide
from trivet.planning.grouping.feasible import Answer, place
from trivet.planning.grouping.rules import broken, largest_clique, tables_of, ties_of, too_many
from trivet.planning.team_sizes import class_shape


def can_all_hold(rules: Sequence[PairRule], students: int) -> bool:
    """Try every way to seat the named students, team by team: slow, and independent of the search."""
    shape = class_shape(students)
    teams = [(group, team, size) for group, sizes in enumerate(shape) for team, size in enumerate(sizes)]
    named = sorted({seat for each in rules for seat in (each.low, each.high)})

    def go(place_: int, at: dict[int, tuple[int, int]], room: tuple[int, ...]) -> bool:
        team_of = {s: t[0] * 100 + t[1] for s, t in at.items()}
        group_of = {s: t[0] for s, t in at.items()}
        if broken([r for r in rules if r.low in at and r.high in at], team_of, group_of):
            return False
        if place_ == len(named):
            return True
        return any(
            go(place_ + 1, {**at, named[place_]: (group, team)}, tuple(r - (i == index) for i, r in enumerate(room)))
            for index, (group, team, _) in enumerate(teams)
            if room[index]
        )

    return go(0, {}, tuple(size for _, _, size in teams))


@settings(max_examples=80, deadline=None)
@given(st.data())
def test_equal_to_trying_all(data: st.DataObject) -> None:
    """For classes of 2 to 13 with a few rules, the answer is that of trying every seating, and none stays open."""
    students = data.draw(st.integers(2, 13))
    rules = data.draw(rule_sets(min(students, 7), most=9))
    expected = Answer.YES if can_all_hold(rules, students) else Answer.NO
    assert decide(rules, tables_of(class_shape(students))).answer is expected


@settings(max_examples=40, deadline=None)
@given(st.data())
def test_conflicts_are_as_small_as_can_be(data: st.DataObject) -> None:
    """A conflicting set can't hold, and without any one of its rules the rest can, by trying every seating."""
    students = data.draw(st.integers(3, 10))
    rules = data.draw(rule_sets(min(students, 6), most=14))
    tables = tables_of(class_shape(students))
    if decide(rules, tables).answer is Answer.NO:
        found, minimal = conflicting(rules, lambda some: decide(some, tables).answer)
        assert minimal
        assert not can_all_hold(found, students)
        assert all(can_all_hold([r for r in found if r != left_out], students) for left_out in found)


@pytest.mark.parametrize(
    ("students", "rules", "smallest"),
    [
        (31, all_apart(NOT_GROUP, [1, 2, 3, 4]), 6),
        (36, tuple(rule(SAME_TEAM, s, s + 1) for s in range(1, 6)), 4),
        (31, (rule(SAME_TEAM, 1, 2), rule(SAME_TEAM, 2, 3), rule(NOT_TEAM, 1, 3)), 3),
        (36, all_apart(NOT_TEAM, list(range(1, 11))), 45),
        (36, tuple(rule(SAME_TEAM, 3 * t + 1, 3 * t + k) for t in range(10) for k in (2, 3)), 19),
        (36, tuple(rule(SAME_GROUP, s, s + 1) for s in range(1, 13)), 12),
        (12, (rule(SAME_GROUP, 1, 2), rule(NOT_GROUP, 1, 2)), 2),
    ],
    ids=["four apart in three groups", "five in a chain in teams of four", "a chain with apart ends", "ten apart in nine teams",
         "ten trios in nine teams", "thirteen in a group of twelve", "together and apart"],
)  # fmt: skip
def test_known_conflicts(students: int, rules: tuple[PairRule, ...], smallest: int) -> None:
    """Conflicts that counting proves are found, with the number of rules that counting says (pigeonhole; no search needed).

    Ten trios do not fit nine teams of four, and neither do nine trios and a pair: each trio leaves one seat. So 9 x 2 + 1 rules.
    """
    tables = tables_of(class_shape(students))
    found, minimal = conflicting(rules, lambda some: decide(some, tables).answer)
    assert minimal and len(found) == smallest


def test_a_placement_keeps_the_rules() -> None:
    """The teams of the blocks that the search returns keep every rule."""
    rules = (*all_apart(NOT_TEAM, list(range(1, 10))), rule(SAME_TEAM, 1, 20), rule(SAME_GROUP, 1, 2), rule(NOT_GROUP, 1, 3))
    tables, ties = tables_of(class_shape(31)), ties_of(rules)
    found = place(ties, tables, 1_000)
    assert found.answer is Answer.YES
    team_of = {seat: team for block, team in zip(ties.blocks, found.team_of_block, strict=True) for seat in block}
    assert broken(rules, team_of, {seat: tables.group_of[team] for seat, team in team_of.items()}) == []


def test_counting() -> None:
    """Ten blocks of three do not fit nine teams of four, nine do; the largest set of mutually apart is found."""
    assert too_many([3] * 10, [4] * 9) and not too_many([3] * 9, [4] * 9)
    pentagon = tuple(frozenset({(i - 1) % 5, (i + 1) % 5}) for i in range(5))
    assert largest_clique(pentagon) == 2
    assert largest_clique(tuple(frozenset(set(range(6)) - {i}) for i in range(6))) == 6


def test_order_of_rules_does_not_matter() -> None:
    """The answer is the same for every order in which the rules are written."""
    rules = (rule(NOT_GROUP, 1, 2), rule(SAME_GROUP, 2, 3), rule(SAME_TEAM, 3, 4), rule(NOT_TEAM, 4, 1))
    tables = tables_of(class_shape(12))
    assert {decide(order, tables).answer for order in permutations(rules)} == {Answer.YES}
