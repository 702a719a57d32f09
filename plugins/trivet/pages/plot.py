"""Two columns of numbers as points on axes, or the axes alone for students to draw into."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal, InvalidOperation

from trivet.model.station import DataTable
from trivet.pages.spoken import number

WIDTH, HEIGHT = 360, 240
LEFT, RIGHT, TOP, BOTTOM = 44, 12, 12, 40
STEPS = (1, 2, 5)


@dataclass(frozen=True, slots=True)
class Tick:
    """A place on an axis in drawing units, and the number that stands there."""

    at: float
    text: str


@dataclass(frozen=True, slots=True)
class Plot:
    """What a template draws: axes with their names, ticks, and points (none where students draw them)."""

    x_name: str
    y_name: str
    x_ticks: tuple[Tick, ...]
    y_ticks: tuple[Tick, ...]
    points: tuple[tuple[float, float], ...]
    width: int = WIDTH
    height: int = HEIGHT
    left: int = LEFT
    right: int = WIDTH - RIGHT
    top: int = TOP
    bottom: int = HEIGHT - BOTTOM


def plot(data: DataTable) -> Plot | None:
    """Return the plot of a table with two columns of numbers from 0 up, None for any other table."""
    if len(data.columns) != 2 or len(data.rows) < 2:
        return None
    try:
        pairs = [(Decimal(row[0]), Decimal(row[1])) for row in data.rows]
    except (InvalidOperation, IndexError):
        return None
    if any(not value.is_finite() or value < 0 for pair in pairs for value in pair):
        return None
    x_step, x_end = _axis(max(x for x, _ in pairs))
    y_step, y_end = _axis(max(y for _, y in pairs))

    def across(x: Decimal) -> float:
        return round(LEFT + float(x / x_end) * (WIDTH - LEFT - RIGHT), 1)

    def up(y: Decimal) -> float:
        return round(HEIGHT - BOTTOM - float(y / y_end) * (HEIGHT - TOP - BOTTOM), 1)

    return Plot(
        x_name=data.columns[0],
        y_name=data.columns[1],
        x_ticks=tuple(Tick(across(v), number(v)) for v in _ticks(x_step, x_end)),
        y_ticks=tuple(Tick(up(v), number(v)) for v in _ticks(y_step, y_end)),
        points=tuple((across(x), up(y)) for x, y in pairs) if data.drawn else (),
    )


def _axis(largest: Decimal) -> tuple[Decimal, Decimal]:
    """Return a step of 1, 2 or 5 times a power of ten that gives at most seven ticks, and the end of the axis."""
    largest = largest or Decimal(1)
    power = Decimal(10) ** (largest.adjusted() - 1)
    while True:
        for step in STEPS:
            if power * step * 6 >= largest:
                count = (largest / (power * step)).to_integral_value(ROUND_CEILING)
                return power * step, power * step * count
        power *= 10


def _ticks(step: Decimal, end: Decimal) -> list[Decimal]:
    return [step * i for i in range(int(end / step) + 1)]
