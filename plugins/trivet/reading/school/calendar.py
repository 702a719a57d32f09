"""`school/calendar.yml`: the school year, its weeks, closures, terms and single days that differ."""

from __future__ import annotations

from datetime import date
from typing import Any

from trivet.model.problem import Problem
from trivet.model.school import Calendar, SpecialDay
from trivet.reading.school.sentences import read_key, read_sentence
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.values import listed, snake

WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


def read_calendar(sheet: Sheet) -> tuple[Calendar | None, tuple[Problem, ...]]:
    """Return the calendar, None where the year has no first or last day, and what is wrong in it."""
    problems: list[Problem] = []
    first = read_sentence(sheet, ("first day",), "date", sheet.data["first day"], problems)
    last = read_sentence(sheet, ("last day",), "date", sheet.data["last day"], problems)
    closures = _stretches(sheet, "closures", "days", problems)
    special = _special(sheet, problems)
    terms = _stretches(sheet, "terms", "term", problems)
    moved_earlier = _stretches(sheet, "moved earlier", "date", problems)
    short_notice = _stretches(sheet, "short notice", "days", problems)
    if first and last and first > last:
        what = f"the year ends on {last}, before it begins on {first}"
        problems.append(sheet.error("year-ends-first", ("last day",), what, "write the date of the last day of school"))
        last = None
    if not first or not last:
        return None, tuple(problems)
    rotation = sheet.data.get("rotation", {})
    calendar = Calendar(
        first=first,
        last=last,
        weekly={WEEKDAYS.index(name): snake(day_type) for name, day_type in sheet.data["week"].items()},
        rotation=listed(rotation.get("days")),
        slide=rotation.get("mode", "slide") == "slide",
        closures=closures,
        special=special,
        terms=terms,
        moved_earlier=tuple(sorted(set(moved_earlier))),
        short_notice=tuple(sorted(short_notice, key=lambda each: (each.first, each.last))),
    )
    return calendar, tuple(problems)


def _stretches(sheet: Sheet, key: str, form: str, problems: list[Problem]) -> tuple[Any, ...]:
    read = (read_sentence(sheet, (key, index), form, text, problems) for index, text in enumerate(sheet.data.get(key, [])))
    return tuple(each for each in read if each)


def _special(sheet: Sheet, problems: list[Problem]) -> dict[date, SpecialDay]:
    special = {}
    rotation = listed(sheet.data.get("rotation", {}).get("days"))
    for text, said in sheet.data.get("days", {}).items():
        on = read_key(sheet, ("days", text), "date", problems)
        if on:
            special[on] = special_day(said, rotation)
    return special


def special_day(said: Any, rotation: tuple[str, ...]) -> SpecialDay:
    """Return what `assembly`, `B` or `regular, B` makes of a day; a single word is a rotation day where the rotation has it."""
    first, *second = listed(said)
    if second:
        return SpecialDay(snake(first), second[0])
    return SpecialDay("", first) if first in rotation else SpecialDay(snake(first), "")
