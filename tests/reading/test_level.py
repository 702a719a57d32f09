"""The reading level follows the published formula and leaves new words out."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.reading.level import LEAST_WORDS, count_words, flesch_kincaid_grade, flesch_reading_ease, level, sentences

PLATYPUS = "The Australian platypus is seemingly a hybrid of a mammal and reptilian creature."


def test_published_sentence_has_its_published_grade() -> None:
    """13 words, 1 sentence, 24 syllables give ease 37.455 and grade 11.265 (Kincaid et al. 1975; published as 37.5 and 11.3)."""
    assert flesch_reading_ease(13, 1, 24) == pytest.approx(37.455, abs=5e-4)
    assert flesch_kincaid_grade(13, 1, 24) == pytest.approx(11.265, abs=5e-4)
    (sentence,) = sentences([PLATYPUS])
    assert (sentence.words, sentence.syllables) == (13, 24)
    assert sentence.grade == pytest.approx(11.265, abs=5e-4)


def test_easiest_text_has_the_known_ease() -> None:
    """One word of one syllable in one sentence gives the maximum ease, 206.835 - 1.015 - 84.6 = 121.22."""
    assert flesch_reading_ease(1, 1, 1) == pytest.approx(121.22)


def test_band_holds_the_grade() -> None:
    """The band is the two whole grades around the figure, and the hardest sentence stands first."""
    found = level([PLATYPUS, "We cut it. " * 10])
    assert found is not None
    assert found.band[0] <= max(0, found.grade) < found.band[1]
    assert found.hardest[0] == PLATYPUS


def test_text_of_few_words_has_no_level() -> None:
    """Under the least number of words there is no level."""
    assert level(["word " * (LEAST_WORDS - 1)]) is None
    assert level(["word " * LEAST_WORDS]) is not None


def test_new_words_are_left_out_with_their_plurals() -> None:
    """A new word, its plural and a new phrase count neither as words nor as syllables."""
    with_new = sentences(["Densities differ, and the density of an igneous rock is high."], ["density", "densities", "igneous rock"])
    assert [(sentence.words, sentence.syllables) for sentence in with_new] == [(7, 8)]


def test_decimals_and_units_end_no_sentence() -> None:
    """A decimal point is no end of a sentence, and each text ends one."""
    assert len(sentences(["It has 2.7 g. We saw it.", "no full stop"])) == 3


@given(st.text(max_size=300))
def test_any_text_is_counted(text: str) -> None:
    """No text stops the counter, and a sentence has at least a syllable a word."""
    for sentence in sentences([text]):
        assert sentence.syllables >= sentence.words >= 1
    assert count_words(text) >= 0
