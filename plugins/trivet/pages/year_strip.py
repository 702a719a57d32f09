"""The year as a strip: weeks by classes, a unit's number where a class works on it, the weeks without school between."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import groupby

from trivet.model.department import Department
from trivet.model.plan import Plan, Plans
from trivet.model.school import Calendar
from trivet.pages.scale import place_class
from trivet.pages.spoken import month, month_day
from trivet.pages.words import Words
from trivet.planning.class_years import ClassYear
from trivet.planning.halves import spoken

WEEK = timedelta(days=7)
MOST_CLASSES = 9
"""On 320 px a class then has 24, enough for its name."""


@dataclass(frozen=True, slots=True)
class Cell:
    """A stretch of weeks. `css` places it; `first` and `last` are dates for the script that marks this week; `note` stands beside it."""

    css: str
    text: str
    first: str = ""
    last: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Strip:
    """Everything that is drawn. `css` says how many weeks and classes there are; `label` says the same to a screen reader."""

    css: str
    weeks: int
    months: tuple[Cell, ...]
    numbers: tuple[Cell, ...]
    classes: tuple[Cell, ...]
    closed: tuple[Cell, ...]
    terms: tuple[Cell, ...]
    runs: tuple[Cell, ...]
    label: str


def strips(department: Department, plans: Plans, numbers: Mapping[str, int], years: Sequence[ClassYear], words: Words) -> tuple[Strip, ...]:
    """Return the strip of a department, in parts of as many classes as a narrow phone shows side by side.

    `numbers` gives each unit its number, `years` each class its shortest period.
    """
    parts = -(-len(years) // MOST_CLASSES)
    most = -(-len(years) // parts) if parts else 1
    return tuple(_strip(department, plans, numbers, years[at : at + most], words) for at in range(0, len(years), most))


def _strip(department: Department, plans: Plans, numbers: Mapping[str, int], years: Sequence[ClassYear], words: Words) -> Strip:
    mondays = mondays_of(department.school.calendar)
    classes = [each.class_id for each in years]
    return Strip(
        css=f"{place_class('nw', len(mondays))} {place_class('nc', len(classes))}",
        weeks=len(mondays),
        months=tuple(_months(mondays, words)),
        numbers=tuple(_numbers(mondays, department.school.calendar)),
        classes=tuple(
            Cell(place_class("cl", row), each.class_id, note=spoken(each.least) if each.least else "") for row, each in enumerate(years, 1)
        ),
        closed=tuple(_closed(mondays, department.school.calendar, len(classes))),
        terms=tuple(_terms(mondays, department.school.calendar)),
        runs=tuple(cell for row, class_id in enumerate(classes, 1) for cell in _runs(row, class_id, mondays, plans, numbers)),
        label=words("year.label", classes=len(classes), weeks=len(mondays)),
    )


def mondays_of(calendar: Calendar) -> tuple[date, ...]:
    """Return the Monday of each week of the school year."""
    first = calendar.first - timedelta(days=calendar.first.weekday())
    return tuple(first + WEEK * number for number in range((calendar.last - first).days // 7 + 1))


def unit_numbers(plans: Sequence[Plan]) -> dict[str, int]:
    """Number the planned units from 1 in the order in which the department first meets them."""
    first: dict[str, date] = {}
    for plan in plans:
        if plan.days:
            first[plan.unit] = min(plan.days[0].date, first.get(plan.unit, plan.days[0].date))
    return {slug: number for number, slug in enumerate(sorted(first, key=lambda slug: (first[slug], slug)), 1)}


def _months(mondays: Sequence[date], words: Words) -> Iterator[Cell]:
    """A month begins with the week that holds its first day, the first one with the year."""
    starts = [(number, each + 6 * timedelta(days=1)) for number, each in enumerate(mondays, 1)]
    for _, group in groupby(starts, key=lambda start: (start[1].year, start[1].month)):
        weeks = list(group)
        number, last_day = weeks[0]
        yield Cell(f"{place_class('wk', number)} {place_class('sp', len(weeks))}", month(last_day, words))


def _numbers(mondays: Sequence[date], calendar: Calendar) -> Iterator[Cell]:
    begins = {term.first - timedelta(days=term.first.weekday()) for term in calendar.terms}
    for number, monday in enumerate(mondays, 1):
        css = f"{place_class('wk', number)}{' begins' if monday in begins else ''}"
        yield Cell(css, str(number), monday.isoformat(), (monday + timedelta(days=6)).isoformat())


def _terms(mondays: Sequence[date], calendar: Calendar) -> Iterator[Cell]:
    """A term stands under its weeks, from the one it begins in; one that lies over a shorter one, as a semester does, is left out."""
    free = mondays[0]
    for term in sorted(calendar.terms, key=lambda term: (term.last, term.first)):
        first, last = max(term.first, mondays[0]), min(term.last, mondays[-1] + timedelta(days=6))
        monday = first - timedelta(days=first.weekday())
        if free <= monday <= last:
            weeks = (last - monday).days // 7 + 1
            yield Cell(f"{place_class('wk', (monday - mondays[0]).days // 7 + 1)} {place_class('sp', weeks)}", term.name)
            free = monday + WEEK * weeks


def _closed(mondays: Sequence[date], calendar: Calendar, rows: int) -> Iterator[Cell]:
    """Weeks in which every school day is closed, put together where the reason is one."""
    reasons = [(number, _reason(monday, calendar)) for number, monday in enumerate(mondays, 1)]
    for reason, group in groupby(reasons, key=lambda week: week[1]):
        weeks = [number for number, _ in group]
        if reason is not None:
            yield Cell(f"{place_class('wk', weeks[0])} {place_class('sp', len(weeks))} {place_class('sc', rows)}", reason)


def _reason(monday: date, calendar: Calendar) -> str | None:
    """Why no school is held in a week, None where it is."""
    week = [monday + timedelta(days=offset) for offset in range(7)]
    days = [day for day in week if calendar.first <= day <= calendar.last and (day.weekday() in calendar.weekly or day in calendar.special)]
    closures = [next((each for each in calendar.closures if each.first <= day <= each.last), None) for day in days]
    if not days or None in closures:
        return None
    return next(closure.reason for closure in closures if closure)


def _runs(row: int, class_id: str, mondays: Sequence[date], plans: Plans, numbers: Mapping[str, int]) -> Iterator[Cell]:
    """The units of a class by week; a week with two of them names both."""
    held: dict[int, dict[str, Plan]] = {}
    for plan in plans.plans:
        for day in plan.days if plan.class_id == class_id else ():
            held.setdefault((day.date - mondays[0]).days // 7 + 1, {})[plan.unit] = plan
    weeks = sorted(held)
    runs = [(week, tuple(held[week])) for week in weeks]
    # Weeks that follow each other have the same difference to their place in the list.
    for (units, _), group in groupby(enumerate(runs), key=lambda each: (each[1][1], each[1][0] - each[0])):
        found = [week for _, (week, _) in group]
        own = [held[found[0]][unit] for unit in units]
        monday, end = mondays[found[0] - 1], mondays[found[-1] - 1] + timedelta(days=6)
        days = [day.date for plan in own for day in plan.days if monday <= day.date <= end]
        yield Cell(
            css=" ".join(
                (
                    place_class("wk", found[0]),
                    place_class("sp", len(found)),
                    place_class("cl", row),
                    *(("first",) if any(plan.way == "whole_class" for plan in own) else ()),
                )
            ),
            text=" ".join(str(numbers[unit]) for unit in units),
            first=min(days).isoformat(),
            last=max(days).isoformat(),
        )


def closed_days(calendar: Calendar, words: Words) -> tuple[tuple[str, str], ...]:
    """Return the days without school as text with their reasons, in order."""
    found = []
    for each in sorted(calendar.closures, key=lambda closure: (closure.first, closure.last)):
        first, last = month_day(each.first, words), month_day(each.last, words)
        found.append((first if first == last else words("year.span", first=first, last=last), each.reason))
    return tuple(dict.fromkeys(found))
