"""A run from its first meeting on, with what its record says: the past stays as it was, and only the rest is planned anew.

Each recorded date is taken in order. What was planned before it, with what was known then, went as planned and is kept; on the date
itself stands what the record says; the next part is planned after it. So nothing written for a later date changes an earlier day.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date, time

from trivet.model.plan import Day
from trivet.model.school import Done, HalfDone, Run
from trivet.planning.as_known import Known
from trivet.planning.catch_up import rounds_needed
from trivet.planning.costs import Costs, DayParts
from trivet.planning.dates import Meeting
from trivet.planning.day import make_day
from trivet.planning.minutes import RoundRange
from trivet.planning.progress import Progress
from trivet.planning.say import say_date, say_list
from trivet.planning.timetable import NoTimetable, Timetable, timetable
from trivet.planning.where import Square


@dataclass(frozen=True, slots=True)
class Held:
    """A round on a date, or a part of one: `half` where it was stopped. `without` are the letters of groups that missed it."""

    round: int
    date: date
    minutes: int
    half: bool = False
    without: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Terms:
    """What a run's days are made of. `square` says who is where, where that is known.

    Without it, groups that missed rounds are counted as needing the most that any order of stations may take.
    """

    allowed: RoundRange
    costs: Costs
    rounds_a_day: int
    square: Square | None = None


@dataclass(frozen=True, slots=True)
class Laid:
    """The days of a run. `meetings` are those from the first possible one to the last day, lost ones left out.

    `timetable` goes over all of them, its minutes are those of what is still to come. `missing` says why the rest has no dates.
    `noticed` are the dates from which on the rest was planned anew, since the calendar had changed at short notice.
    """

    meetings: tuple[Meeting, ...]
    timetable: Timetable
    days: tuple[Day, ...]
    held: tuple[Held, ...]
    missing: NoTimetable | None = None
    noticed: tuple[date, ...] = ()


@dataclass(frozen=True, slots=True)
class NotSo:
    """A record that can't be so."""

    code: str
    what: str
    remedy: str


def lay(usable: Sequence[Meeting], run: Run, terms: Terms, known: Sequence[Known] = ()) -> Laid | NoTimetable | NotSo:
    """Lay a run out over its class's meetings from the first possible one on; records of other dates are let be.

    `usable` are the meetings as they were known when the run began, `known` as they were from later dates on, in order.
    """
    work = _Work(terms)
    ahead = list(usable)
    then = {each.since: each.meetings for each in known}
    dates = {meeting.date for each in (usable, *then.values()) for meeting in each}
    recorded = dates & {*run.lost, *(each.date for each in run.done), *(each.date for each in run.half)}
    for mark in sorted({*recorded, *then}):
        if mark in then:
            ahead = work.notice(ahead, mark, then[mark])
        if mark not in recorded:
            continue
        ahead = work.keep_before(ahead, mark)
        if not ahead or ahead[0].date != mark:
            continue
        done = [each for each in run.done if each.date == mark]
        half = next((each for each in run.half if each.date == mark), None)
        fault = work.record(ahead, done, half) if done or half else None
        if fault is not None:
            return fault
        ahead = ahead[1:]
    return work.finish(ahead)


@dataclass(slots=True)
class _Work:
    terms: Terms
    done: int = 0
    resumes: int = 0
    minutes: int | None = None
    every_evidence: bool = True
    written: bool = False
    write_up: int = 0
    missed: dict[int, tuple[str, ...]] = field(default_factory=dict)
    meetings: list[Meeting] = field(default_factory=list)
    rounds: list[int] = field(default_factory=list)
    days: list[Day] = field(default_factory=list)
    held: list[Held] = field(default_factory=list)
    noticed: list[date] = field(default_factory=list)

    @property
    def needed(self) -> int:
        return rounds_needed(self.missed, self.terms.square)

    def progress(self) -> Progress:
        return Progress(
            rounds_left=self.needed - self.done,
            resumes=self.resumes,
            begun=bool(self.held),
            minutes=self.minutes,
            every_evidence=self.every_evidence,
            written=self.written,
        )

    def plan(self, ahead: Sequence[Meeting]) -> Timetable | NoTimetable:
        terms = self.terms
        return timetable([each.minutes for each in ahead], terms.allowed, terms.costs, terms.rounds_a_day, self.progress())

    def keep_before(self, ahead: list[Meeting], mark: date) -> list[Meeting]:
        """Keep what was planned before a date, and return the meetings from it on."""
        plan = self.plan(ahead)
        later = [meeting for meeting in ahead if meeting.date >= mark]
        if isinstance(plan, Timetable):
            self.keep(plan, ahead[: min(len(ahead) - len(later), len(plan.rounds))])
        return later

    def notice(self, ahead: list[Meeting], since: date, then: Sequence[Meeting]) -> list[Meeting]:
        """Keep what was planned before a date on which the calendar changed, and return the meetings from it on as they are then."""
        now = [meeting for meeting in then if meeting.date >= since]
        before = [_when(meeting) for meeting in ahead if meeting.date >= since]
        if before == [_when(meeting) for meeting in now]:
            return [*(meeting for meeting in ahead if meeting.date < since), *now]  # nothing is otherwise for this class
        self.keep_before(ahead, since)
        if self.days:
            self.noticed.append(since)
        return now

    def keep(self, plan: Timetable, meetings: Sequence[Meeting]) -> None:
        """Lay out the first meetings of a plan."""
        for place, meeting in enumerate(meetings):
            parts = plan.day(place)
            self._add(meeting, parts, plan.station_minutes, plan.lengths(place))
            if parts and parts.rounds:
                self.minutes = plan.station_minutes

    def _add(
        self, meeting: Meeting, parts: DayParts | None, station_minutes: int, lengths: Sequence[int], *, stopped: bool = False
    ) -> None:
        self.meetings.append(meeting)
        self.rounds.append(parts.rounds if parts else 0)
        if parts is None:
            return
        day = make_day(meeting, parts, self.done + 1, station_minutes, self.terms.costs, lengths=lengths)
        self.days.append(day)
        for place, length in enumerate(lengths):
            self.done += 1
            half = stopped and place == len(lengths) - 1
            self.held.append(Held(self.done, meeting.date, length // 2, half, self.missed.get(self.done, ())))
        if parts.rounds:
            self.every_evidence = self.every_evidence and any(block.kind == "evidence" for block in day.blocks)
            self.resumes = 0
        if parts.write_up:
            self.written, self.write_up = True, parts.write_up
        if stopped:
            self.done -= 1

    def _fault_in_order(self, meeting: Meeting, numbers: Sequence[int], half: HalfDone | None) -> NotSo | None:
        """What is wrong with the rounds that are recorded for a date."""
        if numbers and max(numbers) > self.needed:
            what = f"round {max(numbers)} stands on {say_date(meeting.date)}, and the unit has {self.needed} rounds"
            return NotSo("done-beyond", what, "write `write-up` there, or take the line out")
        if half is not None and numbers[:-1].count(half.round):
            what = f"round {half.round} stands on {say_date(meeting.date)} both as done and as stopped"
            return NotSo("done-out-of-order", what, "leave one of the two lines out")
        for expected, number in enumerate(numbers, self.done + 1):
            earlier = next((each.date for each in self.held if each.round == number and not each.half), None)
            if number != expected and earlier is not None:
                what = f"round {number} stands on {say_date(meeting.date)}, and by the plan it was done on {say_date(earlier)}"
                return NotSo("done-out-of-order", what, f"write `- {earlier}` under `lost` if there was no lesson then, or mend the line")
            if number != expected:
                what = f"round {number} stands on {say_date(meeting.date)}, where round {expected} comes next"
                return NotSo("done-out-of-order", what, f"write round {expected}, or the date on which it was done")
        return None

    def record(self, ahead: Sequence[Meeting], done: Sequence[Done], half: HalfDone | None) -> NotSo | None:
        """Put what the record says on its date, that of the first meeting ahead."""
        meeting = ahead[0]
        numbers = [number for each in done for number in each.rounds] + ([half.round] if half else [])
        fault = self._fault_in_order(meeting, numbers, half)
        if fault is not None:
            return fault
        plan = self.plan(ahead)
        usual = plan.station_minutes if isinstance(plan, Timetable) else self.minutes or self.terms.allowed.target
        # A round that was stopped before asks only for what was left of it.
        planned = [each // 2 for each in plan.lengths(0)] if isinstance(plan, Timetable) and plan.uneven and plan.rounds else []
        whole_ones = [*planned, *(usual for _ in numbers)]
        asked = [self.resumes // 2 if self.resumes and place == 0 else whole_ones[place] for place in range(len(numbers))]
        said = [each.minutes for each in done for _ in each.rounds]
        minutes = [said or whole for said, whole in zip(said, asked, strict=False)]
        if half is not None and half.minutes > asked[-1]:
            what = f"round {half.round} was stopped on {say_date(meeting.date)} after {half.minutes} min, and it has {asked[-1]} there"
            return NotSo("stopped-too-late", what, "write it under `done`, or fewer minutes")
        left = asked[-1] - half.minutes if half else 0
        if half is not None:
            minutes.append(half.minutes)
        written = any(each.write_up for each in done)
        parts = DayParts(
            len(minutes),
            first=bool(minutes) and not self.held,
            write_up=self._write_up() if written else 0,
            resumes=2 * minutes[0] if self.resumes and minutes else 0,
        )
        self.missed |= {number: each.without for each in done for number in each.rounds if each.without}
        resumed = bool(self.resumes)
        try:
            self._add(meeting, parts, usual, [2 * each for each in minutes], stopped=left > 0)
        except ValueError:
            return _too_much(meeting, minutes, written=written)
        self.resumes = 2 * max(0, left)
        whole = minutes[int(resumed) : len(said)]
        self.minutes = whole[-1] if whole else usual if minutes else self.minutes
        return None

    def _write_up(self) -> int:
        costs = self.terms.costs
        return (costs.write_up_with_evidence if self.every_evidence else costs.write_up) or 0

    def finish(self, ahead: Sequence[Meeting]) -> Laid | NoTimetable:
        """Plan what is left over the meetings that are left."""
        plan = self.plan(ahead)
        if isinstance(plan, NoTimetable):
            if not self.days:
                return plan
            return self._laid(self.minutes or self.terms.allowed.low, self.write_up, missing=plan)
        self.keep(plan, ahead[: len(plan.rounds)])
        return self._laid(plan.station_minutes, plan.write_up or self.write_up)

    def _laid(self, minutes: int, write_up: int, missing: NoTimetable | None = None) -> Laid:
        while self.meetings and self.meetings[-1].date > self.days[-1].date:
            self.meetings.pop()
            self.rounds.pop()
        whole = Timetable(minutes, tuple(self.rounds), write_up, self.every_evidence)
        noticed = tuple(day for day in self.noticed if day <= self.days[-1].date)
        return Laid(tuple(self.meetings), whole, tuple(self.days), tuple(self.held), missing, noticed)


def _when(meeting: Meeting) -> tuple[date, str, time, int]:
    """What the plan of a meeting depends on: its place among the school days is not part of it."""
    return meeting.date, meeting.day_type, meeting.start, meeting.minutes


def _too_much(meeting: Meeting, minutes: Sequence[int], *, written: bool) -> NotSo:
    held = [*([f"{sum(minutes)} min at stations"] if minutes else []), *(["the write-up"] if written else [])]
    what = f"{say_list(held)} and what belongs to it do not fit the {meeting.minutes} min of {say_date(meeting.date)}"
    return NotSo("done-too-much", what, "write what was done there, with the minutes at the stations, such as `round 1, 20 min`")
