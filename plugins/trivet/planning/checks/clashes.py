"""Whether runs get into each other's way: one teacher or room at two lessons, classes of one teacher that drift apart."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from itertools import combinations, groupby

from trivet.model.department import Department
from trivet.model.plan import Day
from trivet.model.problem import Problem
from trivet.planning.checks.year import has_past, of_year, start_line
from trivet.planning.dates import SchoolDay, meetings, school_days
from trivet.planning.say import say_date, say_dates
from trivet.planning.timed_runs import AnyRun, TimedRun, starts_among


def check_clashes(department: Department, timed_runs: Sequence[AnyRun]) -> Iterator[Problem]:
    """Yield a warning for lessons of one teacher, or in one room, at one time, and for classes that drift apart."""
    found = [timed for timed in timed_runs if isinstance(timed, TimedRun)]
    held = school_days(department.school.calendar)
    yield from _at_once(department, found, held)
    yield from _drift(department, found, held)


def _at_once(department: Department, found: Sequence[TimedRun], held: Sequence[SchoolDay]) -> Iterator[Problem]:
    """Each pair of runs once, at the later one of runs.yml."""
    by_date: dict[date, list[tuple[TimedRun, Day]]] = {}
    for timed in found:
        for day in timed.days:
            by_date.setdefault(day.date, []).append((timed, day))
    clashes: dict[tuple[int, int], list[Day]] = {}
    runs = {timed.run.index: timed for timed in found}
    for lessons in by_date.values():
        for (one, first), (two, second) in combinations(sorted(lessons, key=lambda each: each[0].run.index), 2):
            if _shared(department, one, two) and first.start < second.end and second.start < first.end:
                clashes.setdefault((one.run.index, two.run.index), []).append(second)
    for (one_at, two_at), days in clashes.items():
        one, two = runs[one_at], runs[two_at]
        who = _shared(department, one, two)
        dates = say_dates(sorted(day.date for day in days))
        what = f"{who} has lessons of {one.run.class_id} and {two.run.class_id} at the same time on {dates}"
        free = next(
            (meeting.date for meeting in meetings(held, department.school.bells, two.school_class) if meeting.date > one.days[-1].date),
            None,
        )
        start = None if free is None or has_past(two) else starts_among(department, two, [free], found)
        line = f"write {start_line(two.run, start)}, when {one.run.class_id} has ended, or" if start else "write"
        yield of_year(department, two.run, "two-at-once", what, f"{line} another period, teacher or room in school/classes.yml")


def _shared(department: Department, one: TimedRun, two: TimedRun) -> str:
    """The teacher, else the room, that two runs of different classes have in common, "" for neither."""
    first, second = one.school_class, two.school_class
    if first.id == second.id:
        return ""
    if first.teacher == second.teacher:
        return department.school.settings.teachers.get(first.teacher, first.teacher)
    if first.room == second.room:
        return department.school.rooms[first.room].name if first.room in department.school.rooms else first.room
    return ""


def _drift(department: Department, found: Sequence[TimedRun], held: Sequence[SchoolDay]) -> Iterator[Problem]:
    """Classes of one teacher and one grade at the same unit: each is compared with the one that begins it first."""
    most = department.school.settings.defaults.drift_days
    place = {day.date: day.index for day in held}
    for _, group in groupby(sorted(found, key=_alike), key=_alike):
        first, *others = sorted(group, key=lambda timed: (timed.days[0].date, timed.run.index))
        for timed in others:
            begins, ends = (place[timed.days[end].date] - place[first.days[end].date] for end in (0, -1))
            if max(begins, ends) > most:
                # A day that the first class needs more for the unit may be spent by beginning nearer to it.
                latest = place[timed.days[0].date] - (max(begins, ends) - most)
                near = [day.date for day in held[place[first.days[0].date] : latest + 1]]
                yield _apart(department, timed, first, near, apart=max(begins, ends), end=0 if begins >= ends else -1, found=found)


def _alike(timed: TimedRun) -> tuple[str, int, str]:
    return timed.school_class.teacher, timed.school_class.grade, timed.run.unit


def _apart(
    department: Department, timed: TimedRun, first: TimedRun, near: Sequence[date], *, apart: int, end: int, found: Sequence[TimedRun]
) -> Problem:
    settings = department.school.settings
    teacher = settings.teachers.get(timed.school_class.teacher, timed.school_class.teacher)
    does = "ends" if end else "begins"
    dates = f"{first.run.class_id} {does} it on {say_date(first.days[end].date)}, {timed.run.class_id} on {say_date(timed.days[end].date)}"
    most = settings.defaults.drift_days
    what = f"{teacher}'s classes are {apart} school days apart in this unit, more than {most}: {dates}"
    raised = f"write `drift days: {apart}` under `defaults:` in school/school.yml"
    start = None if has_past(timed) else starts_among(department, timed, near, found)
    return of_year(department, timed.run, "drift", what, f"write {start_line(timed.run, start)}, or {raised}" if start else raised)
