"""Whether runs fit the year: terms, testing days, last dates."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date, timedelta

from trivet.model.department import Department
from trivet.model.problem import Problem, Severity
from trivet.model.school import Run
from trivet.planning.checks.places import named, of_run
from trivet.planning.dates import SchoolDay, meetings, school_days
from trivet.planning.say import say_date
from trivet.planning.timed_runs import AnyRun, TimedRun, ends_by_start

TESTING = ("test", "exam")
"""A day type of bells.yml with a word that begins so is a testing day."""


def check_year(department: Department, timed_runs: Sequence[AnyRun]) -> Iterator[Problem]:
    """Yield a warning for each run that misses its last date, ends after its term has ended, or is interrupted by testing days."""
    held = school_days(department.school.calendar)
    found = [timed for timed in timed_runs if isinstance(timed, TimedRun)]
    ends = {(timed.run.class_id, timed.run.unit): timed.days[-1].date for timed in found}
    for timed in found:
        # A unit that begins after another one stays after it.
        least = ends.get((timed.run.class_id, timed.run.after), date.min)
        if timed.unfinished is None:
            yield from _last_date(department, timed, least)
            yield from _term(department, timed, held, least)
        yield from _testing(department, timed, held, least)


def _last_date(department: Department, timed: TimedRun, least: date) -> Iterator[Problem]:
    last, by = timed.days[-1].date, timed.run.by
    # A date before the run's own first one is told where the file is read.
    if by is not None and last > by and not (timed.run.begins == "date" and by < timed.run.starts):
        what = f"the unit ends on {say_date(last)}, after its last date, {say_date(by)}"
        yield of_year(department, timed.run, "by-missed", what, _remedy(department, timed, by, None, least), key="by")


def _term(department: Department, timed: TimedRun, held: Sequence[SchoolDay], least: date) -> Iterator[Problem]:
    first, last = timed.days[0].date, timed.days[-1].date
    term = next((each for each in department.school.calendar.terms if each.first <= first <= each.last), None)
    if term is not None and last > term.last:
        what = f"it begins in {term.name} and ends on {say_date(last)}, after {term.name} has ended on {say_date(term.last)}"
        later = _meeting_after(department, timed, held, term.last)
        yield of_year(department, timed.run, "past-term", what, _remedy(department, timed, term.last, later, max(least, term.first)))


def _testing(department: Department, timed: TimedRun, held: Sequence[SchoolDay], least: date) -> Iterator[Problem]:
    """A unit that testing days interrupt, whether the class meets on them or not."""
    first, last = timed.days[0].date, timed.days[-1].date
    met = [day for day in held if is_testing(day.day_type) and first <= day.date <= last]
    if met:
        days = f"{say_date(met[0].date)} is a testing day" if len(met) == 1 else f"{len(met)} testing days begin on {say_date(met[0].date)}"
        what = f"the unit goes from {say_date(first)} to {say_date(last)}, and {days}"
        window = met[-1].date
        for day in held[met[-1].index :]:
            if not is_testing(day.day_type):
                break
            window = day.date
        later = _meeting_after(department, timed, held, window)
        yield of_year(
            department, timed.run, "into-testing", what, _remedy(department, timed, met[0].date - timedelta(days=1), later, least)
        )


def is_testing(day_type: str) -> bool:
    """Say whether a day type is for tests, by its name."""
    return any(word.startswith(TESTING) for word in day_type.split("_"))


def _meeting_after(department: Department, timed: TimedRun, held: Sequence[SchoolDay], day: date) -> date | None:
    found = meetings(held, department.school.bells, timed.school_class)
    return next((meeting.date for meeting in found if meeting.date > day), None)


def _remedy(department: Department, timed: TimedRun, by: date, later: date | None, least: date) -> str:
    """What to write so that the run ends by a date (and begins no earlier than `least`), or begins on a later one."""
    if has_past(timed):
        return "what is behind it stays: tell whoever counts on that date, or give up what is left"
    start = ends_by_start(department, timed, by)
    lines = [f"{start_line(timed.run, start)} to end in time"] if start is not None and start >= least else []
    lines += [f"{start_line(timed.run, later)} to begin after that"] if later is not None else []
    return f"write {', or '.join(lines)}" if lines else "write a later date, or move the units before it"


def has_past(timed: TimedRun) -> bool:
    """Whether something is recorded of the run, or came at short notice, so that its first day does not move any more."""
    return bool(timed.noticed or timed.run.done or timed.run.half or any(day >= timed.days[0].date for day in timed.run.lost))


def start_line(run: Run, day: date) -> str:
    """Return the line that gives a run another first day, and what it stands in place of."""
    gone = "`after` and `gap`" if run.gap_days else "`after`"
    return f"`starts: {day}` in place of {gone}" if run.after else f"`starts: {day}`"


def of_year(department: Department, run: Run, code: str, what: str, remedy: str, *, key: str = "") -> Problem:
    """Return a warning about a run, at one of its keys or at what says its start."""
    return Problem(
        code=code,
        severity=Severity.WARNING,
        place=of_run(department, run, key or ("after" if run.after else "by" if run.begins == "by" else "starts")),
        where=named(run),
        what=what,
        remedy=remedy,
    )
