"""The runs of one class on their dates: in order, those that begin after another unit, those that end by a date, and their pre-checks."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from heapq import heapify, heappop, heappush

from trivet.model.department import Department
from trivet.model.plan import PreCheck
from trivet.model.school import UNSETTLED, Run
from trivet.planning import untimed
from trivet.planning.as_known import Known
from trivet.planning.pre_check import pre_check
from trivet.planning.timed_run import AnyRun, Asks, ClassSoFar, TimedRun, first_round_of, time_run
from trivet.planning.where import Square

Found = Mapping[int, AnyRun]
"""Runs on their dates, by their place in runs.yml."""


@dataclass(frozen=True, slots=True)
class ClassRuns:
    """The runs of one class, by their place in runs.yml. `tried` keeps the starts that were worked out: most are asked for at each mark."""

    department: Department
    own: Mapping[int, Run]
    asks: Mapping[str, Asks]
    nothing_yet: ClassSoFar
    squares: Mapping[int, Square]
    tried: dict[Hashable, date | None] = field(default_factory=dict, compare=False)

    def timed(self) -> dict[int, AnyRun]:
        """Put all of them on their dates, and their pre-checks before them."""
        found = self.dated()
        marks = self._marks()
        asking = [place for place, each in found.items() if isinstance(each, TimedRun) and each.unit.pre_check]
        if not marks or not asking:
            return found
        stages: dict[int, tuple[ClassRuns, Found]] = {}

        def stage(number: int) -> tuple[ClassRuns, Found]:
            if number not in stages:
                then = self._as_of(marks[number - 1] if number else date.min)
                stages[number] = then, then.dated()
            return stages[number]

        for place in asking:
            timed = found[place]
            if isinstance(timed, TimedRun):
                found[place] = replace(timed, pre_check=_pre_check(place, marks, stage))
        return found

    def dated(self) -> dict[int, AnyRun]:
        """Put all of them on their dates: first those that end by a date get their start, the latest deadline first.

        Such a start comes from the plan without any record: what was lost since then may break the deadline, and never moves a first day.
        """
        begun = replace(self, own={place: _begun(run) for place, run in self.own.items()})
        starts: dict[int, date] = {}
        failed: dict[int, AnyRun] = {}
        unrecorded = replace(begun, own={place: _without_record(run) for place, run in begun.own.items()}, squares={})
        open_runs = [(run.by or UNSETTLED, place) for place, run in begun.own.items() if run.begins == "by"]
        for by, place in sorted(open_runs, reverse=True):
            start = unrecorded._start(place, by, starts)
            if start is None:
                failed[place] = untimed.no_room_before(self.own[place], by)
            else:
                starts[place] = start
        found = begun._in_order(starts)
        waiting = {place: run for place, run in begun.own.items() if place not in found and place not in failed}
        return {**found, **failed, **{place: untimed.waits(run, begun.own.values()) for place, run in waiting.items()}}

    def _start(self, place: int, by: date, starts: Mapping[int, date]) -> date | None:
        """The latest start that keeps a deadline, by what was known before it: short notice after a first day does not move that one.

        Where notice leaves no start that keeps it, the unit begins on the next meeting, and is late.
        """
        at_first, *later = self.nothing_yet.known or (Known(date.min, self.nothing_yet.meetings),)
        start = self._latest_of(at_first, place, by, starts)
        for known in later:
            if start is not None and start < known.since:
                break
            again = self._latest_of(known, place, by, starts)
            if again is None or again < known.since:
                late = next((meeting.date for meeting in known.meetings if meeting.date >= known.since), None)
                again = again if start is None else late
            start = again
        return start

    def _latest_of(self, known: Known, place: int, by: date, starts: Mapping[int, date]) -> date | None:
        """The latest start with the meetings that were known from a date on. Nothing is recorded of the runs here."""
        begins = tuple((run.begins, run.starts) for run in self.own.values())
        key = (known.since, place, by, tuple(sorted(starts.items())), begins)
        if key not in self.tried:
            then = replace(self, nothing_yet=replace(self.nothing_yet, meetings=known.meetings, known=()))
            self.tried[key] = then._latest(place, by, starts)
        return self.tried[key]

    def _marks(self) -> list[date]:
        """The dates of all records, and of what came at short notice, in order."""
        recorded = {day for run in self.own.values() for day in _recorded(run)}
        return sorted(recorded | {each.since for each in self.nothing_yet.known[1:]})

    def _as_of(self, day: date) -> ClassRuns:
        """The class with what was recorded and known up to a date."""
        known = tuple(each for each in self.nothing_yet.known if each.since <= day)
        met = known[-1].meetings if known else self.nothing_yet.meetings
        own = {place: _record_until(run, day) for place, run in self.own.items()}
        return replace(self, own=own, nothing_yet=replace(self.nothing_yet, meetings=met, known=known))

    def pre_check_from(self, found: Found, place: int, since: date) -> PreCheck | None:
        """Return where the pre-check of a run goes from a date on; None where there is no room, or no day for the run."""
        timed = found.get(place)
        first_round = first_round_of(timed) if isinstance(timed, TimedRun) else None
        if first_round is None:
            return None
        others = [each for each in found.values() if isinstance(each, TimedRun) and each is not timed]
        planned = {day.date: day for each in others for day in each.days}
        minutes = self.department.school.settings.defaults.pre_check
        return pre_check(self.nothing_yet.meetings, first_round, planned, self._lost(), minutes, since=since)

    def holds(self, day: date) -> bool:
        """Whether the class meets on a date and loses no lesson there."""
        return day not in self._lost() and any(meeting.date == day for meeting in self.nothing_yet.meetings)

    def _lost(self) -> set[date]:
        return {day for run in self.own.values() for day in run.lost}

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
        alone = replace(self, own={place: self.own[place]})
        late = {each for each, timed in self._in_order(starts).items() if _moved(timed)}
        for meeting in reversed(self.nothing_yet.meetings):
            start = {place: meeting.date}
            if meeting.date > by or not _ends_by(alone._in_order(start)[place], meeting.date, by):
                continue
            found = self._in_order({**starts, **start})
            if _ends_by(found[place], meeting.date, by) and {each for each, timed in found.items() if _moved(timed)} <= late:
                return meeting.date
        return None


def _pre_check(place: int, marks: list[date], stage: Callable[[int], tuple[ClassRuns, Found]]) -> PreCheck | None:
    """The pre-check of a run: what lay before a recorded date went as planned then, so that it never moves into the past, or in it."""
    then, found = stage(0)
    taken = then.pre_check_from(found, place, date.min)
    for number, mark in enumerate(marks, 1):
        if taken is not None and taken.date < mark:
            break
        then, found = stage(number)
        if taken is None or taken.date > mark or not then.holds(mark):
            taken = then.pre_check_from(found, place, mark)
    return taken


def _recorded(run: Run) -> list[date]:
    return [*run.lost, *(each.date for each in run.done), *(each.date for each in run.half)]


def _without_record(run: Run) -> Run:
    return replace(run, lost=(), done=(), half=())


def _record_until(run: Run, day: date) -> Run:
    return replace(
        run,
        lost=tuple(each for each in run.lost if each <= day),
        done=tuple(each for each in run.done if each.date <= day),
        half=tuple(each for each in run.half if each.date <= day),
    )


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
