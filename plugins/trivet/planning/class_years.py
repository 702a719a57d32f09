"""What each class's periods hold: how many minutes in the year, the shortest period for a first round, the days that are too short."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from trivet.model.department import Department
from trivet.model.school import SchoolClass
from trivet.planning.costs import shortest_period
from trivet.planning.dates import SchoolDay, meetings, school_days
from trivet.planning.timed_runs import AnyRun, TimedRun


@dataclass(frozen=True, slots=True)
class ShortPeriod:
    """A day type whose period of the class is too short for a first round, in minutes."""

    day_type: str
    minutes: int


@dataclass(frozen=True, slots=True)
class ClassYear:
    """A class over the year: how often it meets, and for how many minutes in all.

    `least` and `most` are half minutes of the shortest periods that hold a first round of its units, both None where no unit of the
    class has dates. `too_short` are day types that hold no first round of any of them.
    """

    class_id: str
    meetings: int
    minutes: int
    least: int | None
    most: int | None
    too_short: tuple[ShortPeriod, ...]


def class_years(department: Department, timed_runs: Sequence[AnyRun]) -> tuple[ClassYear, ...]:
    """Return one value a class, in the order of classes.yml."""
    needs: dict[str, list[int]] = {class_id: [] for class_id in department.school.classes}
    for timed in timed_runs:
        if isinstance(timed, TimedRun):
            needs[timed.run.class_id].append(shortest_period(timed.allowed.low, timed.costs))
    days = school_days(department.school.calendar)
    return tuple(_year(department, days, school_class, needs[class_id]) for class_id, school_class in department.school.classes.items())


def _year(department: Department, days: Sequence[SchoolDay], school_class: SchoolClass, needs: Sequence[int]) -> ClassYear:
    lengths = [meeting.minutes for meeting in meetings(days, department.school.bells, school_class)]
    if not needs:
        return ClassYear(school_class.id, len(lengths), sum(lengths), None, None, ())
    periods = ((day_type.name, day_type.periods.get(school_class.period)) for day_type in department.school.bells.values())
    short = tuple(ShortPeriod(name, period.minutes) for name, period in periods if period and 2 * period.minutes < min(needs))
    return ClassYear(school_class.id, len(lengths), sum(lengths), min(needs), max(needs), short)
