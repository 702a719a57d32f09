"""`trivet plan --what-if`: what would move and shrink if a day were otherwise. Nothing is written."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from trivet.model.department import Department
from trivet.model.plan import Plan, Plans
from trivet.model.problem import Problem, Severity
from trivet.model.school import Closure
from trivet.model.what_if import WhatIf
from trivet.planning.checks.places import of_run
from trivet.planning.differences import Difference
from trivet.planning.say import say_date, say_list
from trivet.planning.suppose import noticed


def read(given: Sequence[str], department: Department) -> tuple[WhatIf, ...]:
    """Return the changes that were asked; misuse (exit 2) with the words to write where one can't be read or lies outside the year."""
    import click

    from trivet.reading import forms

    calendar = department.school.calendar
    changes = []
    for text in given:
        found = forms.what_if(text, department.school.bells, calendar.rotation)
        if isinstance(found, forms.Unreadable):
            raise click.UsageError(f"{found.what}; {found.remedy}")
        if not calendar.first <= found.first <= found.last <= calendar.last:
            raise click.UsageError(f"{text}: the school year goes from {calendar.first} to {calendar.last}; write a day of it")
        changes.append(found)
    return tuple(changes)


def lines(
    department: Department, changes: Sequence[WhatIf], found: Sequence[Difference], new: Sequence[Problem], *, notice: bool = False
) -> Iterator[str]:
    """Yield what would be otherwise, run by run, then what would be wrong then, then the lines that would make it so.

    `notice`: without a line under `short notice` days before the changes would be otherwise, too.
    """
    yield f"If {supposed(changes)}:"
    for each in found:
        if each.lines:
            yield ""
            yield f"{each.class_id}, {_title(department, each)}"
            yield from (f"  {line}" for line in each.lines)
    same = [each for each in found if not each.lines]
    if len(same) == len(found):
        yield ""
        yield f"Nothing changes{_closed_anyway(department, changes)}."
    elif same:
        yield ""
        yield f"Nothing changes for the other {len(same)} runs." if len(same) > 1 else "Nothing changes for the other run."
    if new:
        yield ""
        yield "To decide then:"
        yield from (f"  {problem.sentence}" for problem in new)
    if len(same) < len(found):
        yield ""
        yield from _to_keep(department, changes, found, notice=notice)


def as_data(changes: Sequence[WhatIf], found: Sequence[Difference], new: Sequence[Problem]) -> dict[str, Any]:
    """Return the same as data."""
    return {
        "what_if": 1,
        "asked": [{"first": each.first.isoformat(), "last": each.last.isoformat(), "is": _is(each)} for each in changes],
        "runs": [
            {
                "class": each.class_id,
                "unit": each.unit,
                "changes": list(each.lines),
                "before": _dates(each.before),
                "after": _dates(each.after),
            }
            for each in found
        ],
        "to_decide": [problem.sentence for problem in new],
    }


def new_problems(before: Plans, after: Plans, class_id: str, unit: str) -> tuple[Problem, ...]:
    """Return the problems (no advice) that come on top, of the runs asked."""
    known = {(problem.code, problem.place, problem.what) for problem in before.problems}
    return tuple(
        problem
        for problem in after.problems
        if problem.severity is not Severity.ADVICE
        and (problem.code, problem.place, problem.what) not in known
        and (not class_id or problem.where.startswith(f"{class_id}, "))
        and (not unit or problem.where.endswith(f", {unit}"))
    )


def _dates(plan: Plan | None) -> dict[str, Any] | None:
    if plan is None:
        return None
    return {
        "first": plan.days[0].date.isoformat(),
        "last": plan.days[-1].date.isoformat(),
        "rounds": [{"round": each.round, "date": each.date.isoformat(), "minutes": each.minutes} for each in plan.rounds],
        "write_up": [day.date.isoformat() for day in plan.days if any(block.kind == "write_up" for block in day.blocks)],
        "pre_check": plan.pre_check.date.isoformat() if plan.pre_check else None,
    }


def _is(change: WhatIf) -> str:
    if change.lost or change.closed:
        return "lost" if change.lost else "closed"
    parts = [change.day_type.replace("_", " "), f"{change.rotation_day} day" if change.rotation_day else ""]
    return ", ".join(part for part in parts if part)


def supposed(changes: Sequence[WhatIf]) -> str:
    """Return what is supposed, as a clause: Wednesday, December 2 were an early release day."""
    return say_list([_said(change) for change in changes])


def _said(change: WhatIf) -> str:
    one = change.first == change.last
    days = say_date(change.first) if one else f"{say_date(change.first)} to {say_date(change.last)}"
    if change.lost or change.closed:
        return f"{days} were {_is(change)}"
    words = " ".join(part for part in (change.day_type.replace("_", " "), change.rotation_day) if part)
    article = "an" if words[0].lower() in "aeiou" else "a"
    return f"{days} were {article} {words} day" if one else f"{days} were {words} days"


def _title(department: Department, each: Difference) -> str:
    return department.units[each.unit].title if each.unit in department.units else each.unit


def _closed_anyway(department: Department, changes: Sequence[WhatIf]) -> str:
    """Why nothing changes, where a closure outranks what was asked."""
    for change in changes:
        for closure in department.school.calendar.closures:
            if not change.closed and closure.first <= change.first <= closure.last:
                return f": {say_date(change.first)} is closed ({closure.reason or 'no reason given'})"
    return ""


def _days(stretch: WhatIf | Closure) -> str:
    return f"{stretch.first}" if stretch.first == stretch.last else f"{stretch.first} to {stretch.last}"


def _to_keep(department: Department, changes: Sequence[WhatIf], found: Sequence[Difference], *, notice: bool) -> Iterator[str]:
    """The lines that would make it so. `notice`: without a line under `short notice` days before would change as well."""
    yield "Nothing was written. To make it so:"
    for change in changes:
        days = _days(change)
        if change.lost:
            runs = {(run.class_id, run.unit): run for run in department.school.runs}
            for each in found:
                planned = {day.date for day in each.before.days} if each.before else set()
                for day in sorted(day for day in planned if change.first <= day <= change.last and each.lines):
                    place = of_run(department, runs[each.class_id, each.unit])
                    run = runs[each.class_id, each.unit]
                    write = f"write `- {day}` under its `lost:`" if run.lost else f"write `lost:` with `- {day}` below it"
                    yield f"  {each.class_id}, {each.unit}: {write}, in the run at {place.file}:{place.line}"
        elif change.closed:
            yield f"  write `- {days}, {change.closed}` under `closures:` in school/calendar.yml"
        else:
            is_ = ", ".join(part for part in (change.day_type.replace("_", " "), change.rotation_day) if part)
            for offset in range((change.last - change.first).days + 1):
                day = change.first.fromordinal(change.first.toordinal() + offset)
                if change.first == change.last or day.weekday() in department.school.calendar.weekly:
                    there = "in place of its line" if day in department.school.calendar.special else ""
                    yield f"  write `{day}: {is_}` {there or 'under `days:`'} in school/calendar.yml"
        if notice and not change.lost:
            items = say_list([f"`- {_days(each)}`" for each in noticed(department.school.calendar, change)])
            below = f"{items} under" if department.school.calendar.short_notice else f"{items} below a line"
            yield f"  write {below} `short notice:` there: then all that lies before it stays as planned"
            yield "  (leave that line out, and those days are planned anew as well)"
