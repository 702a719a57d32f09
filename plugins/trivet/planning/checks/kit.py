"""Whether there is enough for the lessons that stand at one time, and for each run alone."""

from __future__ import annotations

from collections.abc import Iterator

from trivet.model.department import Department
from trivet.model.plan import Plan
from trivet.model.problem import Problem, Severity
from trivet.planning.checks.places import named, of_run
from trivet.planning.department_materials import kit_clashes
from trivet.planning.materials import DEVICE, at_station
from trivet.planning.say import say_date, say_list, say_number
from trivet.planning.sharing import cure_of
from trivet.planning.stores.cures import Cure
from trivet.planning.stores.needs import Reusable
from trivet.planning.stores.sentences import clash, short_of
from trivet.planning.stores.uses import headcount_of


def check_kit(department: Department, plans: tuple[Plan, ...]) -> Iterator[Problem]:
    """Yield a warning for kit that lessons at one time have not enough of, and for a run that alone asks for more than there is.

    Devices that one class is short of are advice: students can share them.
    """
    for lack, cure in kit_clashes(department, plans):
        yield _clash(department, lack, cure)
    runs = {(run.class_id, run.unit): run for run in department.school.runs}
    for plan in plans:
        for total in plan.materials:
            if total.short and total.have is not None and plan.days:
                device = total.item == DEVICE
                unit = "" if total.unit == "each" else f" {total.unit}"
                item = "devices" if device else total.item if unit else f"× {total.item}"
                remedy = f"buy the rest, or let teams share, or borrow {say_number(total.short)}{unit}"
                run = runs[plan.class_id, plan.unit]
                yield Problem(
                    code="kit-short",
                    severity=Severity.ADVICE if device else Severity.WARNING,
                    place=of_run(department, run),
                    where=named(run),
                    what=f"it needs {say_number(total.need)}{unit} {item}, and there are {say_number(total.have)}{unit}",
                    remedy=_share(department, plan, int(total.have), int(total.short)) if device else remedy,
                )


def _share(department: Department, plan: Plan, devices: int, missing: int) -> str:
    whole_class = plan.way == "whole_class"
    students = max((group.students for group in at_station(headcount_of(department, plan), whole_class=whole_class)), default=0)
    return cure_of(students, devices, missing, department.units[plan.unit].online.work_in, whole_class=whole_class)


def _clash(department: Department, lack: Reusable, cure: Cure) -> Problem:
    """At the run that stands last in runs.yml."""
    rooms = department.school.rooms
    first = next(iter(lack.lacking))
    runs = {(run.class_id, run.unit): run for run in department.school.runs}
    run = max((runs[use.run] for use in first.uses), key=lambda each: each.index)
    written = say_list([f"write `{line}` at {place.file}:{place.line}:{place.column}" for line, place in cure.writes])
    return Problem(
        code="kit-clash",
        severity=Severity.WARNING,
        place=of_run(department, run),
        where=named(run),
        what=f"short of {short_of(lack)} on {say_date(first.date)}: {clash(lack, rooms).rstrip('.')}",
        remedy=written or f"{cure.title[0].lower()}{cure.title[1:]}",
    )
