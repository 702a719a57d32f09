"""The data that a group judges: its table, and two columns of numbers as points on axes, or the axes alone to draw into."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal, InvalidOperation

from trivet.model.station import DataTable
from trivet.pages.spoken import number

WIDTH, HEIGHT = 360, 240
LEFT, RIGHT, TOP, BOTTOM = 44, 12, 12, 40
STEPS = (1, 2, 5)
TICKS_MOST = 7
DIGITS_MOST = 9
"""Numbers with more digits before or after the point would not fit beside an axis."""


@dataclass(frozen=True, slots=True)
class Tick:
    """A place on an axis in drawing units, and the number that stands there."""

    at: float
    text: str


@dataclass(frozen=True, slots=True)
class Plot:
    """What a template draws: axes with their names, ticks, and points (none where students draw them).

    `zeros` are the paths of the lines at 0 that stand inside the drawing, where a column has numbers below 0.
    """

    x_name: str
    y_name: str
    x_ticks: tuple[Tick, ...]
    y_ticks: tuple[Tick, ...]
    points: tuple[tuple[float, float], ...]
    zeros: tuple[str, ...] = ()
    width: int = WIDTH
    height: int = HEIGHT
    left: int = LEFT
    right: int = WIDTH - RIGHT
    top: int = TOP
    bottom: int = HEIGHT - BOTTOM


@dataclass(frozen=True, slots=True)
class DataView:
    """A table of data, and its plot where it has one."""

    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    plot: Plot | None


def data_view(data: DataTable | None) -> DataView | None:
    """Return what pages show of a unit's data, None where it has none."""
    return DataView(data.columns, data.rows, plot(data)) if data else None


@dataclass(frozen=True, slots=True)
class _Axis:
    """An axis from `start` to `end`, both whole steps, with 0 on it."""

    step: Decimal
    start: Decimal
    end: Decimal

    @property
    def ticks(self) -> list[Decimal]:
        return [self.start + self.step * i for i in range(int((self.end - self.start) / self.step) + 1)]

    def share(self, value: Decimal) -> float:
        return float((value - self.start) / (self.end - self.start))


def plot(data: DataTable) -> Plot | None:
    """Return the plot of a table with two columns of numbers, None for any other table. Both axes hold 0."""
    if len(data.columns) != 2 or len(data.rows) < 2:
        return None
    try:
        pairs = [(_number(row[0]), _number(row[1])) for row in data.rows]
    except (InvalidOperation, IndexError):
        return None
    if any(not value.is_finite() or abs(value.adjusted()) > DIGITS_MOST for pair in pairs for value in pair):
        return None
    x_axis, y_axis = _axis([x for x, _ in pairs]), _axis([y for _, y in pairs])

    def across(x: Decimal) -> float:
        return round(LEFT + x_axis.share(x) * (WIDTH - LEFT - RIGHT), 1)

    def up(y: Decimal) -> float:
        return round(HEIGHT - BOTTOM - y_axis.share(y) * (HEIGHT - TOP - BOTTOM), 1)

    zero = Decimal(0)
    return Plot(
        x_name=data.columns[0],
        y_name=data.columns[1],
        x_ticks=tuple(Tick(across(v), _minus(number(v))) for v in x_axis.ticks),
        y_ticks=tuple(Tick(up(v), _minus(number(v))) for v in y_axis.ticks),
        points=tuple((across(x), up(y)) for x, y in pairs) if data.drawn else (),
        zeros=(
            *((f"M{across(zero)} {TOP}V{HEIGHT - BOTTOM}",) if x_axis.start else ()),
            *((f"M{LEFT} {up(zero)}H{WIDTH - RIGHT}",) if y_axis.start else ()),
        ),
    )


def _number(written: str) -> Decimal:
    return Decimal(written.strip().replace("−", "-"))


def _minus(text: str) -> str:
    return text.replace("-", "−")


def _axis(values: list[Decimal]) -> _Axis:
    """Return an axis with steps of 1, 2 or 5 times a power of ten and at most seven ticks; its ends hold every value."""
    low, high = min(Decimal(0), *values), max(Decimal(0), *values)
    if low == high:
        high = Decimal(1)
    power = Decimal(10) ** ((high - low).adjusted() - 1)
    while True:
        for many in STEPS:
            step = power * many
            before, after = ((value / step).to_integral_value(way) for value, way in ((low, ROUND_FLOOR), (high, ROUND_CEILING)))
            if after - before <= TICKS_MOST - 1:
                return _Axis(step, step * before, step * after)
        power *= 10
