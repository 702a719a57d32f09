"""A text that a hash sign cuts off."""

from __future__ import annotations

import pytest

from trivet.reading.strict import load


def told(text: str) -> list[tuple[str, int, int]]:
    found = [problem for problem in load(text, "a.yml").problems if problem.code == "hash-cuts-text"]
    return [(problem.remedy.split("write ")[1].split("; if")[0], problem.place.line, problem.place.column) for problem in found]


@pytest.mark.parametrize(
    ("text", "line", "column"),
    [
        ("room: Room #5\n", 'room: "Room #5"', 12),
        ("- Weigh #2 first\n", '- "Weigh #2 first"', 9),
        ("a: b # c\n", 'a: "b # c"', 6),
        ("a: b  #c\n", 'a: "b  #c"', 7),
    ],
)
def test_what_may_belong_to_the_text_is_told(text: str, line: str, column: int) -> None:
    """A hash sign right after a text is told at its column, with the line in quotes to write."""
    assert told(text) == [(line, 1, column)]


@pytest.mark.parametrize(
    "text", ["a: b  # a comment\n", "a: C#\n", 'a: "b #5"\n', "# all\na: b\n", "a: # later\n  b: c\n", "a: b\n  # c\n"]
)
def test_comments_and_signs_inside_words_are_let_be(text: str) -> None:
    """Two spaces before and one after make a comment; a sign inside a word or in quotes is text; an empty value can't be cut."""
    assert told(text) == []
