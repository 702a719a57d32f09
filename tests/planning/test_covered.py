"""Which standards the department's runs cover."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from tests.support.department import STARTS, tiny_class, tiny_department, tiny_unit
from trivet.model.department import Department
from trivet.model.school import Run
from trivet.planning.covered import Covered, covered
from trivet.planning.department import plan_department


def department(*runs: Run) -> Department:
    units = [tiny_unit("plates", standards=("MS-ESS2-3", "MS-PS1-2")), tiny_unit("circuits", standards=("MS-PS2-5",))]
    first = tiny_unit(standards=("MS-PS1-2", "MS-PS1-2"))
    return tiny_department(unit=first, units=units, runs=runs, classes=[tiny_class("p2", 24), tiny_class("p1", 24)])


def run(class_id: str, unit: str, starts: date = STARTS) -> Run:
    return Run(class_id=class_id, unit=unit, starts=starts)


def found(given: Department) -> tuple[Covered, ...]:
    return covered(given, plan_department(given).plans)


def test_a_code_without_a_run_is_covered_by_nobody() -> None:
    """Every code that a unit names stands once, in order, with the units by slug; no run, no class."""
    assert found(department()) == (
        Covered("MS-ESS2-3", ("plates",), (), ()),
        Covered("MS-PS1-2", ("float-or-sink", "plates"), (), ()),
        Covered("MS-PS2-5", ("circuits",), (), ()),
    )


def test_a_class_that_meets_a_code_in_two_units_meets_it_again() -> None:
    """p1 runs both units of MS-PS1-2 and meets it again, p2 only one; classes stand in the order of classes.yml."""
    given = department(run("p1", "float-or-sink"), run("p1", "plates", date(2027, 1, 11)), run("p2", "plates"))
    by_code = {each.code: each for each in found(given)}
    assert by_code["MS-PS1-2"] == Covered("MS-PS1-2", ("float-or-sink", "plates"), ("p2", "p1"), ("p1",))
    assert by_code["MS-ESS2-3"].classes == ("p2", "p1")
    assert by_code["MS-ESS2-3"].again == ()


def test_a_run_that_could_not_be_planned_covers_nothing() -> None:
    """Only plans count: a run after the last day of school has none."""
    given = department(run("p1", "circuits", date(2027, 6, 30)))
    assert all(each.classes == () for each in found(given))


def test_units_without_standards_give_no_codes() -> None:
    """A department whose units name no standard covers none, with or without runs."""
    bare = tiny_department(size=24)
    assert found(bare) == ()
    assert found(replace(bare, units={})) == ()
