"""The whole plan of one run: its times, and who, where, with what and how safely."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.plan import Plan, Quality, Round, SpotCheck
from trivet.model.station import Kind
from trivet.model.wish import Wish
from trivet.planning.catch_up import Missed, Places, places, visited
from trivet.planning.cautions import cautions
from trivet.planning.grouping.ledger import counted_ledger, role_spread
from trivet.planning.materials import materials
from trivet.planning.notes import notes
from trivet.planning.replay import Held
from trivet.planning.spot_checks import AskedHistory, spot_checks
from trivet.planning.timed_runs import TimedRun
from trivet.planning.where import Square, StationHistory, choose, whole_class_square
from trivet.planning.wishes import asked


@dataclass(slots=True)
class ClassHistory:
    """What a class's earlier units count for, as far as their groups are public. `squares`: who was where, by unit."""

    stations: StationHistory = field(default_factory=StationHistory)
    asked: AskedHistory = field(default_factory=AskedHistory)
    squares: dict[str, Square] = field(default_factory=dict)


def plan_run(department: Department, timed: TimedRun, history: ClassHistory, wishes: Sequence[Wish] = ()) -> Plan:
    """Return the plan of a run after the class's `history`, and add the run to it. `wishes` are those on its order of stations."""
    school, unit, lock = department.school, timed.unit, timed.lock
    room = school.rooms.get(timed.school_class.room)
    square = _square(timed, history, wishes)
    totals = materials(
        unit,
        timed.headcount,
        room,
        school.inventory,
        spare_percent=school.settings.defaults.spare_percent,
        whole_class=timed.whole_class,
    )
    checks: tuple[SpotCheck, ...] = ()
    if lock is not None and square is not None:
        checks = spot_checks(unit, lock.groups, places(square, timed.missed), school.roles, history.asked, whole_class=timed.whole_class)
        history.asked.add(checks)
        history.squares[unit.slug] = square
        if not timed.whole_class:
            history.stations.add({letter: group.students for letter, group in lock.groups.items()}, visited(places(square, timed.missed)))
    return Plan(
        unit=unit.slug,
        class_id=timed.school_class.id,
        way=timed.run.way,
        engine=lock.engine if lock else None,
        drawn_on=lock.drawn_on if lock else None,
        pre_check=timed.pre_check,
        days=timed.days,
        rounds=_rounds(timed, square),
        groups=lock.groups if lock else None,
        quality=_quality(lock, department.locks) if lock else None,
        spot_checks=checks,
        materials=totals,
        cautions=cautions(unit),
        notes=notes(timed, square, totals, department, wishes),
    )


def _square(timed: TimedRun, history: ClassHistory, wishes: Sequence[Wish]) -> Square | None:
    """Who is where; None for a rotating run whose groups are not public."""
    if timed.whole_class:
        return whole_class_square()
    if timed.lock is None:
        return None
    return choose({letter: group.students for letter, group in timed.lock.groups.items()}, history.stations, asked(wishes))


def _rounds(timed: TimedRun, square: Square | None) -> tuple[Round, ...]:
    where = None if square is None else places(square, timed.missed)
    return tuple(
        Round(
            round=each.round,
            date=each.date,
            minutes=each.minutes,
            stations=None if square is None or where is None else _there(each, square, where, timed.missed),
            half=each.half,
        )
        for each in timed.held
    )


def _there(held: Held, square: Square, where: Sequence[Places], missed: Missed) -> dict[str, Kind]:
    """Who was where in a round, or in a part of one: a group may have been at the part that was stopped and have missed the rest."""
    if held.round > len(where):
        return {}
    if held.without == tuple(missed.get(held.round, ())):
        return dict(where[held.round - 1])
    planned = places(square, {number: letters for number, letters in missed.items() if number < held.round})[held.round - 1]
    return {letter: kind for letter, kind in planned.items() if letter not in held.without}


def _quality(lock: Lock, locks: Mapping[tuple[str, str], Lock]) -> Quality:
    """The lock's own figures by the public ledger, and how evenly the three main cards have gone round."""
    own = {unit: each for (class_id, unit), each in locks.items() if class_id == lock.class_id}
    spread = role_spread(lock.groups, counted_ledger(lock, own))
    return Quality(lock.repeats, lock.pair_repeats, lock.proved_minimum, spread)
