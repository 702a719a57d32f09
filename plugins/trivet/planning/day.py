"""The blocks of one day, end to end from the bell, and how the minutes left over are dealt."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import time

from trivet.model.plan import Block, Day
from trivet.planning.costs import Costs, DayParts, overhead
from trivet.planning.dates import Meeting
from trivet.planning.halves import minutes as in_minutes


@dataclass(frozen=True, slots=True)
class Dealt:
    """Half minutes of the parts of a day that stretch; `surplus` is what is left of the period after all of them."""

    evidence: int
    reflection: int
    pack_up: int
    surplus: int


def deal(period_minutes: int, parts: DayParts, station_minutes: int, costs: Costs, *, lengths: Sequence[int] | None = None) -> Dealt:
    """Deal what is left of a period: first one evidence line on a day with a round, then reflection, then pack-up; the rest stays.

    `lengths` are the half minutes at the stations in each round where they are known otherwise.
    Raises ValueError where the parts do not fit the period.
    """
    at_stations = sum(parts.lengths(station_minutes) if lengths is None else lengths)
    left = 2 * period_minutes - overhead(parts, costs) - at_stations
    if left < 0:
        raise ValueError(f"{parts} with {at_stations} half minutes at stations needs {-left} half minutes more than {period_minutes} min")
    evidence = costs.evidence if parts.rounds and left >= costs.evidence else 0
    left -= evidence
    more_reflection = min(left, costs.reflection_most - costs.reflection)
    left -= more_reflection
    more_pack_up = min(left, costs.pack_up_most - costs.pack_up)
    left -= more_pack_up
    return Dealt(evidence, costs.reflection + more_reflection, costs.pack_up + more_pack_up, left)


def make_day(
    meeting: Meeting, parts: DayParts, first_round: int, station_minutes: int, costs: Costs, *, lengths: Sequence[int] | None = None
) -> Day:
    """Lay out one day. `first_round` is the number of its first round, from 1; parts of no length leave no block.

    `lengths` as for `deal`.
    """
    lengths = parts.lengths(station_minutes) if lengths is None else lengths
    dealt = deal(meeting.minutes, parts, station_minutes, costs, lengths=lengths)
    blocks: list[Block] = []
    at = 0
    for kind, half_minutes, round_number in _in_order(parts, first_round, lengths, costs, dealt):
        if half_minutes:
            blocks.append(Block(kind, in_minutes(at), clock(meeting.start, at), in_minutes(half_minutes), round_number))
            at += half_minutes
    return Day(
        date=meeting.date,
        day_type=meeting.day_type,
        start=meeting.start,
        end=meeting.end,
        minutes=meeting.minutes,
        surplus_minutes=in_minutes(dealt.surplus),
        blocks=tuple(blocks),
    )


def clock(start: time, half_minutes: int) -> time:
    """Return the clock time so many half minutes after `start`, rounded down to a minute, for reading."""
    total = start.hour * 60 + start.minute + half_minutes // 2
    return time(total // 60 % 24, total % 60)


def _in_order(parts: DayParts, first_round: int, lengths: Sequence[int], costs: Costs, dealt: Dealt) -> list[tuple[str, int, int | None]]:
    """Kind, half minutes and round of every block of a day."""
    row: list[tuple[str, int, int | None]] = [("settle_in", costs.settle_in, None)]
    if parts.first:
        row.append(("expectations", costs.expectations, None))
    if parts.rounds:
        row.append(("places", costs.places, None))
    for number, length in enumerate(lengths, first_round):
        if number > first_round:
            row.append(("move", costs.move, None))
        resumed = parts.resumes and number == first_round
        row.append(("recap", costs.recap, number) if resumed else ("launch", costs.launch, number))
        row += [("station", length, number), ("clean_up", costs.clean_up, number)]
    row.append(("evidence", dealt.evidence, None))
    row.append(("write_up", parts.write_up, None))
    row += [("reflection", dealt.reflection, None), ("pack_up", dealt.pack_up, None)]
    return row
