"""`school/inventory.yml`: what the stores hold."""

from __future__ import annotations

import re
from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from trivet.model.problem import Problem
from trivet.model.school import StockItem
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.values import comma_list

AMOUNT = re.compile(r"([0-9]+(?:\.[0-9]+)?) ?(.*)")


def read_inventory(sheet: Sheet) -> tuple[tuple[StockItem, ...], tuple[Problem, ...]]:
    """Return what the stores hold, and what stands there twice."""
    items = tuple(_item(said) for said in sheet.data["items"])
    problems = []
    first: dict[tuple[str, str], int] = {}
    for index, item in enumerate(items):
        key = (item.item.casefold(), item.store.casefold())
        if key in first:
            line = sheet.places.find("items", first[key]).line
            what = f'"{item.item}" stands here twice for one store; first on line {line}'
            problems.append(sheet.error("item-twice", ("items", index, "item"), what, "add the two up, or write another `store`"))
        first.setdefault(key, index)
    return items, tuple(problems)


def _item(said: Mapping[str, Any]) -> StockItem:
    have, unit = _amount(said["have"])
    return StockItem(
        item=said["item"],
        have=have,
        unit=unit,
        store=said.get("store", ""),
        price=Decimal(said["price"]) if "price" in said else None,
        pack=Decimal(said["pack"]) if "pack" in said else None,
        contains=comma_list(said.get("contains", [])),
    )


def _amount(said: Any) -> tuple[Decimal, str]:
    if not isinstance(said, str):
        return Decimal(said), ""
    found = AMOUNT.fullmatch(said.strip())
    return (Decimal(found[1]), found[2].strip()) if found else (Decimal(0), "")
