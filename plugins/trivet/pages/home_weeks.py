"""All planned weeks of the year by class: what stands on which day."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, time, timedelta

from trivet.model.department import Department
from trivet.model.plan import Day, Plan, Plans
from trivet.model.school import Calendar, Term
from trivet.pages.days import stations_of
from trivet.pages.lesson_page import rounds_of
from trivet.pages.links import HOME, lesson_address, relative
from trivet.pages.spoken import clock, month_day, short_date, weekday
from trivet.pages.stations import tag
from trivet.pages.when import when_lines
from trivet.pages.words import Words
from trivet.planning.dates import meetings, school_days


@dataclass(frozen=True, slots=True)
class Cell:
    """A day of a row. `text` is "" where nothing stands; the rest is for the script that opens today."""

    date: str
    text: str
    full: str = ""
    start: str = ""
    end: str = ""
    title: str = ""
    where: str = ""


@dataclass(frozen=True, slots=True)
class Row:
    """A class's unit in a week."""

    class_id: str
    time: str
    unit: str
    href: str
    room: str
    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True)
class WeekView:
    """A week with something planned. `without` names the classes that have no unit in it.

    `when` says of what begins or ends in it how its first day was found, and by when it is to end.
    """

    id: str
    title: str
    heads: tuple[tuple[str, str], ...]
    rows: tuple[Row, ...]
    without: str
    when: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class TermView:
    """A term with its planned weeks."""

    name: str
    span: str
    weeks: tuple[WeekView, ...]


def terms(department: Department, plans: Plans, words: Words) -> tuple[TermView, ...]:
    """Return the terms of the year that have planned weeks; what lies in no term stands under the year."""
    calendar = department.school.calendar
    bells = _starts(department)
    weeks = {monday: _week(monday, department, plans, bells, words) for monday in sorted(_mondays(plans))}
    found = []
    for term in (*calendar.terms, None):
        mine = tuple(weeks[m] for m in weeks if _term_of(m, calendar) == term)
        if mine and term is None:
            found.append(TermView(words("home.no_term"), "", mine))
        elif mine and term is not None:
            span = words("home.term_span", first=month_day(term.first, words), last=month_day(term.last, words))
            found.append(TermView(term.name, span, mine))
    return tuple(found)


def _mondays(plans: Plans) -> set[date]:
    days = [day.date for plan in plans.plans for day in plan.days]
    checks = [plan.pre_check.date for plan in plans.plans if plan.pre_check]
    return {day - timedelta(days=day.weekday()) for day in (*days, *checks)}


def _term_of(monday: date, calendar: Calendar) -> Term | None:
    """The first term that has a day of the week."""
    return next((t for t in calendar.terms if t.first <= monday + timedelta(days=6) and monday <= t.last), None)


def _starts(department: Department) -> dict[tuple[str, date], time]:
    """When each class begins on each of its days."""
    school = department.school
    days = school_days(school.calendar)
    return {(each.id, m.date): m.start for each in school.classes.values() for m in meetings(days, school.bells, each)}


def _week(monday: date, department: Department, plans: Plans, bells: Mapping[tuple[str, date], time], words: Words) -> WeekView:
    weekdays = sorted({*department.school.calendar.weekly, *(d.date.weekday() for p in plans.plans for d in p.days)})
    dates = [monday + timedelta(days=each) for each in weekdays]
    rows = sorted(_rows(dates, department, plans, bells, words), key=lambda row: row[0])
    classes = department.school.classes
    without = [each for each in classes if each not in {row.class_id for _, row in rows}]
    return WeekView(
        id=monday.isoformat(),
        title=words("home.week", date=month_day(monday, words)),
        heads=tuple((weekday(day, words), day.isoformat()) for day in dates),
        rows=tuple(row for _, row in rows),
        without=words("home.no_unit", classes=", ".join(without)) if without else "",
        when=tuple(_when(dates, department, plans, words)),
    )


def _when(dates: list[date], department: Department, plans: Plans, words: Words) -> Iterator[str]:
    for plan in plans.plans:
        lines = when_lines(plan, department, words)
        if not lines or not plan.days:
            continue
        title, said = department.units[plan.unit].title, "; ".join(each[0].lower() + each[1:] for each in lines)
        for key, day in (("home.begins", plan.days[0]), ("home.ends", plan.days[-1])):
            if day.date in dates:
                yield words(key, class_id=plan.class_id, title=title, when=said)
                break


def _rows(
    dates: list[date], department: Department, plans: Plans, bells: Mapping[tuple[str, date], time], words: Words
) -> Iterator[tuple[tuple[time, str, date], Row]]:
    """Yield the rows of a week, each with what it is sorted by: the bell, the class, the unit's first day."""
    for plan in plans.plans:
        days = {day.date: day for day in plan.days}
        cells = tuple(_cell(day, days, plan, words) for day in dates)
        if not any(cell.text for cell in cells):
            continue
        start = next((bells[plan.class_id, day] for day, cell in zip(dates, cells, strict=True) if cell.text), time())
        school_class = department.school.classes[plan.class_id]
        room = department.school.rooms.get(school_class.room)
        row = Row(
            class_id=plan.class_id,
            time=clock(start),
            unit=department.units[plan.unit].title,
            href=relative(HOME, lesson_address(plan.class_id, plan.unit)),
            room=room.name if room else "",
            cells=cells,
        )
        yield (start, plan.class_id, plan.days[0].date if plan.days else dates[0]), row


def _cell(day: date, days: Mapping[date, Day], plan: Plan, words: Words) -> Cell:
    if day in days:
        return _planned(days[day], plan, words)
    if plan.pre_check and plan.pre_check.date == day:
        full = words("bar.part", name=f"{short_date(day, words)} {words('home.pre_check')}", minutes=f"{plan.pre_check.minutes:g}")
        return Cell(day.isoformat(), words("home.letter.pre_check"), full)
    return Cell(day.isoformat(), "")


def _planned(day: Day, plan: Plan, words: Words) -> Cell:
    numbers = [block.round for block in day.blocks if block.kind == "station" and block.round is not None]
    parts = [str(number) for number in numbers]
    if any(block.kind == "write_up" for block in day.blocks):
        parts.append(words("home.letter.write_up"))
    where = stations_of(plan, numbers[0], day.date) if numbers else None
    return Cell(
        date=day.date.isoformat(),
        text=" ".join(parts),
        full=f"{short_date(day.date, words)} {rounds_of(day, plan, words)}",
        start=f"{day.start:%H:%M}",
        end=f"{day.end:%H:%M}",
        title=rounds_of(day, plan, words),
        where=" ".join(f"{letter}:{tag(kind, words).css}" for letter, kind in (where or {}).items()),
    )
