"""Clock times and dates are read in one form each, and every usual way to write one is answered with that form."""

from __future__ import annotations

import re
from datetime import date, time, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.model.school import Closure, Term
from trivet.reading.forms import (
    CLOCK_RANGE_PATTERN,
    DATE_PATTERN,
    DATE_RANGE_PATTERN,
    TERM_PATTERN,
    Unreadable,
    clock_range,
    date_of,
    date_range,
    term,
)

DAYS = st.dates(date(2000, 1, 1), date(2099, 12, 31))


@pytest.mark.parametrize(
    ("text", "corrected"),
    [
        ("11/30/2026", "2026-11-30"), ("11/30/26", "2026-11-30"), ("30.11.2026", "2026-11-30"), ("2026/11/30", "2026-11-30"),
        ("2026-1-5", "2026-01-05"), ("Nov 30, 2026", "2026-11-30"), ("November 30th 2026", "2026-11-30"), ("30 Nov 2026", "2026-11-30"),
        ("2026-02-30", "2026-02-28"), ("2028-02-30", "2028-02-29"), ("2026-04-31", "2026-04-30"), ("2026-13-01", "2026-01-13"),
    ],
)  # fmt: skip
def test_date_slips(text: str, corrected: str) -> None:
    """Other ways to write a date, and days that a month lacks, are answered with the date; month before day as in the US."""
    answer = date_of(text)
    assert isinstance(answer, Unreadable)
    assert (answer.remedy, answer.corrected) == (f"write {corrected}", corrected)
    assert date_of(corrected) == date.fromisoformat(corrected)


@pytest.mark.parametrize("value", ["soon", "", None, 2026])
def test_no_date(value: object) -> None:
    """What holds no date is answered with an example."""
    answer = date_of(value)
    assert isinstance(answer, Unreadable)
    assert answer.remedy.startswith("write year, month and day, as in 2026-11-30")


@settings(max_examples=200, deadline=None)
@given(DAYS)
def test_every_date(day: date) -> None:
    """Every day of the century is read, in its own form and as the US writes it."""
    assert date_of(day.isoformat()) == day
    assert re.search(DATE_PATTERN, day.isoformat())
    answer = date_of(f"{day.month}/{day.day}/{day.year}")
    assert isinstance(answer, Unreadable)
    assert answer.corrected == day.isoformat()


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("2026-11-25 to 2026-11-27, fall break", Closure(date(2026, 11, 25), date(2026, 11, 27), "fall break")),
        ("2026-11-25 – 2026-11-27, fall break", Closure(date(2026, 11, 25), date(2026, 11, 27), "fall break")),
        ("2026-09-07, Labor Day", Closure(date(2026, 9, 7), date(2026, 9, 7), "Labor Day")),
        ("2026-09-07", Closure(date(2026, 9, 7), date(2026, 9, 7))),
        ("2026-09-07 , Day, of rest", Closure(date(2026, 9, 7), date(2026, 9, 7), "Day, of rest")),
    ],
)
def test_date_range(text: str, expected: Closure) -> None:
    """One day or a stretch, with what it is called."""
    assert date_range(text) == expected
    assert re.search(DATE_RANGE_PATTERN, text)


@pytest.mark.parametrize(
    ("text", "corrected"),
    [
        ("2026-11-27 to 2026-11-25, x", "2026-11-25 to 2026-11-27, x"),
        ("11/25/2026 - 11/27/2026 fall break", "2026-11-25 to 2026-11-27, fall break"),
        ("Labor Day, 2026-09-07", "2026-09-07, Labor Day"),
        ("2026-02-30, x", "2026-02-28, x"),
        ("2026-02-27 to 2026-02-30, x", "2026-02-27 to 2026-02-28, x"),
        ("2026-11-25-2026-11-27", "2026-11-25 to 2026-11-27"),
    ],
)
def test_date_range_slips(text: str, corrected: str) -> None:
    """The corrected stretch keeps its words and is read."""
    answer = date_range(text)
    assert isinstance(answer, Unreadable)
    assert (answer.remedy, answer.corrected) == (f"write {corrected}", corrected)
    assert isinstance(date_range(corrected), Closure)


@settings(max_examples=200, deadline=None)
@given(DAYS, st.integers(0, 300), st.text("abc ABC,-", max_size=12).map(lambda t: " ".join(t.split()).strip(" ,")))
def test_every_stretch(first: date, days: int, words: str) -> None:
    """Every stretch is read back with its words."""
    last = min(first + timedelta(days), date(2099, 12, 31))
    text = f"{first} to {last}" + (f", {words}" if words else "")
    assert date_range(text) == Closure(first, last, words)


def test_term() -> None:
    """A term has its name in front, and slips are answered."""
    fall = Term("Fall", date(2026, 8, 24), date(2027, 1, 15))
    assert term("Fall, 2026-08-24 to 2027-01-15") == fall
    assert re.search(TERM_PATTERN, "Fall, 2026-08-24 to 2027-01-15")
    for slip in ("Fall 2026-08-24 to 2027-01-15", "Fall: 8/24/2026 - 1/15/2027", "Fall, 2027-01-15 to 2026-08-24", "Fall"):
        answer = term(slip)
        assert isinstance(answer, Unreadable)
        assert answer.corrected == "Fall, 2026-08-24 to 2027-01-15"
        assert term(answer.corrected) == fall
    assert isinstance(term("Fall, 2026-02-30 to 2027-01-15"), Unreadable)
    assert isinstance(term(None), Unreadable)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("8:05-8:57", (time(8, 5), time(8, 57))),
        ("08:05–08:57", (time(8, 5), time(8, 57))),
        ("8:05 to 8:57", (time(8, 5), time(8, 57))),
        ("11:50 - 12:40", (time(11, 50), time(12, 40))),
        ("13:05-13:57", (time(13, 5), time(13, 57))),
    ],
)
def test_clock(text: str, expected: tuple[time, time]) -> None:
    """Hyphen, en dash or `to`, on the 24-hour clock."""
    assert clock_range(text) == expected
    assert re.search(CLOCK_RANGE_PATTERN, text)


@pytest.mark.parametrize(
    ("text", "corrected"),
    [
        ("12:55-1:43", "12:55-13:43"),
        ("1:05-1:57", "13:05-13:57"),
        ("1:05 pm-1:57 pm", "13:05-13:57"),
        ("8:05 am - 8:57 am", "8:05-8:57"),
        ("11:50 am - 12:40 pm", "11:50-12:40"),
        ("8.05-8.57", "8:05-8:57"),
        ("9:00-8:00", "8:00-9:00"),
    ],
)
def test_clock_slips(text: str, corrected: str) -> None:
    """A period after noon that was written on the 12-hour clock is answered with its 24-hour times."""
    answer = clock_range(text)
    assert isinstance(answer, Unreadable)
    assert (answer.remedy, answer.corrected) == (f"write {corrected}", corrected)
    assert isinstance(clock_range(corrected), tuple)


@pytest.mark.parametrize("value", ["8:05", "8:05-8:05", "24:00-25:00", "8:60-9:70", "", None, 485])
def test_no_clock(value: object) -> None:
    """What holds no two times is answered with an example."""
    answer = clock_range(value)
    assert isinstance(answer, Unreadable)
    assert "8:05-8:57" in answer.remedy


@settings(max_examples=200, deadline=None)
@given(st.integers(360, 1438), st.integers(1, 200))
def test_every_period(start: int, length: int) -> None:
    """Every period between six in the morning and midnight is read."""
    end = min(start + length, 1439)
    text = f"{start // 60}:{start % 60:02d}-{end // 60}:{end % 60:02d}"
    assert clock_range(text) == (time(start // 60, start % 60), time(end // 60, end % 60))


@settings(max_examples=300, deadline=None)
@given(st.one_of(st.text(max_size=60), st.text("0123456789-/:., toapmFeb", max_size=30)))
def test_any_text(text: str) -> None:
    """Any text is read or answered with a remedy, and a corrected one is read."""
    for read in (date_of, date_range, term, clock_range):
        answer = read(text)
        if isinstance(answer, Unreadable):
            assert answer.what
            assert answer.remedy
            assert answer.corrected == "" or not isinstance(read(answer.corrected), Unreadable)
