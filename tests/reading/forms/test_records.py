"""What a class did, in one line."""

from __future__ import annotations

import re
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.model.school import Done, HalfDone
from trivet.reading import forms
from trivet.reading.forms import Unreadable
from trivet.reading.schemas import schema

MONDAY = date(2026, 11, 30)
RUN = schema("runs")["properties"]["runs"]["items"]["properties"]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("2026-11-30, round 1", Done(date=MONDAY, rounds=(1,))),
        ("2026-11-30, rounds 1 and 2", Done(date=MONDAY, rounds=(1, 2))),
        ("2026-11-30,round 1, without B", Done(date=MONDAY, rounds=(1,), without=("B",))),
        (
            "2026-11-30, rounds 2, 3 and write-up, without C and A, 20 min",
            Done(date=MONDAY, rounds=(2, 3), write_up=True, without=("A", "C"), minutes=20),
        ),
        ("2026-11-30, round 3 and write-up", Done(date=MONDAY, rounds=(3,), write_up=True)),
        ("2026-11-30, write-up", Done(date=MONDAY, write_up=True)),
    ],
)  # fmt: skip
def test_done(text: str, expected: Done) -> None:
    """Whole rounds, the write-up, who missed it and other minutes are read from one line."""
    assert forms.done(text) == expected


def test_half() -> None:
    """A stopped round has its date, its number and its minutes."""
    assert forms.half_done("2026-11-30, round 2, 11 min") == HalfDone(MONDAY, 2, 11)


@pytest.mark.parametrize(
    ("text", "remedy"),
    [
        ("round 1", "write - 2026-11-30, round 1"),
        ("2026-12-01: round 1", "write - 2026-12-01, round 1"),
        ("2026-12-01, round 1, without D", "write the groups that missed the round, such as without B"),
        ("2026-12-01, round 1, without A, B and C", "write - 2026-12-01 under `lost`"),
        ("2026-11-31, round 1", 'write 2026-11-30, round 1'),
        ("2026-12-01, rounds 1 and 3", "write - 2026-12-01, round 1 for that day, and each other round on its own date"),
        ("", "write - 2026-11-30, round 1"),
    ],
)  # fmt: skip
def test_what_is_none(text: str, remedy: str) -> None:
    """What can't be read is answered with a line to write, on the date that stands there."""
    read = forms.done(text)
    assert isinstance(read, Unreadable) and read.remedy == remedy


@pytest.mark.parametrize(("text", "days"), [("2 weeks", 14), ("1 week", 7), ("10 days", 10), ("0 days", 0), ("1  day", 1)])
def test_gap(text: str, days: int) -> None:
    """A gap is read in days or weeks."""
    assert forms.gap(text) == days


@pytest.mark.parametrize(
    ("text", "corrected"),
    [("two weeks", "2 weeks"), ("a week", "1 week"), ("3 d", "3 days"), ("14", "14 weeks"), ("", "2 weeks"), ("2 weeks or so", "2 weeks")],
)
def test_gap_that_is_none(text: str, corrected: str) -> None:
    """What can't be read is answered with the nearest gap; one longer than a school year is refused."""
    read = forms.gap(text)
    assert isinstance(read, Unreadable) and read.corrected == corrected
    assert isinstance(forms.gap("60 weeks"), Unreadable)


@given(st.text(max_size=60))
def test_any_text(text: str) -> None:
    """No text raises anything, and nothing but text of these forms is read."""
    for read in (forms.done(text), forms.half_done(text), forms.gap(text)):
        assert isinstance(read, Done | HalfDone | int | Unreadable)


PIECES = st.sampled_from(["2026-11-30", ", ", "round 1", "rounds 1 and 2", " and write-up", "write-up", "without B", "20 min", " ", "half"])


@given(pieces=st.lists(PIECES, min_size=1, max_size=7))
def test_schema_and_reader_say_the_same(pieces: list[str]) -> None:
    """The schema carries the reader's pattern, and what it lets through the reader reads, but for dates and orders that can't be so."""
    text = "".join(pieces)
    for key, pattern, read in (("done", forms.DONE_PATTERN, forms.done), ("half", forms.HALF_PATTERN, forms.half_done)):
        assert RUN[key]["items"]["pattern"] == pattern and RUN[key]["items"]["x-form"] == key
        assert bool(re.search(pattern, " ".join(text.split()))) == (not isinstance(read(text), Unreadable))
