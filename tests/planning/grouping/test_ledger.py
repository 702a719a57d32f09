"""Counting who worked with whom."""

from __future__ import annotations

from collections import Counter
from itertools import combinations

from tests.planning.grouping.classes import year
from trivet.model.lock import Groups, StationGroup
from trivet.planning.grouping.ledger import (
    Ledger,
    duties_held,
    ledger_of,
    pair_repeats,
    repeats,
    role_spread,
    seat_of,
)

KIRKMAN = (
    "1-6-11 2-7-12 3-8-13 4-9-14 5-10-15",
    "1-2-5 3-4-7 8-9-12 10-11-14 13-15-6",
    "2-3-6 4-5-8 9-10-13 11-12-15 14-1-7",
    "5-6-9 7-8-11 12-13-1 14-15-3 2-4-10",
    "3-5-11 4-6-12 7-9-15 8-10-1 13-14-2",
    "5-7-13 6-8-14 9-11-2 10-12-3 15-1-4",
    "11-13-4 12-14-5 15-2-8 1-3-9 6-7-10",
)
"""Fifteen walk in threes on seven days (Kirkman 1850)."""


def day(text: str) -> Groups:
    """Return one of Kirkman's days as groups: teams of three in one station group, and the same threes as trios online."""
    teams = [tuple(f"p1-{int(n):02d}" for n in sorted(team.split("-"), key=int)) for team in text.split()]
    return {"A": StationGroup({f"A{i}": dict.fromkeys(team, ()) for i, team in enumerate(teams, 1)}, tuple(teams))}


def test_kirkmans_days_repeat_nothing() -> None:
    """In Kirkman's seven days all 105 pairs meet exactly once, so no day repeats a teammate or partner (published table)."""
    ledger = Ledger()
    for text in KIRKMAN:
        assert repeats(day(text), ledger) == 0
        assert pair_repeats(day(text), ledger) == 0
        ledger = ledger.plus(day(text))
    assert len(ledger.teams) == 105 and set(ledger.teams.values()) == {1}
    assert dict(ledger.pairs) == dict(ledger.teams)


def test_an_eighth_day_repeats_all() -> None:
    """Walking Kirkman's first day again repeats all fifteen of its pairs, and a third time counts twice."""
    ledger = ledger_of(day(text) for text in KIRKMAN)
    assert repeats(day(KIRKMAN[0]), ledger) == 15
    assert repeats(day(KIRKMAN[0]), ledger.plus(day(KIRKMAN[0]))) == 30


def test_repeats_add_up_over_a_year() -> None:
    """The repeats of all units of a year add up to the sum of c(c-1)/2 over all pairs, c = times two were teammates."""
    units = year(12, 6)
    met = Counter(
        two
        for one in units
        for group in one.groups.values()
        for team in group.teams.values()
        for two in combinations(sorted(seat_of(n) for n in team), 2)
    )
    assert sum(one.repeats for one in units) == sum(c * (c - 1) // 2 for c in met.values())


def test_cards_count_where_they_are_somebodys_own() -> None:
    """A leader who also keeps time holds the leader's card alone; a reporter's own card counts; all five of one student count three."""
    groups = {
        "A": StationGroup({"A1": {"p1-01": ("leader", "timekeeper"), "p1-02": ("reporter",)}}, ()),
        "B": StationGroup({"B1": {"p1-03": ("leader", "recorder", "materials", "reporter", "timekeeper")}}, ()),
    }
    assert sorted(duties_held(groups)) == [(1, "leader"), (2, "reporter"), (3, "leader"), (3, "materials"), (3, "recorder")]


def test_spread_of_roles() -> None:
    """Who led twice and did nothing else is two apart; students who are not in class today do not count."""
    leads = {"A": StationGroup({"A1": {"p1-01": ("leader",)}}, ())}
    other = {"A": StationGroup({"A1": {"p1-02": ("recorder",)}}, ())}
    assert role_spread(leads, ledger_of([leads])) == 2
    assert role_spread(other, ledger_of([leads, leads])) == 1
