"""Grades, class numbers and short lists are read from one line."""

from __future__ import annotations

import re
from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.model.school import LateSeat
from trivet.reading import forms
from trivet.reading.forms import GRADES_PATTERN, LATE_PATTERN, NUMBERS_PATTERN, Unreadable, grades, late, listed, numbers, write_numbers


@pytest.mark.parametrize(("value", "expected"), [("6-8", (6, 8)), (7, (7, 7)), ("7", (7, 7)), ("6–8", (6, 8)), ("6 - 12", (6, 12))])
def test_grades(value: object, expected: tuple[int, int]) -> None:
    """A span or one grade, also as a number."""
    assert grades(value) == expected
    assert re.search(GRADES_PATTERN, str(value))


@pytest.mark.parametrize(
    ("value", "corrected"), [("6 to 8", "6-8"), ("8-6", "6-8"), ("6th-8th", "6-8"), ("Grade 7", "7"), ("6, 7, 8", "6-8")]
)
def test_grades_slips(value: str, corrected: str) -> None:
    """The nearest span is given and is read."""
    answer = grades(value)
    assert isinstance(answer, Unreadable)
    assert (answer.remedy, answer.corrected) == (f"write {corrected}", corrected)
    assert isinstance(grades(corrected), tuple)


@pytest.mark.parametrize("value", ["13", "all", "", None])
def test_no_grades(value: object) -> None:
    """What names no grade is answered with an example."""
    answer = grades(value)
    assert isinstance(answer, Unreadable)
    assert answer.remedy == "write 6-8, or 7 for one grade"


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        ("1-3, 5", (1, 2, 3, 5)),
        (9, (9,)),
        ("9", (9,)),
        ("5, 1-3", (1, 2, 3, 5)),
        ("1–3", (1, 2, 3)),
        ("1 to 3", (1, 2, 3)),
        ([3, 1], (1, 3)),
        ("7-7", (7,)),
    ],
)
def test_numbers(value: object, expected: tuple[int, ...]) -> None:
    """Spans and single numbers in any order, ascending when read."""
    assert numbers(value) == expected


@pytest.mark.parametrize(
    ("value", "what", "corrected"),
    [
        ("1-9 and 11-32", "these class numbers can't be read: 1-9 and 11-32", "1-9, 11-32"),
        ("1..9", "these class numbers can't be read: 1..9", "1-9"),
        ("9-1", "9-1 runs backward", "1-9"),
        ("3, 9-7, 4", "9-7 runs backward", "3-4, 7-9"),
        ("1-9, 5", "5 is named twice", "1-9"),
        ("1-9, 5, 6", "5 and 6 are named twice", "1-9"),
        ("95-104", "these class numbers can't be read: 95-104", "95-99"),
        ("01-05", "these class numbers can't be read: 01-05", "1-5"),
        ("0-5", "these class numbers can't be read: 0-5", "1-5"),
    ],
)
def test_numbers_slips(value: str, what: str, corrected: str) -> None:
    """The answer names what is wrong, and the corrected numbers are read."""
    assert numbers(value) == Unreadable(what, f"write {corrected}", corrected)
    assert isinstance(numbers(corrected), tuple)


@pytest.mark.parametrize("value", ["100", "", None, "all"])
def test_no_numbers(value: object) -> None:
    """What names no class number is answered with an example."""
    answer = numbers(value)
    assert isinstance(answer, Unreadable)
    assert answer.remedy == "write 1-31, or 1-9, 11-32"


@settings(max_examples=200, deadline=None)
@given(st.sets(st.integers(1, 99), min_size=1))
def test_numbers_round_trip(seats: set[int]) -> None:
    """What is written is read back, and fits the pattern of the schema."""
    text = write_numbers(tuple(seats))
    assert numbers(text) == tuple(sorted(seats))
    assert re.search(NUMBERS_PATTERN, text)


def test_late() -> None:
    """Who joins on a date, several with commas, in ascending order."""
    assert late("32 from 2026-10-05") == (LateSeat(32, date(2026, 10, 5)),)
    assert late("33 from 2026-10-06, 32 from 2026-10-05") == (LateSeat(32, date(2026, 10, 5)), LateSeat(33, date(2026, 10, 6)))
    assert late(["32 from 2026-10-05"]) == (LateSeat(32, date(2026, 10, 5)),)
    assert re.search(LATE_PATTERN, "33 from 2026-10-06, 32 from 2026-10-05")


@pytest.mark.parametrize(
    ("value", "remedy"),
    [
        ("32 since 10/5/2026", "write 32 from 2026-10-05"),
        ("#32: 2026-10-05", "write 32 from 2026-10-05"),
        ("32 from 2026-02-30", "write 32 from 2026-02-28"),
        ("32 from 2026-10-05, 32 from 2026-10-06", "leave one of the two out"),
        ("32", "write 32 from 2026-10-05"),
        (32, "write 32 from 2026-10-05"),
        ("", "write 32 from 2026-10-05"),
    ],
)
def test_late_slips(value: object, remedy: str) -> None:
    """Slips are answered with the nearest line, or with an example."""
    answer = late(value)
    assert isinstance(answer, Unreadable)
    assert answer.remedy == remedy


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        ("glass, spill", ("glass", "spill")),
        (["glass", "spill"], ("glass", "spill")),
        ("none", ("none",)),
        (None, ()),
        ("a,,b,", ("a", "b")),
        (7, ("7",)),
        ([7, "a, b"], ("7", "a, b")),
    ],
)
def test_listed(value: object, expected: tuple[str, ...]) -> None:
    """Commas in one line or a list; empty items are dropped."""
    assert listed(value) == expected


@pytest.mark.parametrize("value", [{"a": 1}, [{"a": 1}], ["a", ["b"]]])
def test_listed_slips(value: object) -> None:
    """Keys or lists inside a list of short texts are answered."""
    answer = listed(value)
    assert isinstance(answer, Unreadable)
    assert answer.remedy == "write the texts with commas between them, or one a line after a dash"


@settings(max_examples=300, deadline=None)
@given(st.one_of(st.text(max_size=60), st.text("0123456789-–, tofrm", max_size=20)))
def test_any_text(text: str) -> None:
    """Any text is read or answered with a remedy, and a corrected one is read."""
    for read in (grades, numbers, late, listed):
        answer = read(text)
        if isinstance(answer, Unreadable):
            assert answer.what
            assert answer.remedy
            assert answer.corrected == "" or not isinstance(read(answer.corrected), Unreadable)


def test_patterns_suit_every_editor() -> None:
    """The patterns are anchored and use only what regular expressions of JavaScript know, so that a JSON Schema can carry them."""
    patterns = [getattr(forms, name) for name in forms.__all__ if name.endswith("_PATTERN")]
    assert len(patterns) == 19
    for pattern in patterns:
        assert pattern.startswith("^")
        assert pattern.endswith("$")
        assert not re.search(r"\(\?P|\(\?<|\\A|\\Z|\(\?[aiLmsux]|\(\?#|[*+?}]\+|\(\?>", pattern)
        assert re.compile(pattern)
