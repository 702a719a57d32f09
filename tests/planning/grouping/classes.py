"""Small classes for tests of grouping: variants of one understandable request."""

from __future__ import annotations

from itertools import combinations
from typing import Any

from hypothesis import strategies as st

from trivet.model.lock import Groups
from trivet.model.roster import PairRule, RuleKind
from trivet.planning.grouping.draw import draw
from trivet.planning.grouping.ledger import Ledger, seat_of
from trivet.planning.grouping.request import Draw, Request

NOT_TEAM, SAME_TEAM, NOT_GROUP, SAME_GROUP = (
    RuleKind.NOT_ONE_TEAM,
    RuleKind.SAME_TEAM,
    RuleKind.NOT_ONE_GROUP,
    RuleKind.SAME_GROUP,
)


def asked(students: int = 12, **changes: Any) -> Request:
    """Return a request for class p1 with seats 1 to `students`; keywords change its fields."""
    fields: dict[str, Any] = {"class_id": "p1", "seats": tuple(range(1, students + 1)), "seed": "trivet 1 p1 float-or-sink", **changes}
    return Request(**fields)


def drawn(request: Request) -> Draw:
    """Draw, and insist on groups."""
    found = draw(request)
    assert isinstance(found, Draw)
    return found


def rule(kind: RuleKind, one: int, other: int) -> PairRule:
    """Return a rule with its seats in order."""
    return PairRule(kind, min(one, other), max(one, other))


def all_apart(kind: RuleKind, seats: list[int]) -> tuple[PairRule, ...]:
    """Return the rules that keep every two of `seats` apart."""
    return tuple(rule(kind, a, b) for a, b in combinations(seats, 2))


def where(groups: Groups) -> tuple[dict[int, str], dict[int, str]]:
    """Return the team code and the group letter of each seat."""
    team = {seat_of(n): code for group in groups.values() for code, members in group.teams.items() for n in members}
    return team, {seat: code[0] for seat, code in team.items()}


def keeps(each: PairRule, groups: Groups) -> bool:
    """Say whether groups keep a rule, read off the words of the rule alone."""
    team, group = where(groups)
    if each.kind is NOT_TEAM:
        return team[each.low] != team[each.high]
    if each.kind is SAME_TEAM:
        return team[each.low] == team[each.high]
    if each.kind is NOT_GROUP:
        return group[each.low] != group[each.high]
    return group[each.low] == group[each.high]


@st.composite
def rule_sets(draw_from: st.DrawFn, students: int, most: int = 12) -> tuple[PairRule, ...]:
    """Draw up to `most` rules between seats 1 to `students`."""
    if students < 2:
        return ()
    twos = st.tuples(st.integers(1, students), st.integers(1, students)).filter(lambda two: two[0] != two[1])
    kinds = st.sampled_from([NOT_TEAM, NOT_TEAM, NOT_TEAM, SAME_TEAM, NOT_GROUP, SAME_GROUP])
    found = draw_from(st.lists(st.builds(lambda kind, two: rule(kind, *two), kinds, twos), max_size=most))
    return tuple(sorted(set(found)))


def year(students: int, units: int, **changes: Any) -> list[Draw]:
    """Draw units one after another, each with the earlier ones as history."""
    ledger = Ledger()
    found = []
    for number in range(units):
        one = drawn(asked(students, seed=f"unit {number}", ledger=ledger, **changes))
        ledger = ledger.plus(one.groups)
        found.append(one)
    return found
