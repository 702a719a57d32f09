"""Who has worked with whom, drawn: a square field of class numbers with a mark where two were in one team."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from trivet.planning.grouping.ledger import Two

CELL, EDGE, FROM = 12, 3, 34
"""In drawing units: a cell, the room right and below, and where the field begins."""

PHONE = 340
"""The drawing's width on the narrowest common phone, in pixels: numbers must not get smaller than LEAST there."""

LEAST = 13
EVERY = 5


@dataclass(frozen=True, slots=True)
class Number:
    """A class number beside the field: in the middle of its cell."""

    at: int
    text: str


@dataclass(frozen=True, slots=True)
class Field:
    """What the template draws. `once`, `twice` and `often` are paths; `grid`, `ticks` and `frame` too; `size` is width and height."""

    size: int
    start: int
    end: int
    font: int
    grid: str
    ticks: str
    numbers: tuple[Number, ...]
    once: str
    twice: str
    often: str


def field(seats: Sequence[int], met: Mapping[Two, int]) -> Field:
    """Return the drawing for `seats` in order, and how often every two of them were in one team."""
    place = {seat: index for index, seat in enumerate(seats)}
    end = FROM + CELL * len(seats)
    size = end + EDGE

    def middle(seat: int) -> int:
        return FROM + CELL * place[seat] + CELL // 2

    def cells(times: Iterable[int]) -> list[tuple[int, int]]:
        twos = [two for two, often in sorted(met.items()) if often in times and two[0] in place and two[1] in place]
        return sorted(cell for low, high in twos for cell in ((middle(low), middle(high)), (middle(high), middle(low))))

    lines = [FROM + CELL * line for line in range(len(seats) + 1)]
    ticked = [seat for seat in seats if seat % EVERY == 0 or seat == seats[0]]
    most = max(met.values(), default=0)
    return Field(
        size=size,
        start=FROM,
        end=end,
        font=-(-LEAST * size // PHONE),
        grid="".join(f"M{at} {FROM}V{end}M{FROM} {at}H{end}" for at in lines),
        ticks="".join(
            f"M{middle(seat)} {FROM}v-{5 if seat in ticked else 3}M{FROM} {middle(seat)}h-{5 if seat in ticked else 3}" for seat in seats
        ),
        numbers=tuple(Number(middle(seat), f"{seat:02d}") for seat in ticked),
        once="".join(f"M{x} {y}h0" for x, y in cells((1, 2))),
        twice="".join(f"M{x - 4} {y - 4}h8v8h-8z" for x, y in cells((2,))),
        often="".join(f"M{x - 5} {y - 5}h10v10h-10z" for x, y in cells(range(3, most + 1))),
    )
