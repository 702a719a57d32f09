"""On which dates school is held, which rotation day each is, and when a class meets."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, time, timedelta

from trivet.model.school import Calendar, DayType, SchoolClass


@dataclass(frozen=True, slots=True)
class SchoolDay:
    """A day on which school is held. `rotation_day` is "" where the school has no rotation; `index` counts school days from 0."""

    date: date
    day_type: str
    rotation_day: str
    index: int


@dataclass(frozen=True, slots=True)
class Meeting:
    """One period of one class on one date, half-open: [start, end). `index` is that of its school day."""

    date: date
    day_type: str
    start: time
    end: time
    minutes: int
    index: int


def school_days(calendar: Calendar) -> tuple[SchoolDay, ...]:
    """Return the days of the year on which school is held, in order.

    A weekday is a school day where `weekly` names its day type, any date where `special` does; a closure outranks both.
    Rotation: under `slide` a closed day does not use up its letter, and a date whose letter is overridden re-sets the
    sequence, which goes on from it; under `fixed` letters belong to dates, so a closed day uses up its letter and an override
    holds for that date alone.
    """
    held: list[SchoolDay] = []
    place = 0
    for day in _dates(calendar.first, calendar.last):
        special = calendar.special.get(day)
        day_type = (special.day_type if special else "") or calendar.weekly.get(day.weekday(), "")
        if not day_type:
            continue
        closed = any(closure.first <= day <= closure.last for closure in calendar.closures)
        if closed and calendar.slide:
            continue
        letter = calendar.rotation[place % len(calendar.rotation)] if calendar.rotation else ""
        if special and special.rotation_day and not closed:
            letter = special.rotation_day
            if calendar.slide and letter in calendar.rotation:
                place = calendar.rotation.index(letter)
        place += 1
        if not closed:
            held.append(SchoolDay(day, day_type, letter, len(held)))
    return tuple(held)


def meetings(days: Sequence[SchoolDay], bells: Mapping[str, DayType], school_class: SchoolClass) -> tuple[Meeting, ...]:
    """Return when a class meets: on its rotation days, where the day's bell schedule has its period."""
    found = []
    for day in days:
        if school_class.meets and day.rotation_day not in school_class.meets:
            continue
        day_type = bells.get(day.day_type)
        period = day_type.periods.get(school_class.period) if day_type else None
        if period is not None and period.minutes > 0:
            found.append(Meeting(day.date, day.day_type, period.start, period.end, period.minutes, day.index))
    return tuple(found)


def meetings_of_run(class_meetings: Sequence[Meeting], starts: date, lost: Sequence[date]) -> tuple[Meeting, ...]:
    """Return the meetings a run may use: from its first date on, without the days lost."""
    return tuple(meeting for meeting in class_meetings if meeting.date >= starts and meeting.date not in lost)


def _dates(first: date, last: date) -> Iterator[date]:
    for offset in range((last - first).days + 1):
        yield first + timedelta(days=offset)
