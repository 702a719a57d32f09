"""How fast students read silently, so that three of four have finished."""

from __future__ import annotations

from fractions import Fraction

from trivet.planning.halves import halves

WORDS_A_MINUTE = {5: 123, 6: 128, 7: 133, 8: 134, 9: 141}
"""Comprehension-based silent reading, 25th percentile, by grade.

Spichtig, Hiebert, Vorstius, Pascoe, Pearson, Radach 2016, Reading Research Quarterly 51(2), 239-259: 2,203 students in 16 states.
"""


def words_a_minute(grade: int) -> int:
    """Return the rate of `grade`, or of the nearest grade in the table."""
    return WORDS_A_MINUTE[min(max(grade, min(WORDS_A_MINUTE)), max(WORDS_A_MINUTE))]


def reading_halves(words: int, grade: int) -> int:
    """Return the half minutes in which three of four students of `grade` have read `words`, rounded up."""
    return halves(Fraction(words, words_a_minute(grade)))
