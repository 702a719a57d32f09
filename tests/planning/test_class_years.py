"""What the year page says of periods and standards."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from tests.support.department import tiny_bells, tiny_class, tiny_department, tiny_unit
from trivet.model.school import Defaults, Run
from trivet.planning.class_years import ClassYear, ShortPeriod, class_years
from trivet.planning.covered import Covered, covered
from trivet.planning.department import plan_department
from trivet.planning.timed_runs import TimedRun, time_runs
from trivet.planning.timetable import ROUNDS


def test_shortest_period_of_a_class() -> None:
    """The shortest period for a first round of the tiny unit: 4 + 3 + 2 + 6 (launch) + 21 + 1 + 5 + 1 = 43; a day of 38 is too short."""
    department = tiny_department(bells=tiny_bells(52, early_release=38))
    timed = time_runs(department)[0]
    assert isinstance(timed, TimedRun)
    needs = 2 * (4 + 3 + 2 + 21 + 1 + 5 + 1) + timed.launch.half_minutes
    assert class_years(department, [timed]) == (ClassYear("p1", needs, needs, (ShortPeriod("early_release", 38),)),)


def test_the_shortest_period_is_where_plans_begin_to_exist() -> None:
    """A class whose periods are a minute shorter than the shortest period has no plan, and one whose periods are as long has one."""
    needs = class_years(d := tiny_department(), time_runs(d))[0].least
    assert needs is not None
    enough = -(-needs // 2)
    for minutes, planned in ((enough - 1, False), (enough, True)):
        department = tiny_department(minutes=minutes, defaults=Defaults(write_up=1, write_up_with_evidence=1))
        assert bool(plan_department(department).plans) is planned
    assert ROUNDS == 3


def test_a_class_without_a_unit() -> None:
    """A class that runs nothing has no shortest period."""
    department = tiny_department(classes=[tiny_class(), tiny_class("p2")])
    assert class_years(department, time_runs(department))[1] == ClassYear("p2", None, None, ())


def test_standards_covered_and_met_again() -> None:
    """A code counts the units that name it and the classes that run one of them; who runs two meets it again; who runs none does not."""
    first = replace(tiny_unit(), standards=("MS-PS1-2", "MS-PS1-4"))
    second = replace(tiny_unit("circuits"), standards=("MS-PS1-2",))
    third = replace(tiny_unit("sound"), standards=("MS-PS4-1",))
    runs = (
        Run(class_id="p1", unit="float-or-sink", starts=date(2026, 9, 14)),
        Run(class_id="p1", unit="circuits", starts=date(2026, 10, 12)),
        Run(class_id="p2", unit="circuits", starts=date(2026, 10, 12)),
    )
    department = tiny_department(unit=first, units=(second, third), runs=runs, classes=[tiny_class(), tiny_class("p2")])
    assert covered(department, plan_department(department).plans) == (
        Covered("MS-PS1-2", ("circuits", "float-or-sink"), ("p1", "p2"), ("p1",)),
        Covered("MS-PS1-4", ("float-or-sink",), ("p1",), ()),
        Covered("MS-PS4-1", ("sound",), (), ()),
    )
