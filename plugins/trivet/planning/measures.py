"""Units of measure: which can be added, by what factor, and how an amount is said briefly."""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from fractions import Fraction
from functools import cache
from typing import Any

_METRIC = {
    "µL": ("L", Fraction(1, 10**6)),
    "mL": ("L", Fraction(1, 1000)),
    "cL": ("L", Fraction(1, 100)),
    "dL": ("L", Fraction(1, 10)),
    "L": ("L", Fraction(1)),
    "mg": ("g", Fraction(1, 1000)),
    "g": ("g", Fraction(1)),
    "kg": ("g", Fraction(1000)),
    "mm": ("m", Fraction(1, 1000)),
    "cm": ("m", Fraction(1, 100)),
    "m": ("m", Fraction(1)),
    "km": ("m", Fraction(1000)),
}
"""Unit: its base and how many of the base it is. These need no library, whose import costs more than a whole check."""

_BRIEFER = {"µL": "mL", "mL": "L", "mg": "g", "g": "kg", "mm": "m", "m": "km"}
"""The unit in which a thousand or more are said."""

_SPOKEN = {"fl oz": "fluid_ounce", "ml": "mL", "cl": "cL", "dl": "dL", "l": "L", "uL": "µL", "sq ft": "foot ** 2"}
"""Ways to write a unit that the table or the library spells otherwise."""


def factor(unit: str, to: str) -> Fraction | None:
    """Return how many `to` one `unit` is, None where the two cannot be compared. "" is a count."""
    unit, to = _SPOKEN.get(unit, unit), _SPOKEN.get(to, to)
    if unit == to:
        return Fraction(1)
    if not unit or not to:
        return None
    if unit in _METRIC and to in _METRIC:
        (base, many), (other_base, other_many) = _METRIC[unit], _METRIC[to]
        return many / other_many if base == other_base else None
    return _by_library(unit, to)


def briefly(amount: Fraction, unit: str) -> tuple[Fraction, str]:
    """Return the amount in a larger unit where it is a thousand or more and brief there: 2250 mL is 2.25 L, 1782 mL stays."""
    brief = _BRIEFER.get(_SPOKEN.get(unit, unit))
    if brief is None or amount < 1000 or (amount / 10).denominator != 1:
        return amount, unit
    return amount / 1000, brief


def as_decimal(amount: Fraction, *, up: bool = True) -> Decimal:
    """Return a plain decimal: exact where six places hold it, else rounded to three places, `up` or down."""
    exact = amount * 10**6
    if exact.denominator == 1:
        found = Decimal(exact.numerator).scaleb(-6)
    else:
        thousandths = Fraction(amount * 1000)
        whole = -(-thousandths.numerator // thousandths.denominator) if up else thousandths.numerator // thousandths.denominator
        found = Decimal(whole).scaleb(-3)
    return found.quantize(Decimal(1)) if found == found.to_integral_value() else found.normalize()


def whole_up(amount: Decimal) -> Decimal:
    """Return the amount rounded up to a whole number."""
    return amount.to_integral_value(rounding=ROUND_CEILING)


def in_packs(amount: Decimal, pack: Decimal | None) -> Decimal:
    """Return what to buy: the amount rounded up to whole packs."""
    if pack is None or pack <= 0:
        return amount
    packs = (amount / pack).to_integral_value(rounding=ROUND_FLOOR)
    return pack * (packs if packs * pack >= amount else packs + 1)


def _by_library(unit: str, to: str) -> Fraction | None:
    import pint  # noqa: PLC0415 - slow to import, and seldom needed

    try:
        return Fraction(_registry().Quantity(Fraction(1), unit).to(to).magnitude)
    except (pint.errors.PintError, ValueError):
        return None


@cache
def _registry() -> Any:  # a registry's type is made at run time
    import pint  # noqa: PLC0415 - slow to import, and seldom needed

    return pint.UnitRegistry(non_int_type=Fraction)
