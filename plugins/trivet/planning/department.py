"""The plans of a whole department, from committed files alone."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.plan import NotPlanned, Plan, Plans
from trivet.model.wish import Wish
from trivet.planning.catch_up import rounds_needed
from trivet.planning.checks import check_planned
from trivet.planning.planned_run import ClassHistory, plan_run
from trivet.planning.timed_runs import AnyRun, TimedRun, time_runs, with_starts
from trivet.planning.untimed import UntimedRun
from trivet.planning.where import Square


def plan_department(department: Department) -> Plans:
    """Plan every run: all dates and minutes first, then the rest by date, since a class's earlier units count for its later ones.

    Plans stand in the order of runs.yml; a run without dates is named with its reason; problems are all that need a computation.
    """
    timed_runs = time_runs(department)
    plans, histories = _plan(department, timed_runs)
    fewer = _fewer_rounds(timed_runs, histories)
    if fewer:
        timed_runs = time_runs(department, fewer)
        plans, _ = _plan(department, timed_runs)
    in_order_of_runs = tuple(plans[place] for place in sorted(plans))
    return Plans(
        plans=in_order_of_runs,
        not_planned=tuple(NotPlanned(each.run, each.sentence) for each in timed_runs if isinstance(each, UntimedRun)),
        problems=check_planned(with_starts(department, timed_runs), timed_runs, in_order_of_runs),
    )


def _fewer_rounds(timed_runs: Sequence[AnyRun], histories: Mapping[str, ClassHistory]) -> dict[int, Square]:
    """Return who is where, by place, in runs whose groups missed some and need fewer than any order of stations might.

    Dates are worked out before places, and until these are known the most that any order of stations may take is counted.
    """
    found = {}
    for place, timed in enumerate(timed_runs):
        if isinstance(timed, TimedRun) and timed.missed:
            square = histories[timed.run.class_id].squares.get(timed.unit.slug)
            if square is not None and rounds_needed(timed.missed, square) < rounds_needed(timed.missed):
                found[place] = square
    return found


def plan_privately(department: Department, lock: Lock) -> Plan | None:
    """Return the plan of one run with kept groups that only the private folder holds, None where the run has no dates.

    Dates, minutes and materials stay those that are published; groups, places by the wishes of the lock, and spot checks come on top.
    """
    timed_runs = list(time_runs(department))
    for place, timed in enumerate(timed_runs):
        if isinstance(timed, TimedRun) and (timed.run.class_id, timed.run.unit) == (lock.class_id, lock.unit):
            timed_runs[place] = replace(timed, lock=lock)
            return _plan(department, timed_runs, {place: lock.order})[0][place]
    return None


def _plan(
    department: Department, timed_runs: Sequence[AnyRun], wishes: Mapping[int, Sequence[Wish]] = MappingProxyType({})
) -> tuple[dict[int, Plan], Mapping[str, ClassHistory]]:
    """Return the plan of each run that has dates, by its place in `timed_runs`, and what each class has then behind it."""
    timed_by_place = {place: timed for place, timed in enumerate(timed_runs) if isinstance(timed, TimedRun)}
    histories: defaultdict[str, ClassHistory] = defaultdict(ClassHistory)
    plans: dict[int, Plan] = {}
    for place, timed in sorted(timed_by_place.items(), key=lambda item: (item[1].days[0].date, item[0])):
        plans[place] = plan_run(department, timed, histories[timed.run.class_id], wishes.get(place, timed.run.order))
    return plans, histories
