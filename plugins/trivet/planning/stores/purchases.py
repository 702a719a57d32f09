"""What to buy where something is short: whole packs, and their cost in exact decimals."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from trivet.planning.measures import as_decimal, briefly, factor, in_packs
from trivet.planning.stores.pools import Pool

CENT = Decimal("0.01")


@dataclass(frozen=True, slots=True, kw_only=True)
class Purchase:
    """What to buy of one item for one store: `amount` in `unit` ("each" = counted), rounded up to whole packs.

    `packs` is None where the item is not sold in packs; `price` is for one `unit_of_price`; `cost` is None where no price is known.
    """

    item: str
    place: str
    use: str
    amount: Decimal
    unit: str
    packs: int | None
    pack: Decimal | None
    price: Decimal | None
    cost: Decimal | None


def purchase(pool: Pool, short: Fraction) -> Purchase | None:
    """Return what to buy of a pool that is `short` (in its unit), None where nothing is or the school does not buy it by the item."""
    if short <= 0 or not pool.stock or pool.device:
        return None
    line = next((line for line in pool.stock if line.price is not None), pool.stock[0])
    missing = short * (factor(pool.unit, line.unit) or 1)
    amount = in_packs(as_decimal(missing) if line.unit else whole(missing), line.pack)
    packs = None if line.pack is None or line.pack == 1 else int(amount / line.pack)
    said, unit = briefly(Fraction(amount), line.unit)
    return Purchase(
        item=pool.item,
        place=pool.place,
        use="used up" if pool.used_up else "reusable",
        amount=as_decimal(said),
        unit=unit or "each",
        packs=packs,
        pack=line.pack if packs is not None else None,
        price=line.price,
        cost=None if line.price is None else (line.price * amount).quantize(CENT, ROUND_HALF_UP),
    )


def total(purchases: Iterable[Purchase]) -> Decimal:
    """Return the cost of all that have a price."""
    return sum((each.cost for each in purchases if each.cost is not None), start=Decimal(0))


def whole(amount: Fraction) -> Decimal:
    """Return the amount rounded up to a whole thing."""
    return Decimal(-(-amount.numerator // amount.denominator))
