"""Units of measure."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from itertools import product

import pint
import pytest

from trivet.planning.measures import _METRIC, as_decimal, briefly, factor


def test_table_agrees_with_the_library() -> None:
    """Every pair of metric units compares as pint says (SI prefixes), exactly, or not at all."""
    registry = pint.UnitRegistry(non_int_type=Fraction)
    for unit, to in product(_METRIC, repeat=2):
        try:
            expected = registry.Quantity(Fraction(1), unit).to(to).magnitude
        except pint.DimensionalityError:
            expected = None
        assert factor(unit, to) == expected, (unit, to)


@pytest.mark.parametrize(
    ("unit", "to", "many"),
    [
        ("in", "cm", Fraction(254, 100)),
        ("lb", "g", Fraction(45359237, 100000)),
        ("gal", "cup", Fraction(16)),
        ("fl oz", "cup", Fraction(1, 8)),
        ("ml", "L", Fraction(1, 1000)),
        ("sq ft", "sq ft", Fraction(1)),
    ],
)
def test_customary_units(unit: str, to: str, many: Fraction) -> None:
    """An inch is 2.54 cm, a pound 453.59237 g (exact since 1959), a US gallon 16 cups, a cup 8 fluid ounces (NIST Handbook 44)."""
    assert factor(unit, to) == many


@pytest.mark.parametrize(
    ("unit", "to"), [("", "mL"), ("mL", ""), ("mL", "g"), ("cup", "lb"), ("boxes", "mL"), ("drop of", "mL"), ("2 x", "mL")]
)
def test_what_cannot_be_compared(unit: str, to: str) -> None:
    """A count and a measure, volume and mass, and words that are no unit can't be added."""
    assert factor(unit, to) is None


def test_said_briefly() -> None:
    """A thousand or more are said in the next unit where two places hold it; anything else stays as it was written."""
    assert briefly(Fraction(2250), "mL") == (Fraction(9, 4), "L")
    assert briefly(Fraction(1782), "mL") == (1782, "mL")
    assert briefly(Fraction(999), "g") == (999, "g")
    assert briefly(Fraction(1000), "g") == (1, "kg")
    assert briefly(Fraction(5000), "") == (5000, "")


def test_decimals_are_exact_or_on_the_safe_side() -> None:
    """What six places hold is exact; anything else is rounded up for a need and down for what is there."""
    assert as_decimal(Fraction(594)) == Decimal(594)
    assert as_decimal(Fraction(9, 4)) == Decimal("2.25")
    assert as_decimal(Fraction(1, 3)) == Decimal("0.334")
    assert as_decimal(Fraction(1, 3), up=False) == Decimal("0.333")
    assert str(as_decimal(Fraction(100))) == "100"
