"""What each class's periods can hold: the shortest period for a first round of its units, and the days that are too short."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from trivet.model.department import Department
from trivet.model.school import SchoolClass
from trivet.planning.costs import shortest_period
from trivet.planning.timed_runs import AnyRun, TimedRun


@dataclass(frozen=True, slots=True)
class ShortPeriod:
    """A day type whose period of the class is too short for a first round, in minutes."""

    day_type: str
    minutes: int


@dataclass(frozen=True, slots=True)
class ClassYear:
    """A class over the year. `least` and `most` are half minutes of the shortest periods that hold a first round of its units.

    Both are None where no unit of the class has dates. `too_short` are day types that hold no first round of any of them.
    """

    class_id: str
    least: int | None
    most: int | None
    too_short: tuple[ShortPeriod, ...]


def class_years(department: Department, timed_runs: Sequence[AnyRun]) -> tuple[ClassYear, ...]:
    """Return one value a class, in the order of classes.yml."""
    needs: dict[str, list[int]] = {class_id: [] for class_id in department.school.classes}
    for timed in timed_runs:
        if isinstance(timed, TimedRun):
            needs[timed.run.class_id].append(shortest_period(timed.allowed.low, timed.costs))
    return tuple(_year(department, school_class, needs[class_id]) for class_id, school_class in department.school.classes.items())


def _year(department: Department, school_class: SchoolClass, needs: Sequence[int]) -> ClassYear:
    if not needs:
        return ClassYear(school_class.id, None, None, ())
    periods = ((day_type.name, day_type.periods.get(school_class.period)) for day_type in department.school.bells.values())
    short = tuple(ShortPeriod(name, period.minutes) for name, period in periods if period and 2 * period.minutes < min(needs))
    return ClassYear(school_class.id, min(needs), max(needs), short)
