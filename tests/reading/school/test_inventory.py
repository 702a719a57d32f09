from __future__ import annotations

from decimal import Decimal

import pytest

from tests.support.sheets import codes, said, schema_problems, sheet
from trivet.reading.school.inventory import read_inventory


@pytest.mark.parametrize(
    ("written", "have", "unit"),
    [("12", "12", ""), ("2 L", "2", "L"), ("0.5 kg", "0.5", "kg"), ("250 mL", "250", "mL"), ("0", "0", "")],
)
def test_an_amount_is_a_number_or_a_number_with_a_unit(written: str, have: str, unit: str) -> None:
    """Numbers stay decimal, and the unit is what follows them."""
    items, problems = read_inventory(sheet("inventory", f"items:\n  - item: water\n    have: {written}\n"))
    assert problems == ()
    assert (items[0].have, items[0].unit) == (Decimal(have), unit)


@pytest.mark.parametrize(
    ("written", "remedy"), [("1.5", "write have: 2"), ("250mL", "write have: 250 mL"), ("2 liters", "write have: 2 L")]
)
def test_an_amount_that_can_not_be_is_answered(written: str, remedy: str) -> None:
    """Half a cylinder is none, and a unit of measure is one of the closed list; the corrected line is given."""
    text = f"items:\n  - item: water\n    have: {written}\n"
    sentences = schema_problems("inventory", text) or said(read_inventory(sheet("inventory", text))[1])
    assert [sentence.rpartition("; ")[2] for sentence in sentences] == [remedy]


def test_prices_are_exact() -> None:
    """6.50 is six and a half, not a float near it."""
    text = "items:\n  - item: cylinder\n    have: 1\n    price: 6.10\n    pack: 12\n    contains: latex, peanut\n    store: north\n"
    (item,), _ = read_inventory(sheet("inventory", text))
    assert item.price == Decimal("6.10")
    assert (item.pack, item.contains, item.store) == (Decimal(12), ("latex", "peanut"), "north")


def test_one_thing_may_be_in_two_stores_but_not_twice_in_one() -> None:
    """Two lines for one thing in one store are an error, whatever the capitals."""
    rows = [("Balance", "north"), ("balance", "south"), ("balance", "north")]
    text = "items:\n" + "".join(f"  - item: {item}\n    have: 1\n    store: {store}\n" for item, store in rows)
    items, problems = read_inventory(sheet("inventory", text))
    assert len(items) == 3
    assert codes(problems) == ["item-twice"]
    assert problems[0].place.line == 8
    assert "first on line 2" in problems[0].what
