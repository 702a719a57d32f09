"""Every run of a department on its dates, class by class: also those that begin after another unit, or end by a date."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import date
from types import MappingProxyType

from trivet.model.department import Department
from trivet.model.school import UNSETTLED, Run
from trivet.planning import untimed
from trivet.planning.as_known import class_as_known, days_as_known
from trivet.planning.class_runs import ClassRuns
from trivet.planning.dates import meetings, school_days
from trivet.planning.minutes import needed, round_range
from trivet.planning.timed_run import WHOLE_CLASS, AnyRun, Asks, ClassSoFar, TimedRun, missed_of
from trivet.planning.where import Square

__all__ = ["WHOLE_CLASS", "AnyRun", "TimedRun", "missed_of", "settled", "time_runs"]


def time_runs(department: Department, squares: Mapping[int, Square] = MappingProxyType({})) -> tuple[AnyRun, ...]:
    """Put every run on its dates, in the order of runs.yml.

    A class's runs are taken by date; a run that begins before the one before it has ended starts on the next free meeting.
    `squares` says who is where in a run, by its place, where groups that missed rounds are known to need fewer than they may.
    """
    days, as_known = school_days(department.school.calendar), days_as_known(department.school.calendar)
    defaults = department.school.settings.defaults
    runs = department.school.runs
    run_here = {run.unit: unit for run in runs if (unit := department.units.get(run.unit))}
    asks = {slug: Asks(unit, needed(unit, defaults), round_range(unit, defaults)) for slug, unit in run_here.items()}
    found: dict[int, AnyRun] = {}
    for class_id in dict.fromkeys(run.class_id for run in runs):
        own = {place: run for place, run in enumerate(runs) if run.class_id == class_id}
        school_class = department.school.classes.get(class_id)
        if school_class is None:
            found |= {place: untimed.no_class(run) for place, run in own.items()}
            continue
        met = meetings(days, department.school.bells, school_class)
        known = class_as_known(as_known, department.school.bells, school_class)
        found |= ClassRuns(department, own, asks, ClassSoFar(school_class, met, {}, known=known), squares).timed()
    return tuple(found[place] for place in range(len(runs)))


def settled(department: Department) -> Department:
    """Return the department with the start of each run that begins after another unit, or ends by a date, worked out: its first day.

    Where nothing settles one, it stays as it is.
    """
    return department if _all_dated(department) else with_starts(department, time_runs(department))


def _all_dated(department: Department) -> bool:
    return all(run.begins == "date" for run in department.school.runs)


def with_starts(department: Department, timed_runs: Sequence[AnyRun]) -> Department:
    """Return what `settled` returns, for runs that already have their dates."""
    if _all_dated(department):
        return department
    starts = [each.days[0].date if isinstance(each, TimedRun) else UNSETTLED for each in timed_runs]
    runs = tuple(run if run.begins == "date" else replace(run, starts=day) for run, day in zip(department.school.runs, starts, strict=True))
    return replace(department, school=replace(department.school, runs=runs))


def ends_by_start(department: Department, timed: TimedRun, by: date) -> date | None:
    """Return the latest start from which a run would end by a date, all others of its class as they are; None where there is none."""
    own: Sequence[Run] = [run for run in department.school.runs if run.class_id == timed.run.class_id]
    tried = replace(timed.run, begins="by", by=by, starts=UNSETTLED)
    runs = tuple(tried if run.unit == timed.run.unit else run for run in own)
    found: Iterable[AnyRun] = time_runs(replace(department, school=replace(department.school, runs=runs)))
    return next((each.run.starts for each in found if isinstance(each, TimedRun) and each.run.unit == timed.run.unit), None)


def starts_among(department: Department, timed: TimedRun, days: Sequence[date], found: Iterable[TimedRun]) -> date | None:
    """Return the last of some dates on which a run could begin without moving another unit of its class, None where there is none.

    `found` are all runs as they are.
    """
    own = tuple(run for run in department.school.runs if run.class_id == timed.run.class_id)
    now = _days_of(each for each in found if each.run.class_id == timed.run.class_id and each.run.unit != timed.run.unit)
    for day in reversed(days):
        tried = replace(timed.run, begins="date", after="", gap_days=0, starts=day)
        runs = tuple(tried if run.unit == timed.run.unit else run for run in own)
        then = _days_of(time_runs(replace(department, school=replace(department.school, runs=runs))))
        if then.pop(timed.run.unit, (None,))[0] == day and then == now:
            return day
    return None


def _days_of(found: Iterable[AnyRun]) -> dict[str, tuple[date, ...]]:
    """The dates of each unit of a class."""
    return {each.run.unit: tuple(day.date for day in each.days) for each in found if isinstance(each, TimedRun)}
