"""On which dates a class meets, so that a run that starts on another day can be answered with the next one.

The rule is that of `planning.dates`, which reading may not import; a test holds the two to the same answer.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date, timedelta

from trivet.model.school import Calendar, DayType, SchoolClass


def held_days(calendar: Calendar) -> Iterator[tuple[date, str, str]]:
    """Yield each date on which school is held, with its day type and its rotation day ("" for none)."""
    place = 0
    for offset in range((calendar.last - calendar.first).days + 1):
        day = calendar.first + timedelta(days=offset)
        special = calendar.special.get(day)
        day_type = (special.day_type if special else "") or calendar.weekly.get(day.weekday(), "")
        closed = is_closed(calendar, day)
        if not day_type or (closed and calendar.slide):
            continue
        letter = calendar.rotation[place % len(calendar.rotation)] if calendar.rotation else ""
        if special and special.rotation_day and not closed:
            letter = special.rotation_day
            if calendar.slide and letter in calendar.rotation:
                place = calendar.rotation.index(letter)
        place += 1
        if not closed:
            yield day, day_type, letter


def is_closed(calendar: Calendar, day: date) -> bool:
    """Say whether a closure covers the date."""
    return any(closure.first <= day <= closure.last for closure in calendar.closures)


def meeting_days(held: tuple[tuple[date, str, str], ...], bells: Mapping[str, DayType], school_class: SchoolClass) -> tuple[date, ...]:
    """Return the dates on which the class meets: on its rotation days, where the day's bell schedule has its period."""
    with_period = {name for name, day_type in bells.items() if school_class.period in day_type.periods}
    meets = school_class.meets
    return tuple(day for day, day_type, letter in held if day_type in with_period and (not meets or letter in meets))
