"""The nearest word of a closed list."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.reading.near import nearest, plain

KEYS = ("done when", "finished early", "hazards", "materials", "leave alone", "title")
WORDS = st.text(st.sampled_from("abcdeshort -_"), max_size=12)


@pytest.mark.parametrize(
    ("word", "meant"),
    [
        ("done_when", "done when"),
        ("Done-When", "done when"),
        ("donewhen", "done when"),
        ("hazard", "hazards"),
        ("HAZARDS", "hazards"),
        ("materials ", "materials"),
        ("titles", "title"),
        ("titel", "title"),
        ("xylophone", ""),
        ("", ""),
    ],
)
def test_what_was_meant(word: str, meant: str) -> None:
    """Capitals, underscores, hyphens, a plural or swapped letters lead to the word; what is far off leads nowhere."""
    assert nearest(word, KEYS) == meant


@pytest.mark.parametrize(("word", "meant"), [("bells", "bell"), ("ball", "balls")])
def test_a_plural_outranks_another_near_word(word: str, meant: str) -> None:
    """`bells` means bell though belly is as near, and `ball` means balls though bell is as near."""
    assert nearest(word, ("belly", "bell", "balls")) == meant


def test_nothing_known() -> None:
    """Of no words none is near."""
    assert nearest("anything", ()) == ""


@given(st.lists(WORDS, max_size=6), WORDS)
def test_the_answer_is_one_of_the_words(known: list[str], word: str) -> None:
    """What is returned stands in the list, and does not depend on the list's order."""
    found = nearest(word, known)
    assert found in (*known, "")
    assert plain(nearest(word, sorted(known, reverse=True))) == plain(found)


@given(st.lists(WORDS.filter(plain), min_size=1, max_size=6))
def test_a_word_of_the_list_is_its_own_nearest(known: list[str]) -> None:
    """A word that stands in the list is never answered with another sound."""
    assert all(plain(nearest(word, known)) == plain(word) for word in known)
