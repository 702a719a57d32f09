"""The proved minimum: true, checkable in one scan, and close."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.planning.grouping.classes import asked, drawn
from tests.planning.grouping.oracle import fewest_repeats
from trivet.planning.grouping.certificate import SCALE, met_matrix, prove
from trivet.planning.grouping.cheap_teams import cheap_teams
from trivet.planning.grouping.exact import better
from trivet.planning.grouping.ledger import Ledger

TINY = 1e-6


def value_of(matrix: Sequence[Sequence[int]], sizes: Sequence[int], weights: Sequence[int]) -> int:
    """Return the bound that weights give, from its formula alone: every team of every size is looked at."""
    total = sum(weights)
    for size, count in Counter(sizes).items():
        total += count * min(
            sum(matrix[a][b] for a, b in combinations(team, 2)) - sum(weights[s] for s in team)
            for team in combinations(range(len(weights)), size)
        )
    return -(-total // SCALE)


@pytest.mark.parametrize("students", [30, 31])
def test_after_the_skeleton_too(students: int) -> None:
    """Where the skeleton of a year ends, every team is nearly new and the linear bound says little (HiGHS: 0 at the tenth unit); trying
    all teams that could do better still proves every unit of a year of twelve as good as it can be."""
    ledger = Ledger()
    beyond = 0
    for unit in range(12):
        one = drawn(asked(students, seed=f"unit {unit}", ledger=ledger))
        assert one.proved_minimum == one.repeats
        if one.repeats:
            sizes = [len(team) for group in one.groups.values() for team in group.teams.values()]
            linear = fewest_repeats(students, ledger.teams, sizes)[0]
            assert linear <= one.repeats + TINY
            beyond += one.proved_minimum > linear + 1
        ledger = ledger.plus(one.groups)
    assert beyond


@settings(max_examples=40, deadline=None)
@given(st.data())
def test_every_weight_gives_a_true_bound(data: st.DataObject) -> None:
    """For twelve students, any past and any integers Y, the formula stays at or below the best of all 5,775 ways to make three teams."""
    cost = {two: data.draw(st.integers(0, 3)) for two in combinations(range(12), 2)}
    weights = data.draw(st.lists(st.integers(-2000, 4000), min_size=12, max_size=12))
    matrix = [[SCALE * cost.get((min(a, b), max(a, b)), 0) for b in range(12)] for a in range(12)]

    def within(team: tuple[int, ...]) -> int:
        return sum(cost[two] for two in combinations(team, 2))

    best = min(
        within((0, *one)) + within((rest[0], *two)) + within(tuple(s for s in rest[1:] if s not in two))
        for one in combinations(range(1, 12), 3)
        for rest in [[s for s in range(1, 12) if s not in one]]
        for two in combinations(rest[1:], 3)
    )
    assert value_of(matrix, [4, 4, 4], weights) <= best
    found = prove(matrix, [4, 4, 4], best)
    assert found.repeats <= best
    if best:
        answer = better(matrix, [4, 4, 4], found.weights or (0,) * 12, best - 1)
        assert answer.teams is None and answer.proved
    reached = better(matrix, [4, 4, 4], found.weights or (0,) * 12, best)
    assert reached.teams is not None and sum(map(within, reached.teams)) == best
    assert sorted(s for team in reached.teams for s in team) == list(range(12))


@settings(max_examples=40, deadline=None)
@given(st.data())
def test_cheap_teams_are_all_there_are(data: st.DataObject) -> None:
    """The scan returns exactly the teams within the margin of the cheapest, by looking at every team."""
    students, size = data.draw(st.integers(4, 9)), data.draw(st.integers(1, 4))
    near = data.draw(st.sampled_from([0, 300, 2000]))
    cost = {two: SCALE * data.draw(st.integers(0, 2)) for two in combinations(range(students), 2)}
    worth = data.draw(
        st.lists(st.integers(*data.draw(st.sampled_from([(-500, 1500), (-90_000, -80_000)]))), min_size=students, max_size=students)
    )
    matrix = [[cost.get((min(a, b), max(a, b)), 0) for b in range(students)] for a in range(students)]
    every = sorted(
        (sum(cost[two] for two in combinations(team, 2)) - sum(worth[s] for s in team), team)
        for team in combinations(range(students), size)
    )
    least = every[0][0]
    assert cheap_teams(matrix, worth, size, near) == [each for each in every if each[0] <= least + near]


def test_nothing_to_prove() -> None:
    """No repeats need no proof, and teams of six are not scanned."""
    assert prove([[0] * 4 for _ in range(4)], [4], 0).repeats == 0
    assert prove([[SCALE] * 6 for _ in range(6)], [6], 15).repeats == 0


def test_locks_can_carry_the_proof() -> None:
    """After nine units the repeats of a class of 24 are at their proved minimum, and the draw's integers show it without the search."""
    ledger = Ledger()
    for unit in range(9):
        one = drawn(asked(24, seed=f"unit {unit}", ledger=ledger))
        if one.repeats:
            assert one.proved_minimum == one.repeats
            weights = [one.certificate[f"p1-{seat:02d}"] for seat in range(1, 25)]
            assert value_of(met_matrix(range(1, 25), ledger.teams), [4] * 6, weights) == one.repeats
        ledger = ledger.plus(one.groups)
    assert one.repeats > 0
