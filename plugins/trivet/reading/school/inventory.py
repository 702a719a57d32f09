"""`school/inventory.yml`: what the stores hold."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from trivet.model.problem import Problem
from trivet.model.school import StockItem
from trivet.reading.school.sentences import read_sentence
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.values import listed


def read_inventory(sheet: Sheet) -> tuple[tuple[StockItem, ...], tuple[Problem, ...]]:
    """Return what the stores hold, and what stands there twice."""
    problems: list[Problem] = []
    items = [_item(sheet, index, said, problems) for index, said in enumerate(sheet.data["items"])]
    first: dict[tuple[str, str], int] = {}
    for index, item in enumerate(items):
        if item is None:
            continue
        key = (item.item.casefold(), item.store.casefold())
        if key in first:
            line = sheet.places.find("items", first[key]).line
            what = f'"{item.item}" stands here twice for one store; first on line {line}'
            problems.append(sheet.error("item-twice", ("items", index, "item"), what, "add the two up, or write another `store`"))
        first.setdefault(key, index)
    return tuple(filter(None, items)), tuple(problems)


def _item(sheet: Sheet, index: int, said: Mapping[str, Any], problems: list[Problem]) -> StockItem | None:
    have = read_sentence(sheet, ("items", index, "have"), "amount", said["have"], problems)
    if have is None:
        return None
    return StockItem(
        item=said["item"],
        have=have.quantity,
        unit=have.unit,
        store=said.get("store", ""),
        price=Decimal(said["price"]) if "price" in said else None,
        pack=Decimal(said["pack"]) if "pack" in said else None,
        contains=listed(said.get("contains")),
    )
