"""What to buy: whole packs, exact money."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest

from trivet.model.school import StockItem
from trivet.planning.stores.pools import Pool
from trivet.planning.stores.purchases import purchase, total


def pool(unit: str, *lines: StockItem) -> Pool:
    return Pool(item="thing", unit=unit, used_up=True, place="", have=Fraction(0), stock=lines)


@pytest.mark.parametrize(
    ("unit", "line", "short", "amount", "packs", "cost"),
    [
        ("", StockItem(item="thing", have=Decimal(0), price=Decimal("0.02"), pack=Decimal(150)), Fraction(10), 150, 1, "3.00"),
        ("", StockItem(item="thing", have=Decimal(0), price=Decimal("0.1")), Fraction(3), 3, None, "0.30"),
        ("", StockItem(item="thing", have=Decimal(0)), Fraction(3), 3, None, None),
        ("mL", StockItem(item="thing", have=Decimal(0), unit="L", price=Decimal("4.00"), pack=Decimal("0.5")), Fraction(501), 1, 2, "4.00"),
        ("", StockItem(item="thing", have=Decimal(0), price=Decimal("0.125"), pack=Decimal(1)), Fraction(5, 2), 3, None, "0.38"),
    ],
)
def test_purchase(*, unit: str, line: StockItem, short: Fraction, amount: int, packs: int | None, cost: str | None) -> None:
    """Amounts round up to whole things and packs in the unit of the price; money is a decimal to the cent, half a cent up."""
    found = purchase(pool(unit, line), short)
    assert found is not None
    assert (found.amount, found.packs, None if found.cost is None else str(found.cost)) == (amount, packs, cost)


def test_the_line_with_a_price_counts() -> None:
    """Where an item stands in the inventory twice, the line with a price is the one to buy by."""
    found = purchase(
        pool("", StockItem(item="thing", have=Decimal(0)), StockItem(item="thing", have=Decimal(0), price=Decimal(2))), Fraction(1)
    )
    assert found is not None and found.cost == 2


def test_nothing_is_bought_where_nothing_is_short_or_known() -> None:
    """No shortage, no line in the inventory, or a device: nothing to buy."""
    line = StockItem(item="thing", have=Decimal(0), price=Decimal(1))
    assert purchase(pool("", line), Fraction(0)) is None
    assert purchase(pool(""), Fraction(2)) is None
    assert purchase(Pool(item="device", unit="", used_up=False, place="r12", device=True, stock=(line,)), Fraction(2)) is None


def test_total() -> None:
    """The total leaves out what has no price."""
    found = [
        purchase(pool("", StockItem(item="thing", have=Decimal(0), price=price)), Fraction(1))
        for price in (Decimal("0.10"), None, Decimal("0.20"))
    ]
    assert total(each for each in found if each) == Decimal("0.30")
