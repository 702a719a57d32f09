"""A week of lessons in words: each day with its classes, the rounds, and who is where."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, time, timedelta
from typing import Any

from trivet.model.department import Department
from trivet.model.plan import Day, Plan
from trivet.planning.dates import SchoolDay, school_days
from trivet.planning.say import STATION_NAMES, say_closed, say_date, say_list


@dataclass(frozen=True, slots=True)
class Lesson:
    """A planned day of a run, or its pre-check (`day` is None), with what is done in words."""

    plan: Plan
    start: time
    end: time
    what: str
    day: Day | None


def monday_of(day: date) -> date:
    """Return the Monday of a date's week."""
    return day - timedelta(days=day.weekday())


def lessons(plans: Sequence[Plan], day: date) -> tuple[Lesson, ...]:
    """Return what stands on a date, by the clock and then by class."""
    found = [Lesson(plan, each.start, each.end, what_of(plan, each), each) for plan in plans for each in plan.days if each.date == day]
    for plan in plans:
        if plan.pre_check is not None and plan.pre_check.date == day:
            at = plan.pre_check.start
            end = at.hour * 60 + at.minute + int(plan.pre_check.minutes)
            found.append(Lesson(plan, at, time(end // 60 % 24, end % 60), f"pre-check, {plan.pre_check.minutes:g} min", None))
    return tuple(sorted(found, key=lambda each: (each.start, each.plan.class_id)))


def lost_lessons(department: Department, plans: Sequence[Plan], day: date) -> tuple[Plan, ...]:
    """Return the runs that lost their lesson of a date, in the middle of the unit or before its first day."""
    lost = {(run.class_id, run.unit) for run in department.school.runs if day in run.lost}
    return tuple(plan for plan in plans if (plan.class_id, plan.unit) in lost)


def lines(department: Department, plans: Sequence[Plan], day: date, supposed: str = "") -> Iterator[str]:
    """Yield the week of a date as lines to read; `supposed` is what is otherwise in it, as a clause."""
    monday = monday_of(day)
    held = {each.date: each for each in school_days(department.school.calendar)}
    yield f"Week of {say_date(monday)}{f', if {supposed}' if supposed else ''}"
    for date_ in _dates(department, plans, monday):
        found = lessons(plans, date_)
        yield ""
        yield f"{say_date(date_)}: {_day_of(department, held.get(date_), date_)}"
        for each in found:
            title = department.units[each.plan.unit].title
            yield f"  {each.start:%H:%M} to {each.end:%H:%M}  {each.plan.class_id}  {title}: {each.what}"
        gone = lost_lessons(department, plans, date_)
        for plan in gone:
            yield f"  lost            {plan.class_id}  {department.units[plan.unit].title}: no lesson"
        if not found and not gone and date_ in held:
            yield "  no lesson of a unit"


def as_data(department: Department, plans: Sequence[Plan], day: date) -> dict[str, Any]:
    """Return the same as data."""
    monday = monday_of(day)
    held = {each.date: each for each in school_days(department.school.calendar)}
    return {
        "week": monday.isoformat(),
        "days": [
            {
                "date": date_.isoformat(),
                "day_type": held[date_].day_type if date_ in held else None,
                "lessons": [
                    {
                        "class": each.plan.class_id,
                        "unit": each.plan.unit,
                        "start": f"{each.start:%H:%M}",
                        "end": f"{each.end:%H:%M}",
                        "rounds": _rounds(each.day),
                        "write_up": bool(each.day and any(block.kind == "write_up" for block in each.day.blocks)),
                        "pre_check": each.day is None,
                    }
                    for each in lessons(plans, date_)
                ],
                "lost": [{"class": plan.class_id, "unit": plan.unit} for plan in lost_lessons(department, plans, date_)],
            }
            for date_ in _dates(department, plans, monday)
        ],
    }


def _dates(department: Department, plans: Sequence[Plan], monday: date) -> list[date]:
    """The days of the week on which school is usually held, and any other with a lesson."""
    usual = department.school.calendar.weekly
    days = [monday + timedelta(days=offset) for offset in range(7)]
    return [day for day in days if day.weekday() in usual or lessons(plans, day)]


def _day_of(department: Department, held: SchoolDay | None, day: date) -> str:
    if held is not None:
        letter = f", {held.rotation_day} day" if held.rotation_day else ""
        return f"{held.day_type.replace('_', ' ')}{letter}"
    closures = [each.reason for each in department.school.calendar.closures if each.first <= day <= each.last and each.reason]
    return say_closed(next(iter(closures), ""))


def _rounds(day: Day | None) -> list[int]:
    return [block.round for block in day.blocks if block.kind == "station" and block.round is not None] if day else []


def what_of(plan: Plan, day: Day) -> str:
    """Return the rounds of a day with who is where, and the write-up."""
    total = max((each.round for each in plan.rounds), default=0)
    parts = []
    for number in _rounds(day):
        held = next(each for each in plan.rounds if (each.round, each.date) == (number, day.date))
        kinds = dict.fromkeys((held.stations or {}).values())
        undrawn = "the groups are not drawn yet" if held.stations is None else "nobody"
        where = [f"{letter} {STATION_NAMES[kind]}" for letter, kind in (held.stations or {}).items()]
        said = f"all {STATION_NAMES[next(iter(kinds))]}" if plan.way == "whole_class" else ", ".join(where) or undrawn
        parts.append(f"round {number} of {total}{', half done' if held.half else ''} ({said})")
    if any(block.kind == "write_up" for block in day.blocks):
        parts.append("write-up")
    return say_list(parts)
