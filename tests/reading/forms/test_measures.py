"""Amounts, areas and shares carry their unit."""

from __future__ import annotations

import re
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.reading.forms import AMOUNT_PATTERN, AREA_PATTERN, PERCENT_PATTERN, UNITS, Amount, Unreadable, amount, area, percent
from trivet.reading.forms.measures import SYMBOL


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        (12, Amount(Decimal(12))),
        ("12", Amount(Decimal(12))),
        (0, Amount(Decimal(0))),
        ("2 L", Amount(Decimal(2), "L")),
        ("0.5 kg", Amount(Decimal("0.5"), "kg")),
    ],
)
def test_amount(value: object, expected: Amount) -> None:
    """A count, or an amount with a unit of the closed list."""
    assert amount(value) == expected
    assert re.search(AMOUNT_PATTERN, str(value))


@pytest.mark.parametrize(
    ("value", "corrected"),
    [
        ("2L", "2 L"),
        ("2 liters", "2 L"),
        ("250 ml", "250 mL"),
        ("1,000 mL", "1000 mL"),
        ("a dozen", "1"),
        (Decimal("1.5"), "2"),
        ("2 boxes", "2"),
    ],
)
def test_amount_slips(value: object, corrected: str) -> None:
    """Another spelling of a unit is answered with its symbol."""
    answer = amount(value)
    assert isinstance(answer, Unreadable)
    assert (answer.remedy, answer.corrected) == (f"write {corrected}", corrected)
    assert isinstance(amount(corrected), Amount)


def test_unknown_unit_names_the_list() -> None:
    """A unit outside the closed list is answered with the list."""
    answer = amount("2 boxes")
    assert isinstance(answer, Unreadable)
    assert answer.what == f"this amount can't be read: 2 boxes (units are {', '.join(UNITS)})"


@pytest.mark.parametrize("value", ["some", "", None, True, {"a": 1}])
def test_amount_missing(value: object) -> None:
    """Without a number the remedy shows both ways to write one."""
    answer = amount(value)
    assert isinstance(answer, Unreadable)
    assert answer.remedy == "write 12, or 2 L with a unit of measure"


def test_other_spellings_do_not_clash() -> None:
    """Every symbol means itself, and no other spelling is itself a symbol."""
    assert all(SYMBOL[unit] == unit for unit in UNITS)
    assert set(SYMBOL.values()) == set(UNITS)


@pytest.mark.parametrize(
    ("value", "expected"), [("1200 sq ft", 1200), ("900 sqft", 900), ("100 sq m", 1076), ("1 sq m", 11), ("10000 sq m", 107_639)]
)
def test_area(value: str, expected: int) -> None:
    """Square feet as they are; square meters by the international foot, 1 m² = 10.7639 sq ft (NIST SP 811, appendix B.8)."""
    assert area(value) == expected
    assert re.search(AREA_PATTERN, value)


@pytest.mark.parametrize(
    ("value", "corrected"),
    [
        (1200, "1200 sq ft"),
        ("1,200 sq ft", "1200 sq ft"),
        ("1200 ft²", "1200 sq ft"),
        ("110 m²", "110 sq m"),
        ("110 square meters", "110 sq m"),
        ("big", "1200 sq ft"),
    ],
)
def test_area_slips(value: object, corrected: str) -> None:
    """The nearest area keeps its unit."""
    answer = area(value)
    assert isinstance(answer, Unreadable)
    assert (answer.remedy, answer.corrected) == (f"write {corrected}", corrected)
    assert isinstance(area(corrected), int)


@pytest.mark.parametrize(("value", "expected"), [("10 %", 10), ("10%", 10), ("0 %", 0), ("100 %", 100)])
def test_percent(value: str, expected: int) -> None:
    """Whole shares from 0 to 100."""
    assert percent(value) == expected
    assert re.search(PERCENT_PATTERN, value)


@pytest.mark.parametrize(
    ("value", "corrected"),
    [(10, "10 %"), ("10 percent", "10 %"), ("110 %", "100 %"), ("2.5 %", "3 %"), (Decimal("0.1"), "10 %"), ("few", "10 %"), ("", "10 %")],
)
def test_percent_slips(value: object, corrected: str) -> None:
    """A bare number gets its sign, a part of one becomes a share."""
    answer = percent(value)
    assert isinstance(answer, Unreadable)
    assert (answer.remedy, answer.corrected) == (f"write {corrected}", corrected)


@settings(max_examples=200, deadline=None)
@given(st.integers(0, 999_999_999).map(lambda n: Decimal(n) / 1000), st.sampled_from(UNITS))
def test_every_amount(quantity: Decimal, unit: str) -> None:
    """Every amount to the thousandth is read exactly."""
    assert amount(f"{quantity:f} {unit}") == Amount(quantity, unit)


@settings(max_examples=200, deadline=None)
@given(st.text(max_size=60))
def test_any_text(text: str) -> None:
    """Any text is read or answered with a remedy."""
    for read in (amount, area, percent):
        answer = read(text)
        assert not isinstance(answer, Unreadable) or (answer.what and answer.remedy)
