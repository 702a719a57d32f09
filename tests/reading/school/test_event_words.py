"""What the words of an event in a calendar say about a school day."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from tests.support.department import tiny_bells, tiny_calendar
from trivet.reading.calendars.events import Event, Moment
from trivet.reading.school.event_words import CLOSED_WHEN, EventWords

WORDS = EventWords(CLOSED_WHEN, tiny_bells(52, early_release=40, assembly=45), tiny_calendar(rotation=("A", "B")))
DAY = Event(
    line=1,
    rule_line=1,
    summary="",
    categories=(),
    uid="u",
    start=Moment(datetime(2026, 11, 30), all_day=True),
    length=timedelta(days=1),
)
HOUR = replace(DAY, start=Moment(datetime(2026, 11, 30, 9), all_day=False), length=timedelta(hours=1))


@pytest.mark.parametrize(
    ("summary", "closed"),
    [("No School", True), ("Winter  Break", True), ("winter break", True), ("Breakfast", False), ("Holidays", False), ("Holiday!", True)],
)
def test_only_whole_words_close(summary: str, closed: bool) -> None:
    """A word for closures closes in any capitals and beside other words, never as a part of another word."""
    assert WORDS.closes(replace(DAY, summary=summary)) is closed


def test_only_whole_days_close() -> None:
    """An hour that is called a break closes nothing; a category closes as the summary does."""
    assert not WORDS.closes(replace(HOUR, summary="Spring break camp"))
    assert WORDS.closes(replace(DAY, summary="Staff day", categories=("no school",)))


@pytest.mark.parametrize(
    ("summary", "day_type"),
    [
        ("Early release", "early_release"),
        ("early-release day", "early_release"),
        ("Assembly: band", "assembly"),
        ("Assembly schedule", "assembly"),
        ("Parents' assembly in the gym", ""),
        ("Regular", "regular"),
        ("Irregular", ""),
    ],
)
def test_a_day_type_is_meant_where_the_event_is_called_after_it(summary: str, day_type: str) -> None:
    """The name at the beginning, or with `day`, `schedule` or `bells` behind it, means the day type; a mention of it does not."""
    assert WORDS.day_type(summary) == day_type


@pytest.mark.parametrize(
    ("summary", "letter"), [("A day", "A"), ("Day b", "B"), ("B-Day: picture day", "B"), ("A", ""), ("C day", ""), ("A day off", "")]
)
def test_rotation_days(summary: str, letter: str) -> None:
    """A day, Day A and A-day before any colon are the rotation day; other letters and longer names are not."""
    assert WORDS.letter(summary) == letter


def test_what_has_nothing_to_say_does_not_concern() -> None:
    """Of events without such words only one that replaces another concerns school days."""
    assert not WORDS.concern(replace(DAY, summary="Picture day"))
    assert WORDS.concern(replace(DAY, summary="Picture day", replaces=DAY.start))
