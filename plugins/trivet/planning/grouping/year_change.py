"""Someone comes or leaves during the year: every coming unit's kept groups, fitted with few moves, and counted again."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass, replace

from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.roster import Roster
from trivet.model.school import Run
from trivet.planning.grouping.change import Changed, change
from trivet.planning.grouping.draw import measured
from trivet.planning.grouping.experience import Experience
from trivet.planning.grouping.for_class import Unseated, counted_before, request_for, runs_in_order
from trivet.planning.grouping.kept import recounted, replace_lock
from trivet.planning.grouping.ledger import seat_of
from trivet.planning.grouping.request import Draw, Request, Way

Keeper = Callable[[Draw, Request, Run, Sequence[Lock]], Lock]


@dataclass(frozen=True, slots=True)
class FittedUnit:
    """One kept unit of the class: its lock `before` and `after`, and what changed.

    `begun`: the class works in these groups already, so they stay. `changed` is None where nobody came or left; `stuck` says that more
    than two would have to move.
    """

    run: Run
    before: Lock
    after: Lock
    changed: Changed | None = None
    begun: bool = False
    stuck: bool = False


def change_year(
    department: Department, class_id: str, roster: Roster | None, own: Experience, keeper: Keeper, *, begun: Collection[str]
) -> tuple[FittedUnit, ...] | Unseated:
    """Return every unit of the class with kept groups, those still to come fitted to who is in the class on their first day."""
    units: list[FittedUnit] = []
    for run in runs_in_order(department, class_id):
        leveled = own.leveled.get(run.unit)
        lock = leveled or department.locks.get((class_id, run.unit))
        if lock is None:
            continue
        if run.unit in begun:
            units.append(FittedUnit(run, lock, lock, begun=True))
            continue
        asked = request_for(department, run, roster, own=own)
        if isinstance(asked, Unseated):
            return asked
        request = replace(asked, way=Way.LEVELED) if leveled is not None else asked
        if _seats(lock) == set(request.seats):
            units.append(FittedUnit(run, lock, lock))
            continue
        found = change(lock.groups, request)
        if found is None:
            units.append(FittedUnit(run, lock, lock, stuck=True))
            continue
        after = keeper(measured(request, found.groups), request, run, counted_before(department, run))
        units.append(FittedUnit(run, lock, after, found))
        if leveled is None:
            department = replace_lock(department, after)
            for later in recounted(department, after):
                department = replace_lock(department, later)
    return tuple(unit if unit.before.leveled else replace(unit, after=department.locks[class_id, unit.run.unit]) for unit in units)


def _seats(lock: Lock) -> set[int]:
    return {seat_of(number) for group in lock.groups.values() for number in group.students}
