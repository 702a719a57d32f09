"""Minutes in halves are exact."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.planning.halves import halves, minutes, spoken


@given(st.fractions(min_value=0, max_value=500, max_denominator=60))
def test_parts_of_half_minutes_count_as_whole_ones(exact: Fraction) -> None:
    """The halves of a time are the fewest that hold it."""
    assert halves(exact) == ceil(2 * exact)


@pytest.mark.parametrize(("written", "expected"), [(0.1, 1), (0.3, 1), (2.9, 6), (7, 14), (7.5, 15), (0.0, 0)])
def test_decimals_are_taken_as_written(written: float, expected: int) -> None:
    """A decimal means what was typed, not its nearest binary number: 0.1 + 0.2 and the like give no half minute too many."""
    assert halves(written) == expected


@given(st.integers(0, 1000))
def test_halves_come_back(count: int) -> None:
    """Halves as minutes, and minutes as people write them, are halves again."""
    assert halves(minutes(count)) == count
    said = spoken(count)
    assert 2 * int(said.rstrip("½") or 0) + said.endswith("½") == count
