"""The pages of one unit alone, for a quick preview while it is written."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from pathlib import Path

from trivet.model.department import Department
from trivet.model.plan import Plans
from trivet.model.problem import Place, Problem, Severity
from trivet.model.school import UNSETTLED
from trivet.reading.near import nearest
from trivet.reading.school.units import unit_slugs

SETTINGS = "mkdocs.yml"


def with_its_classes(department: Department, only: str) -> Department:
    """Return the department with the classes that run this unit alone: their other units decide its dates, so they stay."""
    classes = {run.class_id for run in department.school.runs if run.unit == only}
    runs = tuple(run for run in department.school.runs if run.class_id in classes)
    return replace(department, school=replace(department.school, runs=runs))


def alone(department: Department, only: str) -> Department:
    """Return the department as if this unit were its only one."""
    units = {slug: unit for slug, unit in department.units.items() if slug == only}
    # What a run waits for may be left out here, so its first day counts as given, and what it waits for is known by its title.
    titles = {slug: unit.title for slug, unit in department.units.items()}
    runs = tuple(
        replace(run, begins="date", after=titles.get(run.after, run.after))
        for run in department.school.runs
        if run.unit == only and run.starts != UNSETTLED
    )
    return replace(department, units=units, school=replace(department.school, runs=runs))


def plans_of(plans: Plans, only: str) -> Plans:
    """Return the plans of this unit."""
    found = tuple(plan for plan in plans.plans if plan.unit == only)
    return Plans(found, tuple(each for each in plans.not_planned if each.run.unit == only), plans.problems)


def problems_of(problems: Iterable[Problem], only: str) -> Iterator[Problem]:
    """Yield the problems that lie in no other unit's folder."""
    for problem in problems:
        top, _, rest = problem.place.file.partition("/")
        slug, inside, _ = rest.partition("/")
        if top != "units" or not inside or slug in (only, "guide"):
            yield problem


def unknown(root: Path, only: str) -> Iterator[Problem]:
    """Say that the settings name a unit that is not there."""
    slugs = unit_slugs(root)
    if only not in slugs:
        near = nearest(only, slugs)
        remedy = f"write only: {near}" if near else "write the name of a folder under units/, or take the line out"
        yield Problem("only-unknown", Severity.ERROR, Place(SETTINGS), f"there is no unit {only}", remedy, "plugins, trivet, only")
