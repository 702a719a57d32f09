"""Durations are read in the unit that is written beside them, and answered with the nearest one."""

from __future__ import annotations

import re
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.reading.forms import MINUTES_PATTERN, ROUND_PATTERN, SECONDS_PATTERN, Unreadable, minutes, round_bounds, seconds


@pytest.mark.parametrize(
    ("value", "expected"),
    [("2 min", 2.0), ("0.5 min", 0.5), ("60 min", 60.0), ("2.5 mins", 2.5), ("1 minute", 1.0), ("3\u00a0minutes", 3.0)],
)
def test_minutes(value: str, expected: float) -> None:
    """Minutes in halves from 0.5 to 60."""
    assert minutes(value) == expected
    assert re.search(MINUTES_PATTERN, value)


@pytest.mark.parametrize(
    ("value", "corrected"),
    [
        ("2min", "2 min"), ("2", "2 min"), (2, "2 min"), (Decimal("2.5"), "2.5 min"), ("two minutes", "2 min"),
        ("1.3 min", "1.5 min"), ("30 s", "0.5 min"), ("1 h", "60 min"), ("1–2 min", "2 min"),
        ("about 3 minutes", "3 min"), ("0 min", "0.5 min"),
        ("1:30", "1.5 min"),
    ],
)  # fmt: skip
def test_minutes_slips(value: object, corrected: str) -> None:
    """The nearest minutes are given and are read."""
    answer = minutes(value)
    assert answer == Unreadable(f"these minutes can't be read: {value}", f"write {corrected}", corrected)
    assert isinstance(minutes(corrected), float)


@pytest.mark.parametrize(
    ("value", "remedy"), [("90 min", "write 60 min or less"), ("soon", "write 2 min"), ("", "write 2 min"), (None, "write 2 min")]
)
def test_minutes_with_no_nearest(value: object, remedy: str) -> None:
    """Too long, or no time at all, is answered too."""
    answer = minutes(value)
    assert isinstance(answer, Unreadable)
    assert answer.remedy == remedy


@pytest.mark.parametrize(("value", "expected"), [("30 s", 30), ("1 second", 1), ("90 seconds", 90), ("3600 s", 3600), ("5 sec", 5)])
def test_seconds(value: str, expected: int) -> None:
    """Whole seconds up to an hour."""
    assert seconds(value) == expected
    assert re.search(SECONDS_PATTERN, value)


@pytest.mark.parametrize(
    ("value", "corrected"),
    [
        ("30", "30 s"),
        (30, "30 s"),
        ("30s", "30 s"),
        ("1 min", "60 s"),
        ("2 h", "3600 s"),
        ("half a minute", "30 s"),
        ("4000 s", "3600 s"),
        ("", "30 s"),
    ],
)
def test_seconds_slips(value: object, corrected: str) -> None:
    """Minutes become seconds, and too many become the most."""
    answer = seconds(value)
    assert isinstance(answer, Unreadable)
    assert (answer.remedy, answer.corrected) == (f"write {corrected}", corrected)


@pytest.mark.parametrize(
    ("value", "expected"),
    [
        ("20-30 min", (20, 30)),
        (25, (25, 25)),
        ("25", (25, 25)),
        ("25 min", (25, 25)),
        ("20–30 min", (20, 30)),
        ("20 - 30 minutes", (20, 30)),
        ("5-120", (5, 120)),
    ],
)
def test_round(value: object, expected: tuple[int, int]) -> None:
    """A stretch or one number, bare numbers too."""
    assert round_bounds(value) == expected
    assert re.search(ROUND_PATTERN, str(value))


@pytest.mark.parametrize(
    ("value", "corrected"),
    [
        ("20 to 30 min", "20-30 min"),
        ("30-20 min", "20-30 min"),
        ("about 25", "25 min"),
        ("1-2 min", "5 min"),
        ("90-200 min", "90-120 min"),
        ("", "20-30 min"),
        ("long", "20-30 min"),
    ],
)
def test_round_slips(value: object, corrected: str) -> None:
    """The nearest bounds are given and are read."""
    answer = round_bounds(value)
    assert isinstance(answer, Unreadable)
    assert (answer.remedy, answer.corrected) == (f"write {corrected}", corrected)
    assert isinstance(round_bounds(corrected), tuple)


@settings(max_examples=200, deadline=None)
@given(st.integers(1, 120), st.sampled_from(["min", "mins", "minute", "minutes"]))
def test_all_halves(halves: int, word: str) -> None:
    """Every half minute up to an hour is read as itself, and what the pattern takes the form takes."""
    text = f"{halves // 2}{'.5' if halves % 2 else ''} {word}"
    assert minutes(text) == halves / 2


@settings(max_examples=200, deadline=None)
@given(st.one_of(st.text(max_size=60), st.text("0123456789 -–.minsho", max_size=12)))
def test_any_text(text: str) -> None:
    """Any text is read or answered with a remedy, and form and pattern agree."""
    joined = " ".join(text.split())
    for read, pattern in ((minutes, MINUTES_PATTERN), (seconds, SECONDS_PATTERN), (round_bounds, ROUND_PATTERN)):
        answer = read(text)
        if isinstance(answer, Unreadable):
            assert answer.remedy
            assert answer.corrected == "" or not isinstance(read(answer.corrected), Unreadable)
        else:
            assert re.search(pattern, joined)
