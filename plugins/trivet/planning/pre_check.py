"""When the pre-check stands: at the end of an earlier meeting, outside the unit's own days."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from datetime import date

from trivet.model.plan import Day, PreCheck
from trivet.planning.dates import Meeting
from trivet.planning.day import clock
from trivet.planning.halves import halves
from trivet.planning.halves import minutes as in_minutes

SCHOOL_DAYS_BEFORE = 2
"""Time to read the answers and draw groups from them."""


def pre_check(
    class_meetings: Sequence[Meeting],
    first_round: Meeting,
    planned: Mapping[date, Day],
    lost: Collection[date],
    minutes: float,
    *,
    since: date = date.min,
) -> PreCheck | None:
    """Return the last meeting at least two school days before round 1 that has room, None where there is none from `since` on.

    A day of an earlier unit (`planned`) has room where its surplus holds the pre-check.
    """
    long = halves(minutes)
    for meeting in reversed(class_meetings):
        if meeting.date < since:
            break
        if meeting.index > first_round.index - SCHOOL_DAYS_BEFORE or meeting.date in lost:
            continue
        taken = planned.get(meeting.date)
        room = 2 * meeting.minutes if taken is None else halves(taken.surplus_minutes)
        if room >= long:
            return PreCheck(meeting.date, clock(meeting.start, 2 * meeting.minutes - long), in_minutes(long))
    return None
