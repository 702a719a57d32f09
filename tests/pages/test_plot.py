"""Data as points on axes."""

from __future__ import annotations

from decimal import Decimal
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from trivet.model.station import DataTable
from trivet.pages.plot import LEFT, Tick, plot


def of_tick(tick: Tick) -> Decimal:
    return Decimal(tick.text.replace(",", "").replace("−", "-"))


NUMBERS = st.decimals(-(10**6), 10**6, places=2)


@given(st.lists(st.tuples(NUMBERS, NUMBERS), min_size=2, max_size=20))
def test_every_point_lies_inside_its_axes(points: list[tuple[Decimal, Decimal]]) -> None:
    """The axes hold 0 and every value, have two to seven ticks, and each point stands where the ticks say."""
    data = DataTable(("x (s)", "y (m)"), tuple((str(x), str(y)) for x, y in points))
    made = plot(data)
    assert made is not None
    for ticks, values in ((made.x_ticks, [x for x, _ in points]), (made.y_ticks, [y for _, y in points])):
        said = [of_tick(tick) for tick in ticks]
        assert 2 <= len(said) <= 7
        assert 0 in said
        assert said[0] <= min(values)
        assert max(values) <= said[-1]
        assert len({after - before for before, after in pairwise(said)}) == 1
    for (x, y), (across, up) in zip(points, made.points, strict=True):
        assert LEFT <= across <= made.right
        assert made.top <= up <= made.bottom
        for value, at, ticks in ((x, across, made.x_ticks), (y, up, made.y_ticks)):
            share = (value - of_tick(ticks[0])) / (of_tick(ticks[-1]) - of_tick(ticks[0]))
            assert abs(ticks[0].at + float(share) * (ticks[-1].at - ticks[0].at) - at) < 0.16


def test_the_largest_value_is_never_above_its_axis() -> None:
    """51.2 g lies below the end of its axis at 60, and a value on a tick makes no step more."""
    made = plot(DataTable(("volume (mL)", "mass (g)"), (("5", "8.4"), ("30", "51.2"))))
    assert made is not None
    assert [tick.text for tick in made.y_ticks] == ["0", "10", "20", "30", "40", "50", "60"]
    assert [tick.text for tick in made.x_ticks] == ["0", "5", "10", "15", "20", "25", "30"]


def test_numbers_below_zero_are_drawn() -> None:
    """An axis goes below 0 where a value does, with a line at 0, and both ways to write a minus are read."""
    made = plot(DataTable(("time (min)", "temperature (°C)"), (("0", "-18"), ("4", "−2.5"), ("9", "12"))))
    assert made is not None
    assert [tick.text for tick in made.y_ticks] == ["−20", "−10", "0", "10", "20"]
    zero = next(tick for tick in made.y_ticks if tick.text == "0")
    assert made.zeros == (f"M{made.left} {zero.at}H{made.right}",)
    assert made.points[0][1] > zero.at > made.points[2][1]
    both = plot(DataTable(("a", "b"), (("-1", "-2"), ("-3", "-4"))))
    assert both is not None
    assert both.x_ticks[-1].text == both.y_ticks[-1].text == "0"


def test_what_is_no_plot_is_a_table() -> None:
    """Three columns, words or one row are not plotted; empty axes have ticks and no point."""
    assert plot(DataTable(("a", "b", "c"), (("1", "2", "3"), ("1", "2", "3")))) is None
    assert plot(DataTable(("a", "b"), (("1", "red"), ("2", "blue")))) is None
    assert plot(DataTable(("a", "b"), (("1", "2"),))) is None
    assert plot(DataTable(("a", "b"), (("1", "1e999999"), ("2", "3")))) is None
    assert plot(DataTable(("a", "b"), (("1", "nan"), ("2", "3")))) is None
    empty = plot(DataTable(("a", "b"), (("1", "2"), ("2", "3")), drawn=False))
    assert empty is not None
    assert empty.points == ()
