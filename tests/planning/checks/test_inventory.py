"""What the inventory does not know is said where the unit names it, with what was probably meant."""

from __future__ import annotations

from decimal import Decimal

import pytest

from tests.support.department import tiny_department, tiny_unit
from trivet.model.places import Places
from trivet.model.problem import Place, Problem, Severity
from trivet.model.school import StockItem
from trivet.model.station import Material, Per
from trivet.planning.checks import check_units
from trivet.planning.checks.inventory import check_inventory

FILE = "units/float-or-sink/index.md"


def said(*materials: Material, stock: tuple[StockItem, ...]) -> list[Problem]:
    unit = tiny_unit(hands_on={"materials": materials}, places=Places(FILE, {("stations", "hands-on", "materials", 1): Place(FILE, 21, 9)}))
    return list(check_inventory(tiny_department(unit=unit, inventory=stock)))


def per_team(item: str, unit: str = "") -> Material:
    return Material(Decimal(1), item, Per.TEAM, unit=unit, used_up=bool(unit))


def stocked(item: str, unit: str = "") -> StockItem:
    return StockItem(item=item, have=Decimal(10), unit=unit)


def test_a_thing_the_inventory_does_not_know_is_advice() -> None:
    """The advice stands at the line, names the thing and the line to write; what is known, whatever its capitals, is quiet."""
    (problem,) = said(per_team("Balance  0.1 g"), per_team("jar"), stock=(stocked("balance 0.1 g"),))
    assert (problem.code, problem.severity, problem.place) == ("item-not-counted", Severity.ADVICE, Place(FILE, 21, 9))
    assert problem.sentence == (
        "hands-on, material 2: the inventory has no jar, so nobody says whether there is enough; "
        "write - item: jar and how many you have: in school/inventory.yml"
    )


@pytest.mark.parametrize(
    ("item", "near"),
    [
        ("paper towel", "paper towels"),
        ("cylinder 100 mL plastic", "plastic cylinder 100 mL"),
        ("digital thermometer", "thermometer"),
        ("plastic cylinder 100mL", "plastic cylinder 100 mL"),
        ("magnet", None),
    ],
)
def test_the_nearest_thing_is_named(item: str, near: str | None) -> None:
    """A plural, another order of words or a missing blank is answered with the name in the inventory, and nothing far off is."""
    names = ("paper towels", "plastic cylinder 100 mL", "thermometer", "stopwatch")
    (problem,) = said(per_team(item), stock=tuple(stocked(name) for name in names))
    assert problem.remedy.startswith(f"write {near} here if that is meant, or " if near else "write - item: ")


def test_pieces_and_measures_are_not_compared() -> None:
    """Water by the liter in the store and by the piece in the unit cannot be compared, and milliliters and liters can."""
    (problem,) = said(per_team("water"), stock=(stocked("water", "L"),))
    assert problem.what == "water is counted by the piece here and in L in the inventory, so nobody compares them"
    assert said(per_team("water", "mL"), stock=(stocked("water", "L"),)) == []


def test_one_thing_is_said_once_a_unit() -> None:
    """A thing that stands in two lines is told once."""
    assert len(said(per_team("jar"), per_team("Jar"), stock=(stocked("cup"),))) == 1


def test_without_an_inventory_there_is_nothing_to_say() -> None:
    """A department that keeps no inventory is not told so at every line; units alone say nothing of it either."""
    assert said(per_team("jar"), stock=()) == []
    assert [p.code for p in check_units(tiny_department()) if p.code == "item-not-counted"] == []
