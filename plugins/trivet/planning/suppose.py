"""The department as it would be if some days were otherwise. Nothing is written."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import date, timedelta

from trivet.model.department import Department
from trivet.model.plan import Plan
from trivet.model.school import Calendar, Closure, Run, SpecialDay
from trivet.model.what_if import WhatIf
from trivet.planning.as_known import without


def suppose(department: Department, changes: Sequence[WhatIf], plans: Sequence[Plan], class_id: str = "", unit: str = "") -> Department:
    """Return the department with the changes; a lost day is lost to the runs asked (all, without a class and a unit) that plan it.

    `plans` are those of the department as it is. All changes come at short notice: days before them stay.
    """
    calendar = department.school.calendar
    lost: set[date] = set()
    for change in changes:
        if change.lost:
            lost |= set(_days(change))
        else:
            calendar = replace(_changed(calendar, change), short_notice=(*calendar.short_notice, *noticed(calendar, change)))
    planned = {(plan.class_id, plan.unit): {day.date for day in plan.days} for plan in plans}
    asked = {run.index for run in department.school.runs if class_id in ("", run.class_id) and unit in ("", run.unit)}
    runs = tuple(
        _without(run, lost & planned.get((run.class_id, run.unit), set())) if run.index in asked else run for run in department.school.runs
    )
    return replace(department, school=replace(department.school, calendar=calendar, runs=runs))


def noticed(calendar: Calendar, change: WhatIf) -> tuple[Closure, ...]:
    """Return the days of a change that come at short notice: all but those that are closed already."""
    return tuple(without(Closure(change.first, change.last), calendar.closures))


def known_before_all(department: Department, then: Department) -> Department:
    """Return a supposed department with nothing at shorter notice than in the department as it is: also days before are planned anew."""
    calendar = replace(then.school.calendar, short_notice=department.school.calendar.short_notice)
    return replace(then, school=replace(then.school, calendar=calendar))


def _changed(calendar: Calendar, change: WhatIf) -> Calendar:
    if change.closed:
        return replace(calendar, closures=(*calendar.closures, Closure(change.first, change.last, change.closed)))
    special = dict(calendar.special)
    alone = change.first == change.last and change.day_type
    for day in _days(change):
        if day.weekday() not in calendar.weekly and day not in special and not alone:
            continue  # neither a stretch of days nor a rotation day makes a school day of a Saturday
        usual = special.get(day, SpecialDay())
        special[day] = SpecialDay(change.day_type or usual.day_type, change.rotation_day or usual.rotation_day)
    return replace(calendar, special=special)


def _without(run: Run, lost: set[date]) -> Run:
    return replace(run, lost=tuple(sorted({*run.lost, *lost}))) if lost else run


def _days(change: WhatIf) -> Iterator[date]:
    for offset in range((change.last - change.first).days + 1):
        yield change.first + timedelta(days=offset)
