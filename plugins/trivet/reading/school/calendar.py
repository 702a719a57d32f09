"""`school/calendar.yml`: the school year, its weeks, closures, terms and single days that differ."""

from __future__ import annotations

from datetime import date
from typing import Any

from trivet.model.problem import Problem
from trivet.model.school import Calendar, Closure, SpecialDay, Term
from trivet.reading.school.dates import dates_in, read_date
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.values import comma_list, snake

WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
Path = tuple[str | int, ...]


def read_calendar(sheet: Sheet) -> tuple[Calendar | None, tuple[Problem, ...]]:
    """Return the calendar, None where the year has no first or last day, and what is wrong in it."""
    problems: list[Problem] = []
    first = read_date(sheet, ("first day",), sheet.data["first day"], problems)
    last = read_date(sheet, ("last day",), sheet.data["last day"], problems)
    closures = tuple(_closures(sheet, problems))
    special = _special(sheet, problems)
    terms = tuple(_terms(sheet, problems))
    if first and last and first > last:
        what = f"the year ends on {last}, before it begins on {first}"
        problems.append(sheet.error("ends-before-start", ("last day",), what, "write the date of the last day of school"))
        last = None
    if not first or not last:
        return None, tuple(problems)
    rotation = sheet.data.get("rotation", {})
    calendar = Calendar(
        first=first,
        last=last,
        weekly={WEEKDAYS.index(name): snake(day_type) for name, day_type in sheet.data["week"].items()},
        rotation=comma_list(rotation.get("days", [])),
        slide=rotation.get("mode", "slide") == "slide",
        closures=closures,
        special=special,
        terms=terms,
    )
    return calendar, tuple(problems)


def _closures(sheet: Sheet, problems: list[Problem]) -> list[Closure]:
    read = (_stretch(sheet, ("closures", index), text, problems) for index, text in enumerate(sheet.data.get("closures", [])))
    return [Closure(first, last, rest) for first, last, rest in filter(None, read)]


def _terms(sheet: Sheet, problems: list[Problem]) -> list[Term]:
    terms = []
    for index, text in enumerate(sheet.data.get("terms", [])):
        name, _, dates = text.partition(",")
        if stretch := _stretch(sheet, ("terms", index), dates, problems):
            terms.append(Term(name.strip(), stretch[0], stretch[1]))
    return terms


def _stretch(sheet: Sheet, path: Path, text: str, problems: list[Problem]) -> tuple[date, date, str] | None:
    one, other, rest = dates_in(text)
    first = read_date(sheet, path, one, problems)
    last = read_date(sheet, path, other, problems) if other != one else first
    if first and last and first > last:
        problems.append(sheet.error("ends-before-start", path, f"{last} comes before {first}", f"write {last} to {first}"))
        return None
    return (first, last, rest) if first and last else None


def _special(sheet: Sheet, problems: list[Problem]) -> dict[date, SpecialDay]:
    special = {}
    rotation = comma_list(sheet.data.get("rotation", {}).get("days", []))
    for text, said in sheet.data.get("days", {}).items():
        on = read_date(sheet, ("days", text), text, problems, at_key=True)
        if on:
            special[on] = special_day(said, rotation)
    return special


def special_day(said: Any, rotation: tuple[str, ...]) -> SpecialDay:
    """Return what `assembly`, `B` or `regular, B` makes of a day; a single word is a rotation day where the rotation has it."""
    parts = comma_list(said)
    if len(parts) == 2:
        return SpecialDay(snake(parts[0]), parts[1])
    return SpecialDay("", parts[0]) if parts[0] in rotation else SpecialDay(snake(parts[0]), "")
