"""The blocks of one day."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, time

from trivet.model.school import Defaults
from trivet.planning.costs import DayParts, costs
from trivet.planning.dates import Meeting
from trivet.planning.day import clock, make_day
from trivet.planning.halves import halves
from trivet.planning.headcount import by_size

MEETING = Meeting(date(2026, 11, 30), "block", time(9, 50), time(11, 35), 105, 0)
COSTS = costs(Defaults(), by_size(36, 4), 13, full_expectations=True, at_home=False)


def test_blocks_keep_their_order() -> None:
    """A first day with two rounds and the write-up holds every block in the order of the lesson, rounds numbered on."""
    day = make_day(MEETING, DayParts(2, first=True, write_up=24), 2, 20, COSTS)
    assert [(block.kind, block.round) for block in day.blocks] == [
        ("settle_in", None), ("expectations", None), ("places", None),
        ("launch", 2), ("station", 2), ("clean_up", 2), ("move", None), ("launch", 3), ("station", 3), ("clean_up", 3),
        ("evidence", None), ("write_up", None), ("reflection", None), ("pack_up", None),
    ]  # fmt: skip
    assert sum(block.minutes for block in day.blocks) + day.surplus_minutes == 105


def test_clock_is_rounded_down() -> None:
    """A block that begins on a half minute shows the minute before; the exact place is in `at`; the hour turns over."""
    day = make_day(MEETING, DayParts(1), 1, 20, COSTS)
    station = next(block for block in day.blocks if block.kind == "station")
    assert (station.at, station.start) == (12.5, time(10, 2))
    assert clock(time(9, 50), 21) == time(10, 0)


def test_parts_of_no_length_leave_no_block() -> None:
    """A department that settles in within the passing time has no such block."""
    quick = costs(replace(Defaults(), settle_in=0, move=0.5), by_size(36, 4), 13, full_expectations=False, at_home=False)
    day = make_day(MEETING, DayParts(2), 1, 20, quick)
    assert day.blocks[0].kind == "places"
    assert next(block.minutes for block in day.blocks if block.kind == "move") == 0.5


def test_halves_round_up_exactly() -> None:
    """Minutes become half minutes rounded up, without binary error: 0.1 is one half, 2.0 four, 2.3 five."""
    assert [halves(value) for value in (0, 0.1, 0.5, 2, 2.0, 2.3, 7.5)] == [0, 1, 1, 4, 4, 5, 15]


def test_reflection_grows_with_teams() -> None:
    """Half a minute a team, never under five minutes, also where that is more than its usual most."""
    minutes = [costs(Defaults(), by_size(n, 4), 13, full_expectations=False, at_home=False).reflection / 2 for n in (1, 24, 38, 40, 60)]
    assert minutes == [5, 5, 5.5, 6, 7.5]
    big = costs(replace(Defaults(), reflection_per_team=1), by_size(60, 4), 13, full_expectations=False, at_home=False)
    assert (big.reflection, big.reflection_most) == (30, 30)
