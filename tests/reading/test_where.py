"""A path of keys and positions is said in the reader's words."""

from __future__ import annotations

import pytest

from trivet.model.places import Path
from trivet.reading.near import nearest
from trivet.reading.where import words


@pytest.mark.parametrize(
    ("path", "said"),
    [
        ((), ""),
        (("title",), "title"),
        (("stations", "hands-on", "steps", 0), "hands-on, step 1"),
        (("stations", "teacher-led", "questions", 1, "ask"), "teacher-led, question 2, ask"),
        (("stations", "teacher-led", "quick check", 0, "answer"), "teacher-led, quick check item 1, answer"),
        (("write-up", "claim starts"), "write-up, claim starts"),
        (("classes", "p1", "numbers"), "class p1, numbers"),
        (("runs", 3, "class"), "run 4, class"),
        (("day types", "regular", "P1"), "day type regular, P1"),
        (("stations", "hands-on", "anything", 2), "hands-on, anything, line 3"),
    ],
)
def test_path_is_said_in_words(path: Path, said: str) -> None:
    """Stations stand alone, lists count from one in words, named things carry their name."""
    assert words(path) == said


@pytest.mark.parametrize(
    ("typed", "meant"),
    [("done_when", "done when"), ("Hands On", "hands-on"), ("step", "steps"), ("titel", "title"), ("goals", "goal"), ("sponsor", "")],
)
def test_nearest_word_is_the_one_that_was_meant(typed: str, meant: str) -> None:
    """Underscores, case, plurals and slips of a letter lead to the word; a strange one leads nowhere."""
    assert nearest(typed, ["goal", "steps", "stretch", "title", "done when", "hands-on"]) == meant
