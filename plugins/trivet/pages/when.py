"""How a run's first day was found, and whether it keeps its last date, in words."""

from __future__ import annotations

from trivet.model.department import Department
from trivet.model.plan import Plan
from trivet.model.school import Run, School
from trivet.pages.spoken import short_date
from trivet.pages.words import Words
from trivet.planning.say import say_gap


def run_of(plan: Plan, department: Department) -> Run | None:
    """Return the run of a plan."""
    return run_in(department.school, plan)


def run_in(school: School, plan: Plan) -> Run | None:
    """Return the run of a plan."""
    return next((r for r in school.runs if (r.class_id, r.unit) == (plan.class_id, plan.unit)), None)


def when_lines(plan: Plan, department: Department, words: Words) -> tuple[str, ...]:
    """Return what a run waits for and by when it is to end, () where its first day is written as a date."""
    run = run_of(plan, department)
    if run is None:
        return ()
    lines = []
    if run.after:
        title = department.units[run.after].title if run.after in department.units else run.after
        gap = say_gap(run.gap_days)
        lines.append(words("when.after_gap", gap=gap, title=title) if gap else words("when.after", title=title))
    if run.by is not None and plan.days:
        key = "when.by" if plan.days[-1].date <= run.by else "when.by_missed"
        lines.append(words(key, date=short_date(run.by, words)))
    return tuple(lines)
