"""A run's days as entries of a calendar: one a planned day and one for its pre-check.

A calendar program knows an entry again by its `uid` and takes the one with the larger `sequence` for the newer (RFC 5545 3.8.4.7,
3.8.7.4). Both must come from committed files alone, and nothing there says how often a lesson has been moved.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, time

from trivet.model.department import Department
from trivet.model.plan import Day, Plan, Plans
from trivet.model.school import Calendar

WITHOUT_SITE = "trivet"
"""Stands for the site's address where the school has none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LessonEvent:
    """One entry, in the school's local time, [start, end). `number` counts the planned days of the run from 1.

    `day` is None for the pre-check, whose `number` is 1.
    """

    uid: str
    sequence: int
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


def event_sequence(calendar: Calendar, day: date) -> int:
    """Return twice the days from the first day of the school year, and one more where `day` has not its weekday's usual bells.

    So all that a year brings raises it: a lost day, a closure or a later start moves the entry to a later date, and a special
    bell schedule adds one. No function of the files alone can rise whenever an entry moves, since a lesson may move back to where it
    was: then the number falls with it, and a program that was given the later date keeps it until the old entries are deleted
    (programs that follow the address of the file are not concerned).
    """
    special = calendar.special.get(day)
    other_bells = special is not None and special.day_type not in ("", calendar.weekly.get(day.weekday(), ""))
    return 2 * (day - calendar.first).days + (1 if other_bells else 0)


def _events(department: Department, plan: Plan) -> Iterator[LessonEvent]:
    calendar = department.school.calendar
    if plan.pre_check is not None:
        check = plan.pre_check
        yield LessonEvent(
            uid=event_uid(department, plan, "pre-check", 1),
            sequence=event_sequence(calendar, check.date),
            plan=plan,
            number=1,
            date=check.date,
            start=check.start,
            end=_after(check.start, check.minutes),
        )
    for number, day in enumerate(plan.days, 1):
        yield LessonEvent(
            uid=event_uid(department, plan, "day", number),
            sequence=event_sequence(calendar, day.date),
            plan=plan,
            number=number,
            date=day.date,
            start=day.start,
            end=day.end,
            day=day,
        )


def _after(start: time, minutes: float) -> time:
    """The clock so many minutes later, rounded up to a whole minute; at the end of the day it stops."""
    total = min(24 * 60 - 1, start.hour * 60 + start.minute + -int(-minutes // 1))
    return time(total // 60, total % 60)
