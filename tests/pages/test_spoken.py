"""Numbers, times and amounts as a teacher reads them."""

from __future__ import annotations

from datetime import time
from decimal import Decimal

import pytest

from trivet.pages import spoken


@pytest.mark.parametrize(
    ("value", "unit", "said"),
    [
        ("594", "mL", "594 mL"),
        ("40000", "mL", "40 L"),
        ("12250", "mL", "12.25 L"),
        ("1000", "mL", "1,000 mL"),
        ("11883", "mL", "11,883 mL"),
        ("12000", "", "12,000"),
        ("0.5", "g", "0.5 g"),
    ],
)
def test_much_of_a_thing_is_said_in_the_larger_unit(value: str, unit: str, said: str) -> None:
    """Ten thousand or more is said in the larger unit where that is brief; less stays beside its need, and a plain count never changes."""
    assert spoken.stock(Decimal(value), unit) == said


@pytest.mark.parametrize(("value", "said"), [(7, "7"), (7.5, "7½"), (0.5, "½"), (0, "0")])
def test_half_minutes_are_halves(value: float, said: str) -> None:
    """Minutes are whole or halves, and half a minute stands without a zero."""
    assert spoken.minutes(value) == said


@pytest.mark.parametrize(("when", "said"), [(time(8, 5), "8:05"), (time(12, 0), "12:00"), (time(13, 35), "1:35"), (time(0, 5), "12:05")])
def test_a_clock_time_is_a_schools(when: time, said: str) -> None:
    """Clock times have twelve hours and two digits of minutes."""
    assert spoken.clock(when) == said
