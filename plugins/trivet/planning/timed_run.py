"""One run on its dates: which meetings, how many rounds, how long a station."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta

from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.plan import Day, PreCheck
from trivet.model.school import Run, SchoolClass
from trivet.model.unit import Unit
from trivet.planning import untimed
from trivet.planning.as_known import Known
from trivet.planning.catch_up import Missed
from trivet.planning.costs import Costs, costs
from trivet.planning.dates import Meeting, meetings_of_run
from trivet.planning.headcount import Headcount, by_groups, by_size, seats_on
from trivet.planning.launch import Launch, launch
from trivet.planning.minutes import Needed, RoundRange
from trivet.planning.pre_check import pre_check
from trivet.planning.replay import Held, Laid, NotSo, Terms, lay
from trivet.planning.timetable import NoTimetable, Timetable
from trivet.planning.untimed import UntimedRun
from trivet.planning.where import Square

WHOLE_CLASS = "whole_class"


@dataclass(frozen=True, slots=True, kw_only=True)
class TimedRun:
    """A run that fits its dates, with everything its times come from.

    `meetings` are those from the run's first possible one to its last day, lost days left out; the timetable counts by them.
    `held` are the rounds on their dates, those of the past as they were. `unfinished` says why what is left has no dates.
    `number` counts the class's runs by date from 0; the first ones have `full_expectations`.
    `noticed` are the dates on which what was left was planned anew, since the calendar had changed at short notice.
    `follows` is the unit whose days made this run start later than written, "" for none.
    """

    run: Run
    unit: Unit
    school_class: SchoolClass
    lock: Lock | None
    number: int
    full_expectations: bool
    headcount: Headcount
    needed: Needed
    allowed: RoundRange
    launch: Launch
    costs: Costs
    meetings: tuple[Meeting, ...]
    timetable: Timetable
    days: tuple[Day, ...]
    held: tuple[Held, ...]
    pre_check: PreCheck | None
    follows: str = ""
    unfinished: UntimedRun | None = None
    noticed: tuple[date, ...] = ()

    @property
    def whole_class(self) -> bool:
        """Whether all groups are at the same station in a round."""
        return self.run.way == WHOLE_CLASS

    @property
    def round_dates(self) -> tuple[date, ...]:
        """The date of each round, and of each part of one that was stopped."""
        return tuple(each.date for each in self.held)

    @property
    def missed(self) -> Missed:
        """The groups that missed a round, by its number."""
        return missed_of(self.run)


AnyRun = TimedRun | UntimedRun


@dataclass(frozen=True, slots=True)
class Asks:
    """What a unit asks for, whoever runs it."""

    unit: Unit
    needed: Needed
    allowed: RoundRange | None


@dataclass(frozen=True, slots=True)
class ClassSoFar:
    """A class with its meetings, and what its earlier runs leave free; `known`: the meetings as they were known first, and from then on.

    `known` is () where nothing came at short notice.
    """

    school_class: SchoolClass
    meetings: tuple[Meeting, ...]
    planned: Mapping[date, Day]
    last_unit: str = ""
    known: tuple[Known, ...] = ()

    def after(self, timed: TimedRun) -> ClassSoFar:
        """Return the class with one more run behind it."""
        return replace(self, planned={**self.planned, **{day.date: day for day in timed.days}}, last_unit=timed.unit.slug)

    def usable(self, begins: date) -> tuple[Known, ...]:
        """Return the meetings that a run may use, as they were known when it began and from each later date on."""
        known = self.known or (Known(date.min, self.meetings),)
        at_first = max(place for place, each in enumerate(known) if each.since <= begins)
        return tuple(Known(each.since, meetings_of_run(each.meetings, begins, tuple(self.planned))) for each in known[at_first:])


def missed_of(run: Run) -> Missed:
    """Return the letters of the groups that missed a round, by its number."""
    return {number: each.without for each in run.done if each.without for number in each.rounds}


def _begins(run: Run, so_far: ClassSoFar) -> date:
    """The first date on which the run may have a meeting: after the class's earlier units.

    Where its first round is recorded for a day that these leave free, it was begun then, and goes on around them.
    """
    ended = max(so_far.planned, default=None)
    if ended is None:
        return run.starts
    first = [each.date for each in run.done if 1 in each.rounds] + [each.date for each in run.half if each.round == 1]
    begun = [day for day in first if run.starts <= day <= ended and day not in so_far.planned]
    return min(begun, default=max(run.starts, ended + timedelta(days=1)))


def first_round_of(timed: Laid | TimedRun) -> Meeting | None:
    """Return the meeting with the first round."""
    return next((meeting for meeting, count in zip(timed.meetings, timed.timetable.rounds, strict=True) if count), None)


def time_run(
    department: Department, run: Run, asks: Asks | None, so_far: ClassSoFar, number: int, *, square: Square | None = None
) -> AnyRun:
    """Put one run on its dates, after what its class has behind it; `number` counts the class's runs before it."""
    if asks is None:
        return untimed.no_unit(run)
    if asks.allowed is None:
        return untimed.too_long(run, asks.needed)
    unit, allowed, defaults = asks.unit, asks.allowed, department.school.settings.defaults
    lock = department.locks.get((run.class_id, run.unit))
    if lock is not None and lock.leveled:
        lock = None  # a leveled unit looks like one not drawn yet, whoever put its lock here
    seats = seats_on(so_far.school_class, run.starts)
    headcount = by_groups(lock.groups) if lock else by_size(len(seats), defaults.team_size)
    opening = launch(unit, defaults, headcount, whole_class=run.way == WHOLE_CLASS)
    full = number < defaults.runs_with_full_expectations
    spent = costs(defaults, headcount, opening.half_minutes, full_expectations=full, at_home=unit.write_up.at_home)
    begins = _begins(run, so_far)
    at_first, *later = so_far.usable(begins)
    usable = later[-1].meetings if later else at_first.meetings
    if all(meeting.date in run.lost for meeting in usable):
        return untimed.all_lost(run, begins) if usable else untimed.never_meets(run, begins, ever=bool(so_far.meetings))
    terms = Terms(allowed, spent, max(1, defaults.rounds_a_day), square)
    laid = lay(at_first.meetings, run, terms, later)
    if isinstance(laid, NotSo):
        return UntimedRun(run=run, code=laid.code, reason=laid.what, remedy=laid.remedy)
    missing = laid if isinstance(laid, NoTimetable) else laid.missing
    unfinished = None
    if missing is not None:
        before = max((each.minutes for each in so_far.meetings if each.date < begins and each.date not in so_far.planned), default=0)
        unfinished = untimed.does_not_fit(
            run, needed=asks.needed, allowed=allowed, spent=spent, found=missing, begins=begins, longest_before=before
        )
    if isinstance(laid, NoTimetable):
        return unfinished or untimed.never_meets(run, begins, ever=bool(so_far.meetings))
    first_round = first_round_of(laid) if unit.pre_check else None
    taken = pre_check(so_far.meetings, first_round, so_far.planned, (), defaults.pre_check) if first_round else None
    return TimedRun(
        run=run,
        unit=unit,
        school_class=so_far.school_class,
        lock=lock,
        number=number,
        full_expectations=full,
        headcount=headcount,
        needed=asks.needed,
        allowed=allowed,
        launch=opening,
        costs=spent,
        meetings=laid.meetings,
        timetable=laid.timetable,
        days=laid.days,
        held=laid.held,
        pre_check=taken,
        follows=so_far.last_unit if begins > run.starts else "",
        unfinished=unfinished,
        noticed=laid.noticed,
    )
