"""Does the calendar name day types that the bell schedules have, and days that lie in the year?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import timedelta

from trivet.model.problem import Problem
from trivet.model.school import Calendar, DayType
from trivet.reading.forms import Unreadable, date_of, date_range, term
from trivet.reading.school.checks.known import not_known
from trivet.reading.school.days import held_days, is_closed
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.values import listed, snake, spoken

BELLS = "school/bells.yml"
MOST_DAYS = 400
"""A school year of thirteen months; more is another year's date."""


def check_calendar(sheet: Sheet, calendar: Calendar, bells: Mapping[str, DayType]) -> Iterator[Problem]:
    """Yield what is wrong with day types, rotation days and dates."""
    yield from _year(sheet, calendar)
    yield from _week(sheet, bells)
    yield from _rotation(sheet, calendar)
    yield from _special(sheet, calendar, bells)
    yield from _stretches(sheet, calendar)
    yield from _moved_earlier(sheet, calendar)


def _year(sheet: Sheet, calendar: Calendar) -> Iterator[Problem]:
    days = (calendar.last - calendar.first).days + 1
    if days > MOST_DAYS:
        what = f"the year from {calendar.first} to {calendar.last} has {days:,} days"
        yield sheet.error("year-too-long", ("last day",), what, "write the last day of one school year")
    elif next(held_days(calendar), None) is None:
        what = f"no school is held on any day from {calendar.first} to {calendar.last}"
        yield sheet.error("year-without-school", ("first day",), what, "mend the two dates, the weekdays under `week`, or the closures")


def _week(sheet: Sheet, bells: Mapping[str, DayType]) -> Iterator[Problem]:
    for weekday, day_type in sheet.data["week"].items():
        if snake(day_type) not in bells:
            yield not_known(sheet, ("week", weekday), "day type", day_type, map(spoken, bells), home=BELLS)


def _rotation(sheet: Sheet, calendar: Calendar) -> Iterator[Problem]:
    for day in sorted({day for day in calendar.rotation if calendar.rotation.count(day) > 1}):
        yield sheet.error("rotation-day-twice", ("rotation", "days"), f"{day} stands here twice", "leave one of them out")


def _special(sheet: Sheet, calendar: Calendar, bells: Mapping[str, DayType]) -> Iterator[Problem]:
    for text, said in sheet.data.get("days", {}).items():
        path = ("days", text)
        day_type, *letter = listed(said)
        if snake(day_type) not in bells and (letter or day_type not in calendar.rotation):
            known = tuple(map(spoken, bells)) if letter else (*map(spoken, bells), *calendar.rotation)
            yield not_known(sheet, path, "day type", day_type, known, home=BELLS)
        if letter and letter[0] not in calendar.rotation:
            yield not_known(sheet, path, "rotation day", letter[0], calendar.rotation, home="`rotation: days:`")
    for on in calendar.special:
        path = ("days", on.isoformat())
        if not calendar.first <= on <= calendar.last:
            yield sheet.warning("outside-year", path, f"{on} lies outside the school year", _the_year(calendar), at_key=True)
        elif is_closed(calendar, on):
            what = f"{on} is closed, and has a day type or rotation day here"
            yield sheet.error("closed-and-held", path, what, "leave it out here, or take it out of the closures", at_key=True)


def _stretches(sheet: Sheet, calendar: Calendar) -> Iterator[Problem]:
    for key, form in (("closures", date_range), ("terms", term)):
        for index, text in enumerate(sheet.data.get(key, [])):
            read = form(text)
            if isinstance(read, Unreadable) or (calendar.first <= read.first and read.last <= calendar.last):
                continue
            what = f"{read.first} to {read.last} lies" if read.first != read.last else f"{read.first} lies"
            yield sheet.warning("outside-year", (key, index), f"{what} outside the school year", _the_year(calendar))


def _moved_earlier(sheet: Sheet, calendar: Calendar) -> Iterator[Problem]:
    for index, text in enumerate(sheet.data.get("moved earlier", [])):
        read = date_of(text)
        if not isinstance(read, Unreadable) and not calendar.first <= read <= calendar.last:
            yield sheet.warning("outside-year", ("moved earlier", index), f"{read} lies outside the school year", _the_year(calendar))


def check_short_notice(sheet: Sheet, calendar: Calendar) -> Iterator[Problem]:
    """Yield days of short notice that lie outside the year, or are as usual; `calendar` holds what calendar files say, too."""
    for index, text in enumerate(sheet.data.get("short notice", [])):
        read = date_range(text)
        if isinstance(read, Unreadable):
            continue
        path = ("short notice", index)
        days = [read.first + timedelta(days=number) for number in range((read.last - read.first).days + 1)]
        if not calendar.first <= read.first <= read.last <= calendar.last:
            yield sheet.warning("outside-year", path, f"{text} lies outside the school year", _the_year(calendar))
        elif not any(is_closed(calendar, day) or day in calendar.special for day in days):
            what = f"{text} is as usual: nothing stands for it under `closures` or `days`"
            yield sheet.warning("notice-of-nothing", path, what, "write there what it is, or leave this line out")


def _the_year(calendar: Calendar) -> str:
    return f"write a date from {calendar.first} to {calendar.last}"
