"""Support, as rules: students with an adult stay in one station group; others who need something are spread over the teams."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import combinations, pairwise

from trivet.model.roster import PairRule, RuleKind, Student
from trivet.planning.grouping.rules import joined

MOST_IN_A_TEAM = 2
ONE_TEAM = (RuleKind.SAME_TEAM, RuleKind.LANGUAGE)


def with_adult(students: Iterable[Student]) -> tuple[PairRule, ...]:
    """Return what keeps those who work with an adult in one station group, so that the adult is at one station at a time."""
    seats = sorted(student.seat for student in students if student.adult)
    return tuple(PairRule(RuleKind.WITH_ADULT, low, high) for low, high in pairwise(seats))


def spread(students: Sequence[Student], teams: int, rules: Sequence[PairRule]) -> tuple[PairRule, ...]:
    """Return what spreads the others with something in `needs` over the teams: at most one in a team, as far as the teams go.

    Where there are more of them than teams, at most two in a team; where there are more than twice as many, nothing is asked: every
    team then has some. Two whom a written rule puts into one team are not parted.
    """
    seats = sorted(student.seat for student in students if student.needs and not student.adult)
    if len(seats) > MOST_IN_A_TEAM * teams:
        return ()
    blocks = joined(
        {*seats, *(seat for rule in rules for seat in (rule.low, rule.high))},
        [(rule.low, rule.high) for rule in rules if rule.kind in ONE_TEAM],
    )
    block_of = {seat: place for place, block in enumerate(blocks) for seat in block}
    rounds = [seats[first : first + teams] for first in range(0, len(seats), max(1, teams))]
    return tuple(
        PairRule(RuleKind.SPREAD, low, high) for each in rounds for low, high in combinations(each, 2) if block_of[low] != block_of[high]
    )
