"""Weeks by arithmetic: fields, planes, starters, and how they are cut to a class."""

from __future__ import annotations

from collections import Counter
from itertools import product

import pytest

from trivet.planning.grouping.designs import STARTERS, Round, full, meetings_of, plane
from trivet.planning.grouping.fields import SIZES, field
from trivet.planning.grouping.skeleton import skeletons
from trivet.planning.team_sizes import class_shape, team_sizes

BEST_KNOWN = {
    (2, 2): 3, (3, 3): 4, (4, 3): 4, (4, 4): 5, (5, 3): 7, (5, 4): 5, (5, 5): 6, (6, 3): 8, (6, 4): 7, (6, 6): 3,
    (7, 3): 10, (7, 4): 9, (8, 4): 10, (9, 4): 11, (10, 4): 13,
}  # fmt: skip
"""(teams, size): most rounds without a repeat. OEIS A107431; 8-4: Aguado 2004; 9-4 and 10-4: the counting ceiling."""


def check(weeks: tuple[Round, ...], students: int) -> None:
    """Every round parts the slots, and no two slots meet twice."""
    for each in weeks:
        assert sorted(slot for team in each for slot in team) == list(range(students))
    assert max(Counter(meetings_of(weeks)).values(), default=0) <= 1


@pytest.mark.parametrize("size", SIZES)
def test_fields(size: int) -> None:
    """Sums and products of each field obey the laws of a field, by trying all triples."""
    f = field(size)
    every = range(size)
    add, mul = f.sums, f.products
    for x, y in product(every, repeat=2):
        assert add[x][y] == add[y][x] and mul[x][y] == mul[y][x]
    for x, y, z in product(every, repeat=3):
        assert add[add[x][y]][z] == add[x][add[y][z]] and mul[mul[x][y]][z] == mul[x][mul[y][z]]
        assert mul[x][add[y][z]] == add[mul[x][y]][mul[x][z]]
    assert all(sorted(add[x]) == list(every) for x in every)
    assert all(sorted(mul[x]) == list(every) for x in every if x)
    assert list(mul[1]) == list(every) and list(add[0]) == list(every)


@pytest.mark.parametrize(("students", "size"), sorted(STARTERS))
def test_starters_reach_the_ceiling(students: int, size: int) -> None:
    """Each starter gives floor((n-1)/(k-1)) rounds (the counting ceiling), and no two students meet twice."""
    weeks = STARTERS[students, size].rounds()
    check(weeks, students)
    assert len(weeks) == (students - 1) // (size - 1)


@pytest.mark.parametrize("order", [3, 4, 5, 7, 8, 9])
def test_affine_planes(order: int) -> None:
    """A plane of order q gives q + 1 rounds of q teams of q in which every two of q² students meet exactly once (classical)."""
    weeks = full(order * order, order)
    check(weeks, order * order)
    assert len(weeks) == order + 1
    assert len(set(meetings_of(weeks))) == order**2 * (order**2 - 1) // 2


def test_plane_lines() -> None:
    """Two slots of different columns meet in exactly one of the q rounds, two of one column never (resolvable transversal design)."""
    met = Counter(meetings_of(plane(9, 4)[:9]))
    for a in range(36):
        for b in range(a + 1, 36):
            assert met[a, b] == (a // 9 != b // 9)


@pytest.mark.parametrize(
    ("teams", "size", "rounds"), [(6, 4, 7), (7, 4, 9), (9, 4, 11), (10, 4, 13), (5, 3, 7), (4, 4, 5), (5, 4, 5), (8, 4, 9)]
)
def test_whole_class_weeks(teams: int, size: int, rounds: int) -> None:
    """Whole classes of equal teams reach the weeks asked for, never more than the best known (OEIS A107431 and its sources)."""
    weeks = full(teams * size, size)
    check(weeks, teams * size)
    assert rounds <= len(weeks) <= BEST_KNOWN[teams, size]


@pytest.mark.parametrize(("teams", "size"), sorted(BEST_KNOWN))
def test_never_more_than_is_possible(teams: int, size: int) -> None:
    """No construction claims more rounds than the published table allows."""
    weeks = full(teams * size, size)
    check(weeks, teams * size)
    assert 1 <= len(weeks) <= BEST_KNOWN[teams, size]


@pytest.mark.parametrize("students", range(12, 46))
def test_cut_to_a_class(students: int) -> None:
    """Cut to a class's own team sizes, every kept round has exactly these sizes, and no two students meet twice."""
    in_thirds = [size for group in class_shape(students) for size in group]
    for sizes in (in_thirds, team_sizes(students)):
        wanted = tuple(sorted(sizes, reverse=True))
        for weeks in skeletons(wanted):
            check(weeks, students)
            assert all(tuple(sorted(map(len, each), reverse=True)) == wanted for each in weeks)


@pytest.mark.parametrize(
    ("students", "least"),
    [(21, 7), (24, 7), (25, 7), (26, 8), (27, 9), (28, 9), (31, 9), (32, 10), (33, 11), (34, 11), (35, 11), (36, 11), (37, 12), (38, 11)],
)
def test_units_without_a_repeat(students: int, least: int) -> None:
    """In three even station groups a class has at least so many units without one repeated teammate."""
    sizes = tuple(sorted((s for group in class_shape(students) for s in group), reverse=True))
    assert len(skeletons(sizes)[0]) >= least
