"""Every run of a department on its dates, class by class: also those that begin after another unit, or end by a date."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from heapq import heapify, heappop, heappush
from types import MappingProxyType

from trivet.model.department import Department
from trivet.model.school import UNSETTLED, Run
from trivet.planning import untimed
from trivet.planning.dates import meetings, school_days
from trivet.planning.minutes import needed, round_range
from trivet.planning.timed_run import WHOLE_CLASS, AnyRun, Asks, ClassSoFar, TimedRun, missed_of, time_run
from trivet.planning.where import Square

__all__ = ["WHOLE_CLASS", "AnyRun", "TimedRun", "missed_of", "settled", "time_runs"]


def time_runs(department: Department, squares: Mapping[int, Square] = MappingProxyType({})) -> tuple[AnyRun, ...]:
    """Put every run on its dates, in the order of runs.yml.

    A class's runs are taken by date; a run that begins before the one before it has ended starts on the next free meeting.
    `squares` says who is where in a run, by its place, where groups that missed rounds are known to need fewer than they may.
    """
    days = school_days(department.school.calendar)
    defaults = department.school.settings.defaults
    runs = department.school.runs
    run_here = {run.unit: unit for run in runs if (unit := department.units.get(run.unit))}
    asks = {slug: Asks(unit, needed(unit, defaults), round_range(unit, defaults)) for slug, unit in run_here.items()}
    found: dict[int, AnyRun] = {}
    for class_id in dict.fromkeys(run.class_id for run in runs):
        own = {place: _begun(run) for place, run in enumerate(runs) if run.class_id == class_id}
        school_class = department.school.classes.get(class_id)
        if school_class is None:
            found |= {place: untimed.no_class(run) for place, run in own.items()}
            continue
        nothing_yet = ClassSoFar(school_class, meetings(days, department.school.bells, school_class), {})
        found |= _ClassRuns(department, own, asks, nothing_yet, squares).timed()
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


@dataclass(frozen=True, slots=True)
class _ClassRuns:
    """The runs of one class, by their place in runs.yml."""

    department: Department
    own: Mapping[int, Run]
    asks: Mapping[str, Asks]
    nothing_yet: ClassSoFar
    squares: Mapping[int, Square]

    def timed(self) -> dict[int, AnyRun]:
        """Time all of them: first those that end by a date get their start, the latest deadline first, each around those before it.

        Such a start comes from the plan without any record: what was lost since then may break the deadline, and never moves a first day.
        """
        starts: dict[int, date] = {}
        failed: dict[int, AnyRun] = {}
        unrecorded = replace(self, own={place: replace(run, lost=(), done=(), half=()) for place, run in self.own.items()}, squares={})
        open_runs = [(run.by or UNSETTLED, place) for place, run in self.own.items() if run.begins == "by"]
        for by, place in sorted(open_runs, reverse=True):
            start = unrecorded._latest(place, by, starts)
            if start is None:
                failed[place] = untimed.no_room_before(self.own[place], by)
            else:
                starts[place] = start
        found = self._in_order(starts)
        waiting = {place: run for place, run in self.own.items() if place not in found and place not in failed}
        return {**found, **failed, **{place: untimed.waits(run, self.own.values()) for place, run in waiting.items()}}

    def _in_order(self, starts: Mapping[int, date]) -> dict[int, AnyRun]:
        """Time the runs by date; one that begins after another unit takes its turn once that one has its days.

        It then begins later than all that was timed so far, so that turns stay in the order of dates.
        """
        ready = [(run.starts, place) for place, run in self.own.items() if run.begins == "date"]
        ready += [(day, place) for place, day in starts.items()]
        heapify(ready)
        found: dict[int, AnyRun] = {}
        so_far = self.nothing_yet
        while ready:
            day, place = heappop(ready)
            run = replace(self.own[place], starts=day)
            timed = time_run(self.department, run, self.asks.get(run.unit), so_far, len(found), square=self.squares.get(place))
            found[place] = timed
            if isinstance(timed, TimedRun):
                so_far = so_far.after(timed)
                for then, other in self.own.items():
                    if other.begins == "after" and other.after == run.unit:
                        heappush(ready, (self._after(timed, other.gap_days), then))
        return found

    def _after(self, timed: TimedRun, gap_days: int) -> date:
        """The first meeting after a unit's last day and the gap, or that date itself where the class does not meet again."""
        earliest = timed.days[-1].date + timedelta(days=1 + gap_days)
        return next((meeting.date for meeting in self.nothing_yet.meetings if meeting.date >= earliest), earliest)

    def _latest(self, place: int, by: date, starts: Mapping[int, date]) -> date | None:
        """The latest meeting from which the unit ends by a date without moving another one, None where there is none."""
        alone = _ClassRuns(self.department, {place: self.own[place]}, self.asks, self.nothing_yet, self.squares)
        late = {each for each, timed in self._in_order(starts).items() if _moved(timed)}
        for meeting in reversed(self.nothing_yet.meetings):
            start = {place: meeting.date}
            if meeting.date > by or not _ends_by(alone._in_order(start)[place], meeting.date, by):
                continue
            found = self._in_order({**starts, **start})
            if _ends_by(found[place], meeting.date, by) and {each for each, timed in found.items() if _moved(timed)} <= late:
                return meeting.date
        return None


def _begun(run: Run) -> Run:
    """The run with the date of its first round where that one is recorded: what has begun does not wait for anything any more."""
    first = min((each.date for each in run.done if 1 in each.rounds), default=UNSETTLED)
    first = min([first, *(each.date for each in run.half if each.round == 1)])
    return run if run.begins == "date" or first == UNSETTLED else replace(run, begins="date", starts=first)


def _moved(timed: AnyRun) -> bool:
    """Whether a run has no dates, or begins later than written."""
    return not isinstance(timed, TimedRun) or bool(timed.follows)


def _ends_by(timed: AnyRun, start: date, by: date) -> bool:
    return isinstance(timed, TimedRun) and timed.unfinished is None and timed.days[0].date == start and timed.days[-1].date <= by


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
