"""Rounds of different lengths: the best of all ways, found again by trying every length of every round."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.planning.costs import Costs, overhead
from trivet.planning.minutes import RoundRange
from trivet.planning.progress import NOTHING, Progress
from trivet.planning.uneven import Uneven, uneven

few = st.integers(0, 6)
COSTS = st.builds(
    Costs,
    settle_in=few,
    expectations=few,
    places=few,
    launch=few,
    clean_up=few,
    move=few,
    evidence=st.integers(0, 4),
    reflection=few,
    reflection_most=st.just(12),
    pack_up=few,
    pack_up_most=st.just(12),
    write_up=st.one_of(st.none(), st.integers(20, 40)),
    write_up_with_evidence=st.one_of(st.none(), st.integers(10, 20)),
    recap=few,
)
RANGES = st.integers(5, 9).flatmap(lambda low: st.integers(low, low + 3).map(lambda most: RoundRange(low, most, differ=True)))
PROGRESS = st.sampled_from([NOTHING, Progress(rounds_left=2, begun=True), Progress(rounds_left=2, begun=True, resumes=9, minutes=8)])


def every_way(periods: Sequence[int], allowed: RoundRange, costs: Costs, most: int, so_far: Progress) -> Iterator[Uneven]:
    """Every number of rounds on each day, and every length of each whole one, that the days hold with all that belongs to them."""
    for short in (True, False):
        for rounds in product(range(most + 1), repeat=len(periods)):
            if sum(rounds) != so_far.rounds_left:
                continue
            days: list[list[tuple[int, ...]]] = []
            for at, (period, count) in enumerate(zip(periods, rounds, strict=True)):
                write_up = so_far.write_up(costs, short=short) if at == len(periods) - 1 else 0
                parts = so_far.day_parts(sum(rounds[:at]), count, write_up=write_up)
                whole = count - bool(parts.resumes)
                spent = overhead(parts, costs) + parts.resumes + (costs.evidence if short and count else 0)
                lengths = product(range(allowed.low, allowed.target + 1), repeat=whole)
                busy = bool(count or write_up)
                days.append([each for each in lengths if not busy or spent + 2 * sum(each) <= 2 * period])
            for minutes in product(*days):
                yield Uneven(rounds, minutes, short)


@settings(max_examples=40)
@given(st.lists(st.integers(15, 60), min_size=1, max_size=3), RANGES, COSTS, st.integers(1, 3), PROGRESS)
def test_no_other_way_is_better(periods: list[int], allowed: RoundRange, costs: Costs, most: int, so_far: Progress) -> None:
    """What is found has the rank of the best of all ways that fit; nothing is found exactly where none fits."""
    found = uneven(periods, allowed, costs, most, so_far)
    best = min((each.rank() for each in every_way(periods, allowed, costs, most, so_far)), default=None)
    assert (found.rank() if found else None) == best


def test_more_minutes_come_before_even_ones() -> None:
    """By hand: days of 30, 30 and 40 minutes with nothing else on them give rounds of 30, 30 and 40, where up to 45 are allowed."""
    nothing = Costs(**dict.fromkeys(Costs.__slots__, 0))
    found = uneven([30, 30, 40], RoundRange(20, 45, differ=True), nothing, 1, NOTHING)
    assert found is not None and found.minutes == ((30,), (30,), (40,))
