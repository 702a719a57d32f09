"""Whether the inventory knows what a unit needs, so that someone can tell whether there is enough."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from difflib import SequenceMatcher

from trivet.model.department import Department
from trivet.model.problem import Problem, Severity
from trivet.model.school import StockItem
from trivet.model.unit import Unit
from trivet.planning.materials import item_key
from trivet.planning.measures import factor

INVENTORY = "school/inventory.yml"

NEAR = 0.6
"""How much of two names must agree, as a ratio of characters, for one to be offered for the other."""


def check_inventory(department: Department) -> Iterator[Problem]:
    """Yield advice for each thing of a unit that the inventory does not know, or counts in units that can't be compared.

    A department without an inventory has chosen not to count.
    """
    inventory = department.school.inventory
    if not inventory:
        return
    for unit in department.units.values():
        yield from _unknown(unit, inventory)


def _unknown(unit: Unit, inventory: Sequence[StockItem]) -> Iterator[Problem]:
    said: set[str] = set()
    for index, line in enumerate(unit.hands_on.materials):
        key = item_key(line.item)
        known = [stock for stock in inventory if item_key(stock.item) == key]
        if key in said or any(factor(stock.unit, line.unit) is not None for stock in known):
            continue
        said.add(key)
        if known:
            here, there = _counted(line.unit), _counted(known[0].unit)
            what = f"{line.item} is counted {here} here and {there} in the inventory, so nobody compares them"
            remedy = f"write both so that they can be compared, here or in {INVENTORY}"
        else:
            what = f"the inventory has no {line.item}, so nobody says whether there is enough"
            near = _nearest(line.item, inventory)
            hint = f"write {near} here if that is meant, or " if near else ""
            remedy = f"{hint}write - item: {line.item} and how many you have: in {INVENTORY}"
        yield Problem(
            code="item-not-counted",
            severity=Severity.ADVICE,
            place=unit.places.find("stations", "hands-on", "materials", index),
            where=f"hands-on, material {index + 1}",
            what=what,
            remedy=remedy,
        )


def _counted(unit: str) -> str:
    return f"in {unit}" if unit else "by the piece"


def _nearest(item: str, inventory: Sequence[StockItem]) -> str:
    """Return the item with the nearest name, whatever the order of its words, "" where none is near."""
    best, found = NEAR, ""
    for stock in inventory:
        ratio = SequenceMatcher(None, _in_order(item), _in_order(stock.item), autojunk=False).ratio()
        if ratio > best:
            best, found = ratio, stock.item
    return found


def _in_order(item: str) -> str:
    return " ".join(sorted(item_key(item).split()))
