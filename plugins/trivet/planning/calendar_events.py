"""A run's days as entries of a calendar: one a planned day and one for its pre-check.

A calendar program knows an entry again by its `uid`, takes the one with the larger `sequence` for the newer, and of two with the same
number the one with the later `stamp` (RFC 5545 3.8.4.7, 3.8.7.2, 3.8.7.4; RFC 5546 2.1.5). All three come from committed files alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, time

from trivet.model.department import Department
from trivet.model.plan import Day, Plan, Plans
from trivet.model.school import Calendar, School

STEP = 10_000
"""More than twice the days of any school year."""

WITHOUT_SITE = "trivet"
"""Stands for the site's address where the school has none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LessonEvent:
    """One entry, in the school's local time, [start, end). `number` counts the planned days of the run from 1.

    `day` is None for the pre-check, whose `number` is 1.
    """

    uid: str
    sequence: int
    stamp: date
    plan: Plan
    number: int
    date: date
    start: time
    end: time
    day: Day | None = None


def calendar_events(department: Department, plans: Plans, class_id: str) -> tuple[LessonEvent, ...]:
    """Return the entries of a class by date and clock."""
    found = [event for plan in plans.plans if plan.class_id == class_id for event in _events(department, plan)]
    return tuple(sorted(found, key=lambda event: (event.date, event.start, event.uid)))


def event_uid(department: Department, plan: Plan, kind: str, number: int) -> str:
    """Return the name of an entry over its whole life: year, class, unit, kind and number, at the address of the site.

    The date is no part of it, so that a moved lesson stays the same entry; the year is, so that next year's is another one.
    """
    settings, calendar = department.school.settings, department.school.calendar
    home = settings.site.partition("://")[2].strip("/") or WITHOUT_SITE
    return f"{calendar.first.year}-{plan.class_id}-{plan.unit}-{kind}-{number}@{home}"


def event_sequence(school: School, class_id: str, day: date) -> int:
    """Return the number of a class's entry on `day`: it rises with the date, with other bells there, and with what was moved earlier.

    Twice the days from the first day of the school year, and one more where `day` has not its weekday's usual bells: a lost day, a
    closure or a later start moves an entry to a later date and so raises its number, and leaves those that stay alone. On top,
    `STEP` for each date up to `day` on which lessons were moved earlier (`moved earlier:` in calendar.yml), and for each date before
    it on which the class's rounds are recorded as done, since both may bring an entry forward; a step outweighs a whole year of days.

    Files that become again what they were give again the numbers that they gave: no function of them alone can rise when an entry
    moves back. So somebody has to write down that it did, which is what `moved earlier:` is for.
    """
    calendar = school.calendar
    special = calendar.special.get(day)
    other_bells = special is not None and special.day_type not in ("", calendar.weekly.get(day.weekday(), ""))
    done = {each.date for run in school.runs if run.class_id == class_id for each in run.done}
    steps = sum(each <= day for each in calendar.moved_earlier) + sum(each < day for each in done)
    return STEP * steps + 2 * (day - calendar.first).days + (1 if other_bells else 0)


def event_stamp(calendar: Calendar, day: date) -> date:
    """Return when an entry on `day` was last revised, as far as the files know: the last date of `moved earlier` up to it.

    There is no clock in the files: without such a date it is the first day of the school year, in every build.
    """
    return max((each for each in calendar.moved_earlier if each <= day), default=calendar.first)


def _events(department: Department, plan: Plan) -> Iterator[LessonEvent]:
    if plan.pre_check is not None:
        check = plan.pre_check
        yield _event(department, plan, "pre-check", on=check.date, start=check.start, end=_after(check.start, check.minutes))
    for number, day in enumerate(plan.days, 1):
        yield _event(department, plan, "day", number, on=day.date, start=day.start, end=day.end, day=day)


def _event(
    department: Department, plan: Plan, kind: str, number: int = 1, *, on: date, start: time, end: time, day: Day | None = None
) -> LessonEvent:
    school = department.school
    return LessonEvent(
        uid=event_uid(department, plan, kind, number),
        sequence=event_sequence(school, plan.class_id, on),
        stamp=event_stamp(school.calendar, on),
        plan=plan,
        number=number,
        date=on,
        start=start,
        end=end,
        day=day,
    )


def _after(start: time, minutes: float) -> time:
    """The clock so many minutes later, rounded up to a whole minute; at the end of the day it stops."""
    total = min(24 * 60 - 1, start.hour * 60 + start.minute + -int(-minutes // 1))
    return time(total // 60, total % 60)
