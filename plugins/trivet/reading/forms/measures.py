"""Amounts, areas and shares: `2 L`, `1200 sq ft`, `10 %`."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal

from trivet.reading.forms.unreadable import LOOSE_NUMBER, Unreadable, as_number, instead, plain, said, up

UNITS = ("mL", "L", "mg", "g", "kg", "mm", "cm", "m", "in", "ft", "oz", "lb")
"""Units of measure that may stand in a file; a closed list, so that an item is never taken for one."""

OTHER_SPELLINGS = {
    "mL": ("ml", "ML", "Ml", "cc", "milliliter", "milliliters", "millilitre", "millilitres"),
    "L": ("l", "ltr", "liter", "liters", "litre", "litres"),
    "mg": ("MG", "milligram", "milligrams"),
    "g": ("gr", "gm", "gms", "gram", "grams"),
    "kg": ("Kg", "KG", "kgs", "kilogram", "kilograms"),
    "mm": ("MM", "millimeter", "millimeters", "millimetre", "millimetres"),
    "cm": ("CM", "cms", "centimeter", "centimeters", "centimetre", "centimetres"),
    "m": ("meter", "meters", "metre", "metres"),
    "in": ("inch", "inches"),
    "ft": ("foot", "feet"),
    "oz": ("ounce", "ounces"),
    "lb": ("lbs", "pound", "pounds"),
}
SYMBOL = {other: symbol for symbol, others in OTHER_SPELLINGS.items() for other in others} | {unit: unit for unit in UNITS}

QUANTITY = r"(?!0+(?:\.0+)?(?![0-9.]))(?:0|[1-9][0-9]{0,5})(?:\.[0-9]{1,3})?"
"""An amount above zero with at most three decimals."""

AMOUNT_PATTERN = rf"^((?:0|[1-9][0-9]{{0,5}})(?:\.[0-9]{{1,3}})?)(?:\s+({'|'.join(UNITS)}))?$"
AREA_PATTERN = r"^([1-9][0-9]{0,4})\s*(sq ?ft|sq ?m)$"
PERCENT_PATTERN = r"^([0-9]|[1-9][0-9]|100)\s?%$"

SQ_FT_PER_SQ_M = Decimal(1) / (Decimal("0.3048") * Decimal("0.3048"))
"""The international foot is 0.3048 m exactly (NIST Special Publication 811, appendix B.6)."""


@dataclass(frozen=True, slots=True)
class Amount:
    """How much there is of something; `unit` is "" for things that are counted."""

    quantity: Decimal
    unit: str = ""


def amount(value: object) -> Amount | Unreadable:
    """Read an amount in stock, 0 or more: `12`, or `2 L` with a unit of measure."""
    text = said(value)
    found = re.fullmatch(AMOUNT_PATTERN[1:-1], text)
    if found and (found[2] or "." not in found[1]):
        return Amount(Decimal(found[1]), found[2] or "")
    loose = re.match(rf"({LOOSE_NUMBER})\s*([A-Za-zµ]+)?", text, re.IGNORECASE)
    if loose is None or isinstance(value, bool):
        what = f"this amount can't be read: {text}" if text else "the amount is missing"
        return Unreadable(what, "write 12, or 2 L with a unit of measure")
    number, unit = as_number(loose[1]), SYMBOL.get(loose[2] or "", "")
    if loose[2] and not unit and loose[2].lower() in SYMBOL:
        unit = SYMBOL[loose[2].lower()]
    known = f" (units are {', '.join(UNITS)})" if loose[2] and not unit else ""
    return instead(f"this amount can't be read: {text}{known}", f"{plain(number)} {unit}" if unit else plain(up(number)))


def area(value: object) -> int | Unreadable:
    """Read an area and return whole square feet: `1200 sq ft`; square meters (`110 sq m`) are converted and rounded."""
    text = said(value)
    found = re.fullmatch(AREA_PATTERN[1:-1], text)
    if found:
        return int(found[1]) if found[2].endswith("ft") else int((Decimal(found[1]) * SQ_FT_PER_SQ_M).to_integral_value())
    loose = re.match(rf"({LOOSE_NUMBER})\s*(.*)", text, re.IGNORECASE)
    if loose is None:
        return instead(f"this area can't be read: {text}" if text else "the area is missing", "1200 sq ft")
    metric = re.search(r"(?:^|[^a-z])m(?:et(?:er|re)s?)?\b|m²|m2", loose[2].lower()) is not None
    number = min(max(int(up(as_number(loose[1]))), 1), 99_999)
    return instead(f"this area can't be read: {text}", f"{number} sq {'m' if metric else 'ft'}")


def percent(value: object) -> int | Unreadable:
    """Read a share from 0 to 100: `10 %`."""
    text = said(value)
    found = re.fullmatch(PERCENT_PATTERN[1:-1], text)
    if found:
        return int(found[1])
    loose = re.match(rf"({LOOSE_NUMBER})", text, re.IGNORECASE)
    if loose is None:
        return instead(f"this share can't be read: {text}" if text else "the share is missing", "10 %")
    number = as_number(loose[1])
    if isinstance(value, Decimal) and 0 < number < 1:
        number *= 100
    return instead(f"this share can't be read: {text}", f"{min(int(up(number)), 100)} %")
