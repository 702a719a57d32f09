"""What a department asks of a draw: which students, which earlier units, which way."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.roster import Roster, Student
from trivet.model.school import Run
from trivet.planning.engine import ENGINE
from trivet.planning.grouping.advice import advice
from trivet.planning.grouping.board import LEVEL_STEPS
from trivet.planning.grouping.experience import Experience, own_ledger
from trivet.planning.grouping.ledger import ledger_of
from trivet.planning.grouping.request import NOTHING_WANTED, Request, Wanted, Way
from trivet.planning.grouping.support import spread, with_adult
from trivet.planning.headcount import seats_on
from trivet.planning.team_sizes import class_shape


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
    department: Department, run: Run, roster: Roster | None, *, wanted: Wanted = NOTHING_WANTED, own: Experience | None = None
) -> Request | Unseated:
    """Return what to draw for one run: with the class's roster, or by number alone where there is none.

    `auto` draws mixed groups: what the pre-check says is advice, and leveled groups are the teacher's choice. The usual way needs a
    table for every student; without a roster it draws mixed groups by number. `own` is what the private folder knows of earlier
    units: the draw goes by it, and what is published goes by the kept groups alone. Levels are the scores of this unit's
    pre-check where enough took it, else those of the roster.
    """
    unit = department.units[run.unit]
    seats = seats_on(department.school.classes[run.class_id], run.starts)
    defaults = department.school.settings.defaults
    students = [s for s in roster.students if s.seat in set(seats)] if roster is not None else []
    way = wanted.way or (Way.USUAL if unit.group_by == Way.USUAL and roster is not None else Way.MIXED)
    team_size = wanted.team_size or defaults.team_size
    tables = {s.seat: s.table for s in students if s.table}
    if way is Way.USUAL and (unseated := unseated_by(seats, tables)) is not None:
        return unseated
    levels = levels_of(students, own, run.unit, seats)
    rules = (*roster.rules, *with_adult(students)) if roster is not None else ()
    public = ledger_of(lock.groups for lock in counted_before(department, run))
    school_class = department.school.classes[run.class_id]
    return Request(
        class_id=run.class_id,
        seats=seats,
        seed=f"trivet {ENGINE} {run.class_id} {run.unit}",
        levels=levels or None,
        tables=tables if way is Way.USUAL else None,
        rules=rules,
        wishes=spread(students, sum(map(len, class_shape(len(seats), team_size))), rules) if way is Way.MIXED else (),
        fixed=frozenset(s.seat for s in students if s.fixed),
        ledger=own_ledger(department, earlier_runs(department, run), own) if own else public,
        public=public if own else None,
        places=tuple(sorted({*school_class.seats, *school_class.gone})),
        way=way,
        tolerance_percent=defaults.level_tolerance_percent if unit.level_tolerance_percent is None else unit.level_tolerance_percent,
        team_size=team_size,
        deal_roles=unit.roles != "students",
    )


def levels_of(students: Sequence[Student], own: Experience | None, unit: str, seats: tuple[int, ...]) -> dict[int, int]:
    """Return the levels of a unit by seat: scores of its pre-check where enough of the class took it, else those of the roster."""
    scores = own.scores.get(unit) if own is not None else None
    if scores and advice(scores, seats).speaks and max(scores.values()) > LEVEL_STEPS:
        return {seat: scores[seat] for seat in seats if seat in scores}
    return {student.seat: student.level for student in students if student.level is not None}


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
