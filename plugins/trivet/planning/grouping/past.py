"""Kept groups that a class has already worked in."""

from __future__ import annotations

from datetime import date

from trivet.model.department import Department
from trivet.model.school import Run
from trivet.planning.department import plan_department


def dates_of(department: Department, run: Run) -> tuple[date, ...]:
    """Return the dates of a run: those of its plan, else the one it starts on."""
    plan = plan_department(department).of(run.class_id, run.unit)
    return tuple(day.date for day in plan.days) if plan is not None else (run.starts,)


def passed(department: Department, run: Run, today: date) -> tuple[date, ...]:
    """Return the dates of a run that lie before today: from the first on, its kept groups are history."""
    return tuple(day for day in dates_of(department, run) if day < today)
