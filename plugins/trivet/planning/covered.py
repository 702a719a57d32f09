"""Which standards the department's runs cover, and which of them a class meets in more than one unit."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from trivet.model.department import Department
from trivet.model.plan import Plan


@dataclass(frozen=True, slots=True)
class Covered:
    """A standard's code with the units that name it, in order of their slugs, and the classes that run one of them.

    `again` are the classes that run more than one: they meet the standard again. `classes` is () where no class runs such a unit.
    """

    code: str
    units: tuple[str, ...]
    classes: tuple[str, ...]
    again: tuple[str, ...]


def covered(department: Department, plans: Sequence[Plan]) -> tuple[Covered, ...]:
    """Return every code that a unit names, in order."""
    units_of: dict[str, list[str]] = {}
    for slug in sorted(department.units):
        for code in department.units[slug].standards:
            units_of.setdefault(code, []).append(slug)
    return tuple(_covered(code, tuple(dict.fromkeys(units_of[code])), department, plans) for code in sorted(units_of))


def _covered(code: str, units: tuple[str, ...], department: Department, plans: Sequence[Plan]) -> Covered:
    runs = [plan.class_id for plan in plans if plan.unit in units]
    classes = tuple(class_id for class_id in department.school.classes if class_id in runs)
    return Covered(code, units, classes, tuple(class_id for class_id in classes if runs.count(class_id) > 1))
