"""What a class has really been through: leveled units count too, and whoever was absent did not meet anyone. Private."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date

from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.school import Run
from trivet.planning.department import plan_department
from trivet.planning.grouping.ledger import Ledger, Two


@dataclass(frozen=True, slots=True)
class Experience:
    """What only the private folder knows of a class: its leveled groups by unit, who was absent when, and pre-check scores by unit."""

    leveled: Mapping[str, Lock] = field(default_factory=dict, repr=False)
    absences: Mapping[date, frozenset[int]] = field(default_factory=dict, repr=False)
    scores: Mapping[str, Mapping[int, int]] = field(default_factory=dict, repr=False)

    def __bool__(self) -> bool:
        """Say whether more is known of who met whom than what is public."""
        return bool(self.leveled or self.absences)


def own_ledger(department: Department, earlier: tuple[Run, ...], own: Experience) -> Ledger:
    """Return the ledger of the units of a class that came `earlier`, leveled ones among them, by who was there.

    Two count as having met in a unit if there was a day with a round on which both were present.
    """
    plans = plan_department(department)
    ledger = Ledger()
    for run in earlier:
        lock = own.leveled.get(run.unit) or department.locks.get((run.class_id, run.unit))
        if lock is not None:
            plan = plans.of(run.class_id, run.unit)
            days = sorted({each.date for each in plan.rounds}) if plan is not None else [run.starts]
            ledger = ledger.plus(lock.groups, _together([own.absences.get(day, frozenset()) for day in days]))
    return ledger


def _together(absent: list[frozenset[int]]) -> Callable[[Two], bool]:
    return lambda two: any(not away.intersection(two) for away in absent)
