"""Do the classes name a teacher, a room, a period and rotation days that exist?"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from trivet.model.problem import Problem
from trivet.model.school import Calendar, DayType, Room, SchoolClass, Settings
from trivet.reading.school.checks.known import not_known
from trivet.reading.school.days import held_days, meeting_days
from trivet.reading.school.sheet import Sheet


@dataclass(frozen=True, slots=True)
class Around:
    """What the classes lean on; None for what could not be read, and then nothing is said about it.

    `periods_written` are the names of periods that stand in bells.yml, those too whose times can't be so.
    """

    settings: Settings | None
    rooms: Mapping[str, Room] | None
    bells: Mapping[str, DayType] | None
    calendar: Calendar | None
    periods_written: Collection[str] = ()


def check_classes(sheet: Sheet, classes: Mapping[str, SchoolClass], around: Around) -> Iterator[Problem]:
    """Yield the names that nothing is called by, and late dates outside the year."""
    for class_id, school_class in classes.items():
        path = ("classes", class_id)
        if around.settings is not None and school_class.teacher not in around.settings.teachers:
            teachers = around.settings.teachers
            yield not_known(sheet, (*path, "teacher"), "teacher", school_class.teacher, teachers, home="`teachers:` in school/school.yml")
        if around.rooms is not None and school_class.room not in around.rooms:
            yield not_known(sheet, (*path, "room"), "room", school_class.room, around.rooms, home="school/rooms.yml")
        if around.bells is not None:
            periods = dict.fromkeys(name for day_type in around.bells.values() for name in day_type.periods)
            if school_class.period not in (*periods, *around.periods_written):
                yield not_known(sheet, (*path, "period"), "period", school_class.period, periods, home="school/bells.yml")
        if around.calendar is not None:
            yield from _meets(sheet, path, school_class, around.calendar)
            yield from _late(sheet, path, school_class, around.calendar)
        if around.calendar is not None and around.bells is not None:
            yield from _never(sheet, path, school_class, around.calendar, around.bells)


def _meets(sheet: Sheet, path: tuple[str, ...], school_class: SchoolClass, calendar: Calendar) -> Iterator[Problem]:
    for day in school_class.meets:
        if day not in calendar.rotation:
            home = "`rotation: days:` in school/calendar.yml"
            yield not_known(sheet, (*path, "meets"), "rotation day", day, calendar.rotation, home=home)


def _never(
    sheet: Sheet, path: tuple[str, ...], school_class: SchoolClass, calendar: Calendar, bells: Mapping[str, DayType]
) -> Iterator[Problem]:
    """A class whose period stands in bells.yml and whose rotation days there are, and that meets on no day all the same."""
    held = tuple(held_days(calendar))
    with_period = [name for name, day_type in bells.items() if school_class.period in day_type.periods]
    if not held or not with_period or not set(school_class.meets) <= set(calendar.rotation) or meeting_days(held, bells, school_class):
        return
    days = [day for day in held if day[1] in with_period]
    if days:
        what = f"no day with {school_class.period} is one of its rotation days, so that it never meets"
        yield sheet.warning("class-without-days", (*path, "meets"), what, "write other rotation days, or other bells for those days")
    else:
        types = " or ".join(name.replace("_", " ") for name in with_period)
        what = f"{school_class.period} stands only in day type {types}, which no day of the year has, so that the class never meets"
        yield sheet.warning(
            "class-without-days", (*path, "period"), what, "write another period, or give days that day type in the calendar"
        )


def _late(sheet: Sheet, path: tuple[str, ...], school_class: SchoolClass, calendar: Calendar) -> Iterator[Problem]:
    for late in school_class.late:
        if not calendar.first <= late.first <= calendar.last:
            what = f"{late.seat} joins on {late.first}, outside the school year"
            yield sheet.error("late-outside-year", (*path, "late"), what, f"write a date from {calendar.first} to {calendar.last}")


def sound_classes(classes: Mapping[str, SchoolClass], around: Around) -> Mapping[str, SchoolClass]:
    """Return the classes whose teacher, room and period there are, and that have students."""
    periods = {name for day_type in (around.bells or {}).values() for name in day_type.periods}
    teachers = around.settings.teachers if around.settings else {}
    rooms = around.rooms or {}
    return {i: c for i, c in classes.items() if c.teacher in teachers and c.room in rooms and c.period in periods and c.seats}
