"""What a department asks of a draw: which students, which earlier units, which way."""

from __future__ import annotations

from dataclasses import dataclass

from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.roster import Roster
from trivet.model.school import Run
from trivet.planning.engine import ENGINE
from trivet.planning.grouping.experience import Experience, own_ledger
from trivet.planning.grouping.ledger import ledger_of
from trivet.planning.grouping.request import Request, Way
from trivet.planning.headcount import seats_on


@dataclass(frozen=True, slots=True)
class Unseated:
    """Seats that the usual way can't place: `code` is `no_table`, or `table_size` where a table holds one or more than six."""

    code: str
    seats: tuple[int, ...]


TABLE_SIZES = range(2, 7)


def run_of(department: Department, class_id: str, unit: str) -> Run | None:
    """Return the run of a unit in a class, or None."""
    return next((run for run in department.school.runs if run.class_id == class_id and run.unit == unit), None)


def runs_in_order(department: Department, class_id: str) -> tuple[Run, ...]:
    """Return the runs of a class in this school year, in order of their dates."""
    calendar = department.school.calendar
    runs = [r for r in department.school.runs if r.class_id == class_id and calendar.first <= r.starts <= calendar.last]
    return tuple(sorted(runs, key=lambda r: (r.starts, r.index)))


def earlier_runs(department: Department, run: Run) -> tuple[Run, ...]:
    """Return the runs of the class before this one, in order."""
    return tuple(r for r in runs_in_order(department, run.class_id) if (r.starts, r.index) < (run.starts, run.index))


def counted_before(department: Department, run: Run) -> tuple[Lock, ...]:
    """Return the kept groups of the units that the class runs before this one, in order: what counts as history."""
    locks = [department.locks.get((r.class_id, r.unit)) for r in earlier_runs(department, run)]
    return tuple(lock for lock in locks if lock is not None and not lock.leveled)


def request_for(
    department: Department, run: Run, roster: Roster | None, *, leveled: bool = False, own: Experience | None = None
) -> Request | Unseated:
    """Return what to draw for one run: with the class's roster, or by number alone where there is none.

    `auto` draws mixed groups: without results of a pre-check nothing speaks for another way. The usual way needs a table for
    every student; without a roster it draws mixed groups by number. `own` is what the private folder knows of earlier units: the
    draw goes by it, and what is published goes by the kept groups alone.
    """
    unit = department.units[run.unit]
    seats = seats_on(department.school.classes[run.class_id], run.starts)
    defaults = department.school.settings.defaults
    students = [s for s in roster.students if s.seat in set(seats)] if roster is not None else []
    way = Way.LEVELED if leveled else Way.USUAL if unit.group_by == Way.USUAL and roster is not None else Way.MIXED
    tables = {s.seat: s.table for s in students if s.table}
    if way is Way.USUAL and (unseated := unseated_by(seats, tables)) is not None:
        return unseated
    levels = {s.seat: s.level for s in students if s.level is not None}
    public = ledger_of(lock.groups for lock in counted_before(department, run))
    school_class = department.school.classes[run.class_id]
    return Request(
        class_id=run.class_id,
        seats=seats,
        seed=f"trivet {ENGINE} {run.class_id} {run.unit}",
        levels=levels or None,
        tables=tables if way is Way.USUAL else None,
        rules=roster.rules if roster is not None else (),
        ledger=own_ledger(department, earlier_runs(department, run), own) if own else public,
        public=public if own else None,
        places=tuple(sorted({*school_class.seats, *school_class.gone})),
        way=way,
        tolerance_percent=defaults.level_tolerance_percent,
        team_size=defaults.team_size,
        deal_roles=unit.roles != "students",
    )


def unseated_by(seats: tuple[int, ...], tables: dict[int, str]) -> Unseated | None:
    """Return the seats without a table, else those at a table of one or of more than six, else None."""
    without = tuple(seat for seat in seats if seat not in tables)
    if without:
        return Unseated("no_table", without)
    held: dict[str, list[int]] = {}
    for seat in seats:
        held.setdefault(tables[seat], []).append(seat)
    odd = [seat for members in held.values() if len(members) not in TABLE_SIZES for seat in members]
    return Unseated("table_size", tuple(sorted(odd))) if odd else None
