"""Station groups and teams by size alone."""

from __future__ import annotations

from itertools import combinations_with_replacement

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.planning.team_sizes import class_shape, group_sizes, team_sizes


def spoken(students: int, wanted: int = 4) -> str:
    return "/".join("".join(str(size) for size in group) for group in class_shape(students, wanted))


@pytest.mark.parametrize(
    ("students", "shape"),
    [
        (24, "44/44/44"),
        (27, "333/333/333"),
        (28, "433/333/333"),
        (31, "443/433/433"),
        (32, "443/443/433"),
        (36, "444/444/444"),
        (37, "4333/444/444"),
        (40, "4433/4333/4333"),
    ],
)
def test_agreed_shapes(students: int, shape: str) -> None:
    """The shapes that the design agrees on (the design's worked value) come out for a wanted size of four."""
    assert spoken(students) == shape


def test_smallest_classes() -> None:
    """Groups of one or two stay one team, a group of five is one five, and groups may be empty under three students."""
    assert [spoken(n) for n in range(8)] == ["//", "1//", "1/1/", "1/1/1", "2/1/1", "2/2/1", "2/2/2", "3/2/2"]
    assert spoken(15) == "5/5/5"
    assert [team_sizes(n) for n in (3, 4, 5, 6, 7)] == [(3,), (4,), (5,), (3, 3), (4, 3)]


def test_fives_when_asked() -> None:
    """Asking for five gives fives, and asking for three gives as many threes as there can be."""
    assert spoken(30, 5) == "55/55/55"
    assert spoken(39, 5) == "544/544/544"
    assert spoken(36, 3) == "3333/3333/3333"
    assert spoken(30, 3) == "433/433/433"


def all_splits(group: int) -> list[tuple[int, ...]]:
    """Every way to cut a group into teams of 3 to 5, largest first."""
    return [
        tuple(reversed(sizes))
        for teams in range(1, group // 3 + 1)
        for sizes in combinations_with_replacement((3, 4, 5), teams)
        if sum(sizes) == group
    ]


@pytest.mark.parametrize("group", range(3, 21))
def test_fewest_fives_then_most_fours(group: int) -> None:
    """Among all ways to cut a group into teams of 3 to 5, the one taken has the fewest fives, then the most fours."""
    best = min(all_splits(group), key=lambda sizes: (sizes.count(5), -sizes.count(4)))
    assert team_sizes(group) == best


@settings(deadline=None)
@given(st.integers(0, 60), st.sampled_from((3, 4, 5)))
def test_everyone_sits_once(students: int, wanted: int) -> None:
    """Groups differ by at most one, teams of a group differ by at most one, and together they hold the class."""
    groups = group_sizes(students)
    shape = class_shape(students, wanted)
    assert sum(groups) == students
    assert max(groups) - min(groups) <= 1
    assert tuple(sum(teams) for teams in shape) == groups
    for teams in shape:
        assert all(1 <= size <= 5 for size in teams)
        assert len(teams) <= 1 or (min(teams) >= 3 and max(teams) - min(teams) <= 1)
        assert list(teams) == sorted(teams, reverse=True)


def test_refused_sizes() -> None:
    """A negative class, a negative group and a team size that is not 3, 4 or 5 are refused with the legal range."""
    with pytest.raises(ValueError, match="0 or more"):
        group_sizes(-1)
    with pytest.raises(ValueError, match="0 or more"):
        team_sizes(-1)
    with pytest.raises(ValueError, match="3, 4 or 5"):
        team_sizes(12, 6)
