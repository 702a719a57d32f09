"""How long a class of some size can go, counted pair by pair."""

from __future__ import annotations

from collections import Counter
from itertools import combinations

import pytest

from trivet.planning.grouping.weeks import WeekOfTeams, counting_bound, weeks
from trivet.planning.team_sizes import class_shape, team_sizes

TWELVE_UNITS = {
    24: (0, 18, 48, 84, 120, 156), 27: (0, 0, 0, 0, 0, 0), 28: (0, 0, 0, 2, 5, 9), 30: (0, 0, 0, 2, 9, 21),
    32: (0, 0, 0, 0, 2, 17), 33: (0, 0, 0, 0, 0, 18), 34: (0, 0, 0, 0, 0, 21), 36: (0, 0, 0, 0, 0, 27),
}  # fmt: skip
"""Repeats over 6, 8, 9, 10, 11 and 12 units: the better of arithmetic and of search as measured before this program was written."""


LENGTHS_TRIED = (8, 12)
"""The other lengths are measured by the benchmark: each is a year of its own."""


def repeats_of(found: tuple[WeekOfTeams, ...]) -> list[int]:
    """Count the repeats of each unit from its teams alone."""
    met: Counter[tuple[int, int]] = Counter()
    counted = []
    for unit in found:
        twos = [two for team in unit.teams for two in combinations(sorted(team), 2)]
        counted.append(sum(met[two] for two in twos))
        met.update(twos)
    return counted


@pytest.mark.parametrize(
    ("teams", "size", "least"), [(6, 4, 7), (7, 4, 9), (9, 4, 11), (10, 4, 13), (5, 3, 7), (4, 4, 5), (5, 4, 5), (8, 4, 9)]
)
def test_whole_class(teams: int, size: int, least: int) -> None:
    """A whole class in equal teams goes at least so many units without a repeated teammate (the ceilings, but for 8-4)."""
    found = weeks(teams * size, size, whole_class=True)
    assert all(sorted(len(team) for team in unit.teams) == [size] * teams for unit in found)
    counted = repeats_of(found)
    assert counted == [unit.repeats for unit in found]
    assert counted.index(next(filter(None, counted))) >= least
    assert all(unit.station_groups == () for unit in found)


@pytest.mark.parametrize("students", sorted(TWELVE_UNITS))
def test_a_year_of_twelve_units(students: int) -> None:
    """In three even station groups the repeats add up to no more than the better of two ways measured before, for a year of each length."""
    for units, most in zip((6, 8, 9, 10, 11, 12), TWELVE_UNITS[students], strict=True):
        if units in LENGTHS_TRIED:
            found = weeks(students, units=units)
            assert repeats_of(found) == [unit.repeats for unit in found]
            sizes = [len(team) for team in found[0].teams]
            assert counting_bound(students, sizes, units) <= sum(unit.repeats for unit in found) <= most


@pytest.mark.parametrize("students", [37, 38, 39, 40])
def test_large_classes(students: int) -> None:
    """Classes of 37 to 40 in teams of three and four go at least ten units without a repeated teammate."""
    assert sum(repeats_of(weeks(students, units=10))) == 0


@pytest.mark.parametrize("students", [1, 2, 5, 13, 18, 31])
def test_station_groups_are_even(students: int) -> None:
    """Station groups are indexes of teams, hold every team once, and differ by at most one student."""
    for unit in weeks(students, units=2):
        assert sorted(seat for team in unit.teams for seat in team) == list(range(1, students + 1))
        assert sorted(team for group in unit.station_groups for team in group) == list(range(len(unit.teams)))
        sizes = [sum(len(unit.teams[team]) for team in group) for group in unit.station_groups]
        assert max(sizes) - min(sizes) <= 1
        shape = sorted(tuple(sorted(len(unit.teams[t]) for t in group)) for group in unit.station_groups)
        assert shape == sorted(tuple(sorted(group)) for group in class_shape(students) if group)


def test_goes_on_until_the_first_repeat() -> None:
    """Without a number of units, only the last one has repeats, and for 24 students these are proved unavoidable."""
    found = weeks(24)
    assert [unit.repeats > 0 for unit in found] == [False] * 7 + [True]
    assert found[-1].unavoidable and found[-1].proved_minimum == found[-1].repeats == 18
    assert sorted(len(team) for team in weeks(10, whole_class=True)[0].teams) == sorted(team_sizes(10))


def test_counting() -> None:
    """Twelve students in pairs for 15 units repeat at least 90 - 66 = 24 meetings; 24 in fours for 12 units at least 156 (pigeonhole)."""
    assert counting_bound(12, [2] * 6, 15) == 24
    assert [counting_bound(24, [4] * 6, units) for units in (8, 9, 10, 11, 12)] == [12, 48, 84, 120, 156]
