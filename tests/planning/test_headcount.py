"""How many students, teams and pairs each station group has."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.support.department import STARTS, tiny_class
from tests.support.lock import tiny_lock
from trivet.model.lock import StationGroup
from trivet.model.school import LateSeat
from trivet.planning.headcount import GroupCount, by_groups, by_size, pairs_in, seats_on


@pytest.mark.parametrize(("students", "pairs"), [(0, 0), (1, 1), (2, 1), (3, 1), (4, 2), (7, 3), (12, 6), (13, 6)])
def test_a_leftover_joins_a_pair(students: int, pairs: int) -> None:
    """Three make one trio, seven two pairs and a trio; one alone is counted as a pair, since it needs a device too."""
    assert pairs_in(students) == pairs


@pytest.mark.parametrize(
    ("students", "groups", "to_ask"),
    [
        (0, ((0, 0, 0), (0, 0, 0), (0, 0, 0)), 0),
        (1, ((1, 1, 1), (0, 0, 0), (0, 0, 0)), 1),
        (2, ((1, 1, 1), (1, 1, 1), (0, 0, 0)), 2),
        (7, ((3, 1, 1), (2, 1, 1), (2, 1, 1)), 2),
        (23, ((8, 2, 4), (8, 2, 4), (7, 2, 3)), 4),
        (37, ((13, 4, 6), (12, 3, 6), (12, 3, 6)), 7),
    ],
)
def test_by_size(students: int, groups: tuple[tuple[int, int, int], ...], to_ask: int) -> None:
    """Students, teams and pairs of A, B and C by the size of the class (37 is 4333/444/444 in the design); worked by hand."""
    counted = by_size(students, 4)
    assert tuple((each.students, each.teams, each.pairs) for each in counted.groups.values()) == groups
    assert list(counted.groups) == ["A", "B", "C"]
    assert counted.teams_to_ask == to_ask


@given(st.integers(0, 60), st.sampled_from((3, 4, 5)))
def test_nobody_is_lost_in_the_counts(students: int, wanted: int) -> None:
    """The groups add up to the class, and the teacher never asks more teams than there are."""
    counted = by_size(students, wanted)
    assert counted.students == students
    assert counted.teams == sum(each.teams for each in counted.groups.values())
    assert 0 <= counted.teams_to_ask <= counted.teams


@given(st.integers(0, 40))
def test_kept_groups_are_counted_as_they_are(size: int) -> None:
    """Kept groups give the students, teams and pairs that stand in them, however they were dealt."""
    groups = tiny_lock(tiny_class(size=size)).groups
    counted = by_groups(groups)
    assert counted.students == size
    assert counted.teams == sum(len(group.teams) for group in groups.values())
    assert all(each.pairs == len(groups[letter].pairs) for letter, each in counted.groups.items())


def test_a_group_that_is_missing_counts_nothing() -> None:
    """A lock that leaves out an empty group counts it with zeros, so that the fewest teams to leave out are none."""
    counted = by_groups({"B": StationGroup({"B1": {"p1-01": ("leader",), "p1-02": ()}}, (("p1-01", "p1-02"),))})
    assert counted.groups == {"A": GroupCount(0, 0, 0), "B": GroupCount(2, 1, 1), "C": GroupCount(0, 0, 0)}
    assert counted.teams_to_ask == 1


@pytest.mark.parametrize(("day", "seated"), [(-1, (1, 2, 3)), (0, (1, 2, 3, 4)), (1, (1, 2, 3, 4)), (9, (1, 2, 3, 4, 5))])
def test_a_late_seat_counts_from_its_first_day(day: int, seated: tuple[int, ...]) -> None:
    """The day before it joins a late seat is not there; on its first day and later it is."""
    late = (LateSeat(4, STARTS), LateSeat(5, date(2026, 12, 9)))
    assert seats_on(tiny_class(size=5, late=late), STARTS + timedelta(day)) == seated
