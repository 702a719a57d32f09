"""Content lines of a calendar file (RFC 5545, 3.1 and 3.3.11)."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.reading.calendars.lines import MOST_CHARACTERS, Line, content_lines, plain_text


def lines(text: str) -> list[Line]:
    return list(content_lines(text))


def test_the_example_of_the_standard() -> None:
    """A folded line is one line again, with the blank of the fold taken off (RFC 5545 3.1, the DESCRIPTION on three lines)."""
    folded = "DESCRIPTION:This is a lo\n ng description\n  that exists on a long line."
    assert lines(folded) == [Line("DESCRIPTION", "This is a long description that exists on a long line.", 1)]


@given(st.text(st.sampled_from("abc: ;,"), min_size=1, max_size=40), st.integers(1, 10))
def test_folding_anywhere_changes_nothing(value: str, width: int) -> None:
    """A line that is folded after every few characters, by blank or tab, reads like the whole one."""
    whole = f"SUMMARY:{value}"
    parts = [whole[at : at + width] for at in range(0, len(whole), width)]
    for fold in ("\n ", "\n\t"):
        assert lines(fold.join(parts)) == lines(whole) == [Line("SUMMARY", value, 1)]


def test_parameters_in_quotes_may_hold_separators() -> None:
    """Names are upper case, a quoted value keeps its colon, semicolon and comma, and the value begins after the right colon."""
    (line,) = lines('dtstart;tzid="America: x;y,z";Value=DATE:20261130')
    assert line == Line("DTSTART", "20261130", 1, {"TZID": "America: x;y,z", "VALUE": "DATE"})


def test_what_is_no_content_line_is_kept_with_its_number() -> None:
    """A line without a colon has no name; empty lines count for numbers, and a fold at the very beginning is no fold."""
    assert lines(" begins with a blank\n\nBEGIN:VEVENT\n") == [Line("", " begins with a blank", 1), Line("BEGIN", "VEVENT", 3)]
    assert lines("") == lines("\n\n") == []


def test_a_line_without_end_is_cut() -> None:
    """A line of a hostile file is cut, however it is folded, and the next line is still read."""
    found = lines("X:" + "\n ".join(["a" * 5000] * 20) + "\nEND:VEVENT")
    assert len(found[0].value) == MOST_CHARACTERS - 2
    assert found[1] == Line("END", "VEVENT", 21)


@pytest.mark.parametrize(
    ("value", "text"),
    [("a\\, b\\; c", "a, b; c"), ("a\\nb\\N c", "a b c"), ("a\\\\n", "a\\n"), ("  a   b ", "a b"), ("a\\", "a\\"), ("", "")],
)
def test_escapes_are_undone_once(value: str, text: str) -> None:
    """Escaped commas, semicolons, line ends and backslashes read as such, from left to right."""
    assert plain_text(value) == text
