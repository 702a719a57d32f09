"""Whether runs fit their dates, their class and what it avoids."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from trivet.model.department import Department
from trivet.model.problem import Problem, Severity
from trivet.planning.cautions import hazards_of
from trivet.planning.checks.places import CLASSES, in_file, named, of_run
from trivet.planning.class_size import class_size_advice
from trivet.planning.dates import meetings, school_days
from trivet.planning.headcount import by_size, seats_on
from trivet.planning.materials import same_item
from trivet.planning.say import say_date, say_list
from trivet.planning.timed_runs import AnyRun, TimedRun
from trivet.planning.untimed import UntimedRun
from trivet.planning.wishes import most_met

OF_DATES = (
    "no-day-fits",
    "year-ends",
    "class-never-meets",
    "done-out-of-order",
    "done-beyond",
    "done-too-much",
    "stopped-too-late",
    "all-lost",
    "no-room-before",
    "waits-for-unit",
)
"""Reasons for having no dates that are told here; the others are told where the class or the unit stands."""


def check_runs(department: Department, timed_runs: Sequence[AnyRun]) -> Iterator[Problem]:
    """Yield the problems of runs: no dates (error), begun too early or with an avoided item (warning), large classes (advice)."""
    sized: set[str] = set()
    untimed = {(timed.run.class_id, timed.run.unit): timed for timed in timed_runs if isinstance(timed, UntimedRun)}
    for timed in timed_runs:
        if isinstance(timed, UntimedRun):
            if _cause(timed, untimed).code in OF_DATES:
                yield _no_dates(department, timed)
            continue
        if timed.unfinished is not None:
            yield _no_dates(department, timed.unfinished)
        unused = list(_record_unused(department, timed))
        yield from unused
        if timed.follows and not unused:
            yield _overlap(department, timed)
        yield from _order(department, timed)
        yield from _avoided(department, timed)
        if timed.school_class.id not in sized and hazards_of(timed.unit):
            sized.add(timed.school_class.id)
            yield from _class_size(department, timed)


def _cause(timed: UntimedRun, untimed: Mapping[tuple[str, str], UntimedRun]) -> UntimedRun:
    """The run at the beginning of a chain of runs that wait for each other; reading has refused circles."""
    seen = {timed.run.unit}
    while timed.code == "waits-for-unit" and timed.run.after not in seen:
        before = untimed.get((timed.run.class_id, timed.run.after))
        if before is None:
            break
        seen.add(before.run.unit)
        timed = before
    return timed


def _no_dates(department: Department, timed: UntimedRun) -> Problem:
    return Problem(
        code=timed.code,
        severity=Severity.ERROR,
        place=of_run(department, timed.run),
        where=named(timed.run),
        what=timed.reason,
        remedy=timed.remedy,
    )


def _overlap(department: Department, timed: TimedRun) -> Problem:
    run, first = timed.run, timed.days[0].date
    return Problem(
        code="runs-overlap",
        severity=Severity.WARNING,
        place=of_run(department, run, "after" if run.after else "by" if run.begins == "by" else "starts"),
        where=named(run),
        what=f"{run.class_id} is still at {timed.follows} on {say_date(run.starts)}; this run begins on {say_date(first)}",
        remedy=f"write `after: {timed.follows}`" if run.after else f"write `starts: {first}`",
    )


def _record_unused(department: Department, timed: TimedRun) -> Iterator[Problem]:
    """What is recorded for a date on which the class is not at this unit: while another one goes on, say."""
    days = {day.date for day in timed.days}
    school = department.school
    met = {meeting.date for meeting in meetings(school_days(school.calendar), school.bells, timed.school_class)}
    for key, dates in (("done", [each.date for each in timed.run.done]), ("half", [each.date for each in timed.run.half])):
        for day in dict.fromkeys(dates):
            # Dates on which the class does not meet, or before the start, are told where the file is read.
            if day not in days and day >= timed.run.starts and day in met:
                other = f"write `- {day}` under `lost` of {timed.follows}" if timed.follows else "mend the date"
                busy = f"is at {timed.follows} then" if timed.follows else "has no meeting for it then"
                yield Problem(
                    code="record-unused",
                    severity=Severity.ERROR,
                    place=of_run(department, timed.run, key),
                    where=named(timed.run),
                    what=f"something is recorded for {say_date(day)}, but by the plan {timed.run.class_id} {busy}",
                    remedy=f"{other}, or take the line out",
                )


def _order(department: Department, timed: TimedRun) -> Iterator[Problem]:
    """Wishes that stand in each other's way; what one wish alone can't have, all three groups at once, is no news."""
    wishes = timed.run.order
    wanted, can_be = sum(most_met([wish]) for wish in wishes), most_met(wishes)
    if can_be < wanted and not timed.whole_class:
        yield Problem(
            code="order-not-met",
            severity=Severity.ADVICE,
            place=of_run(department, timed.run, "order"),
            where=named(timed.run),
            what=f"the wishes under `order` stand in each other's way: of {wanted} that could be met one by one, {can_be} can be together",
            remedy="leave out what matters least to you; the lesson sheet says which group goes without",
        )


def _avoided(department: Department, timed: TimedRun) -> Iterator[Problem]:
    for line in timed.unit.hands_on.materials:
        stock = [item for item in department.school.inventory if same_item(item.item, line.item)]
        met = [tag for tag in timed.school_class.avoid if any(tag in item.contains for item in stock)]
        if met:
            yield Problem(
                code="item-avoided",
                severity=Severity.WARNING,
                place=of_run(department, timed.run),
                where=named(timed.run),
                what=f"{line.item} contains {say_list(met)}, which this class avoids",
                remedy="replace it for the whole class, so that nobody is singled out",
            )


def _class_size(department: Department, timed: TimedRun) -> Iterator[Problem]:
    """Once a class, by its size at the first run with a hazard."""
    students = len(seats_on(timed.school_class, timed.run.starts))
    team_size = department.school.settings.defaults.team_size
    at_once = max(group.students for group in by_size(students, team_size).groups.values())
    advice = class_size_advice(students, students if timed.whole_class else at_once)
    if advice:
        yield Problem(
            code="class-size",
            severity=Severity.ADVICE,
            place=in_file(department, CLASSES, "classes", timed.school_class.id, "numbers"),
            where=timed.school_class.id,
            what=advice.rstrip("."),
        )
