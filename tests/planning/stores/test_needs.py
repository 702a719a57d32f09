"""Needs of a stretch of the year against what a pool holds."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal
from fractions import Fraction

from tests.planning.stores.test_moments import POOL, share
from tests.planning.stores.test_pools import USE
from trivet.planning.materials import Tally
from trivet.planning.stores.moments import moments
from trivet.planning.stores.needs import reusable, used_up
from trivet.planning.stores.pools import Pool, Share


def test_the_largest_need_and_the_largest_shortage_may_be_at_two_times() -> None:
    """Of two stores' rooms that share some of a thing, the busiest time is not always the worst."""
    found = moments(POOL, [share("p1", 0, 20, 4), share("p2", 20, 40, 3)])
    shifted = (found[0], replace(found[1], short=Fraction(2)))
    need = reusable(POOL, shifted)
    assert need is not None
    assert (need.need, need.peak, need.short, need.lacking) == (4, found[0], 2, (shifted[1],))


def test_nothing_needed_is_no_need() -> None:
    """Without meetings, or with meetings that take nothing, there is no line."""
    assert reusable(POOL, ()) is None
    assert reusable(POOL, moments(POOL, [share("p1", 0, 20, 0)])) is None
    assert used_up(POOL, (), 10) is None


def test_spare_is_rounded_up_once_for_all() -> None:
    """Ten percent of 5 + 5 straws is one, not one for each class; of 5 + 5 mL it is one mL exactly."""
    for unit, need, spare in (("", Decimal(11), Decimal(1)), ("mL", Decimal(11), Decimal(1))):
        pool = Pool(item="straw", unit=unit, used_up=True, place="north", have=Fraction(3))
        five = Tally("straw", unit, used_up=True, need=Fraction(5), shared=Fraction(5))
        shares = [Share(replace(USE, class_id=name, date=date(2026, 12, 1)), five) for name in ("p1", "p2")]
        found = used_up(pool, shares, 10)
        assert found is not None
        assert (found.need, found.spare, found.have, found.short, found.missing) == (need, spare, 3, 8, 8)
        assert found.parts == (("p1", "float-or-sink", 5), ("p2", "float-or-sink", 5))
