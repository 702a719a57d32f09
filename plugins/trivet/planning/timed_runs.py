"""Every run of a department on its dates: which meetings, how many rounds, how long a station."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.plan import Day, PreCheck
from trivet.model.school import Run, SchoolClass
from trivet.model.unit import Unit
from trivet.planning import untimed
from trivet.planning.costs import Costs, costs
from trivet.planning.dates import Meeting, meetings, meetings_of_run, school_days
from trivet.planning.day import make_day
from trivet.planning.headcount import Headcount, by_groups, by_size, seats_on
from trivet.planning.launch import Launch, launch
from trivet.planning.minutes import Needed, RoundRange, needed, round_range
from trivet.planning.pre_check import pre_check
from trivet.planning.timetable import NoTimetable, Timetable, timetable
from trivet.planning.untimed import UntimedRun

WHOLE_CLASS = "whole_class"


@dataclass(frozen=True, slots=True, kw_only=True)
class TimedRun:
    """A run that fits its dates, with everything its times come from.

    `meetings` are those from the run's first possible one to its last day, lost days left out; the timetable counts by them.
    `number` counts the class's runs by date from 0; the first ones have `full_expectations`.
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
    pre_check: PreCheck | None
    follows: str = ""

    @property
    def whole_class(self) -> bool:
        """Whether all groups are at the same station in a round."""
        return self.run.way == WHOLE_CLASS

    @property
    def round_dates(self) -> tuple[date, ...]:
        """The date of each round."""
        return tuple(meeting.date for meeting, rounds in zip(self.meetings, self.timetable.rounds, strict=True) for _ in range(rounds))


AnyRun = TimedRun | UntimedRun


@dataclass(frozen=True, slots=True)
class _Asks:
    """What a unit asks for, whoever runs it."""

    unit: Unit
    needed: Needed
    allowed: RoundRange | None


@dataclass(frozen=True, slots=True)
class _Class:
    """A class with its meetings, and what its earlier runs leave free."""

    school_class: SchoolClass
    meetings: tuple[Meeting, ...]
    planned: Mapping[date, Day]
    last_unit: str = ""

    def after(self, timed: TimedRun) -> _Class:
        return _Class(self.school_class, self.meetings, {**self.planned, **{day.date: day for day in timed.days}}, timed.unit.slug)


def time_runs(department: Department) -> tuple[AnyRun, ...]:
    """Put every run on its dates, in the order of runs.yml.

    A class's runs are taken by date; a run that begins before the one before it has ended starts on the next free meeting.
    """
    days = school_days(department.school.calendar)
    defaults = department.school.settings.defaults
    asks = {slug: _Asks(unit, needed(unit, defaults), round_range(unit, defaults)) for slug, unit in department.units.items()}
    found: dict[int, AnyRun] = {}
    runs = department.school.runs
    for class_id in dict.fromkeys(run.class_id for run in runs):
        own = sorted((run.starts, place) for place, run in enumerate(runs) if run.class_id == class_id)
        school_class = department.school.classes.get(class_id)
        if school_class is None:
            found |= {place: untimed.no_class(runs[place]) for _, place in own}
            continue
        so_far = _Class(school_class, meetings(days, department.school.bells, school_class), {})
        for number, (_, place) in enumerate(own):
            timed = _time_run(department, runs[place], asks.get(runs[place].unit), so_far, number)
            found[place] = timed
            if isinstance(timed, TimedRun):
                so_far = so_far.after(timed)
    return tuple(found[place] for place in range(len(runs)))


def _time_run(department: Department, run: Run, asks: _Asks | None, so_far: _Class, number: int) -> AnyRun:
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
    ended = max(so_far.planned, default=None)
    begins = run.starts if ended is None else max(run.starts, ended + timedelta(days=1))
    usable = meetings_of_run(so_far.meetings, begins, run.lost)
    if not usable:
        return untimed.never_meets(run, begins)
    plan = timetable([meeting.minutes for meeting in usable], allowed, spent, max(1, defaults.rounds_a_day))
    if isinstance(plan, NoTimetable):
        return untimed.does_not_fit(run, needed=asks.needed, allowed=allowed, spent=spent, found=plan, begins=begins)
    used = usable[: len(plan.rounds)]
    days = lay_out(used, plan, spent)
    first_round = next(meeting for meeting, rounds in zip(used, plan.rounds, strict=True) if rounds)
    taken = pre_check(so_far.meetings, first_round, so_far.planned, run.lost, defaults.pre_check) if unit.pre_check else None
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
        meetings=used,
        timetable=plan,
        days=days,
        pre_check=taken,
        follows=so_far.last_unit if begins > run.starts else "",
    )


def lay_out(used: Sequence[Meeting], plan: Timetable, spent: Costs) -> tuple[Day, ...]:
    """Return the days of a timetable; meetings that hold nothing are left out."""
    days, first_round = [], 1
    for place, meeting in enumerate(used):
        parts = plan.day(place)
        if parts is not None:
            days.append(make_day(meeting, parts, first_round, plan.station_minutes, spent))
            first_round += parts.rounds
    return tuple(days)
