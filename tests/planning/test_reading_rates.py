"""Silent reading so slow that three of four students have finished.

Source: Spichtig, Hiebert, Vorstius, Pascoe, Pearson, Radach 2016, Reading Research Quarterly 51(2), 239-259, as kept in the design's
references, 5.9.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.planning.reading_rates import reading_halves, words_a_minute


@pytest.mark.parametrize(("grade", "rate"), [(0, 123), (4, 123), (5, 123), (6, 128), (7, 133), (8, 134), (9, 141), (13, 141)])
def test_grades_outside_the_table_take_the_nearest(grade: int, rate: int) -> None:
    """The table's own grades are the published figures; kindergarten reads as grade 5 and a senior as grade 9."""
    assert words_a_minute(grade) == rate


@given(st.integers(0, 20_000), st.integers(0, 13))
def test_halves_are_the_fewest_that_are_enough(words: int, grade: int) -> None:
    """The half minutes hold all the words, and one fewer would not."""
    halves, rate = reading_halves(words, grade), words_a_minute(grade)
    assert Fraction(halves, 2) * rate >= words
    assert halves == 0 or Fraction(halves - 1, 2) * rate < words


@given(st.integers(0, 5_000), st.integers(5, 8))
def test_an_older_grade_never_reads_longer(words: int, grade: int) -> None:
    """The same card never takes a higher grade more time."""
    assert reading_halves(words, grade + 1) <= reading_halves(words, grade)
