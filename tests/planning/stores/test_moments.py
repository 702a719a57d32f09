"""Who has things out together: stretches of a day, half-open."""

from __future__ import annotations

from dataclasses import replace
from datetime import time
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from tests.planning.stores.test_pools import USE
from trivet.planning.materials import Tally
from trivet.planning.stores.moments import moments, peak, short_without
from trivet.planning.stores.pools import Pool, Share

POOL = Pool(item="lamp", unit="", used_up=False, place="north", have=Fraction(5), own={"north": Fraction(5)})


def share(class_id: str, start: int, end: int, need: int) -> Share:
    use = replace(USE, class_id=class_id, start=time(8, start), end=time(8, end))
    return Share(use, Tally("lamp", "", used_up=False, need=Fraction(need)))


spans = st.tuples(st.integers(0, 8), st.integers(1, 5), st.integers(1, 4))


@given(st.lists(spans, min_size=1, max_size=5))
def test_the_peak_is_the_largest_sum_over_all_minutes(given_spans: list[tuple[int, int, int]]) -> None:
    """The peak of the moments is what a look at each minute finds, and each moment's classes are all there in each of its minutes."""
    shares = [share(f"c{place}", start, start + length, need) for place, (start, length, need) in enumerate(given_spans)]
    found = moments(POOL, shares)
    each_minute = [sum(need for start, length, need in given_spans if start <= minute < start + length) for minute in range(14)]
    most = peak(found)
    assert most is not None
    assert most.need == max(each_minute)
    assert most.short == max(0, max(each_minute) - 5)
    for moment in found:
        assert each_minute[moment.start.minute] == moment.need == sum(moment.amounts)


def test_a_part_of_a_larger_moment_is_left_out() -> None:
    """Of p1 alone, p1 with p2, and p2 alone, only the two together are told."""
    assert [moment.classes for moment in moments(POOL, [share("p1", 0, 40, 1), share("p2", 20, 50, 1)])] == [("p1", "p2")]


def test_periods_that_touch_are_apart() -> None:
    """One class leaves at the minute in which the next comes: nothing is needed twice."""
    assert [moment.need for moment in moments(POOL, [share("p1", 0, 20, 3), share("p2", 20, 40, 4)])] == [3, 4]


@given(st.lists(spans, min_size=2, max_size=5), st.integers(0, 8))
def test_what_is_short_without_a_run_stays_short_wherever_it_goes(given_spans: list[tuple[int, int, int]], later: int) -> None:
    """What the others alone are short of is the least that is short after the first class has moved to any other minute."""
    shares = [share(f"c{place}", start, start + length, need) for place, (start, length, need) in enumerate(given_spans)]
    _, length, need = given_spans[0]
    moved = moments(POOL, [share("c0", later, later + length, need), *shares[1:]])
    for moment in moments(POOL, shares):
        alone = short_without(POOL, moment, {("c0", USE.unit)})
        others = [many for name, many in zip(moment.classes, moment.amounts, strict=True) if name != "c0"]
        assert alone == max(0, sum(others) - 5)
        assert alone <= max(each.short for each in moved)
