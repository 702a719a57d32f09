"""What was known when: a class's meetings before and after each change of the calendar that came at short notice.

A closed day or other bells are usually known before a unit begins, and its plan makes the best of them. What comes at short notice finds
plans under way: what lies before it was planned without it, and went so.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from trivet.model.school import Calendar, Closure, DayType, SchoolClass
from trivet.planning.dates import Meeting, SchoolDay, meetings, school_days

ONE_DAY = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Known:
    """The meetings of a class as they were known from `since` on."""

    since: date
    meetings: tuple[Meeting, ...]


def known_before(calendar: Calendar, day: date) -> Calendar:
    """Return the calendar as it was before a date: without what came at short notice on that date or later."""
    later = [each for each in calendar.short_notice if each.first >= day]
    if not later:
        return calendar
    closures = tuple(part for closure in calendar.closures for part in without(closure, later))
    special = {on: what for on, what in calendar.special.items() if not _among(on, later)}
    return replace(calendar, closures=closures, special=special)


def without(closure: Closure, others: Sequence[Closure]) -> Iterator[Closure]:
    """Yield the parts of a stretch of days that no other one covers."""
    first = closure.first
    for each in sorted(others, key=lambda each: each.first):
        if each.last < first or each.first > closure.last:
            continue
        if each.first > first:
            yield replace(closure, first=first, last=each.first - ONE_DAY)
        first = each.last + ONE_DAY
    if first <= closure.last:
        yield replace(closure, first=first)


def days_as_known(calendar: Calendar) -> tuple[tuple[date, tuple[SchoolDay, ...]], ...]:
    """Return the school days as they were known first and from each short notice on; () where none came."""
    if not calendar.short_notice:
        return ()
    sinces = sorted({each.first for each in calendar.short_notice})
    later = [(since, school_days(known_before(calendar, since + ONE_DAY))) for since in sinces]
    return (date.min, school_days(known_before(calendar, date.min))), *later


def class_as_known(
    days: Sequence[tuple[date, tuple[SchoolDay, ...]]], bells: Mapping[str, DayType], school_class: SchoolClass
) -> tuple[Known, ...]:
    """Return the same as the meetings of one class."""
    return tuple(Known(since, meetings(held, bells, school_class)) for since, held in days)


def _among(day: date, stretches: Sequence[Closure]) -> bool:
    return any(each.first <= day <= each.last for each in stretches)
