"""Rules as text: what can be read, and what is answered in plain words."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.reading.calendars.rules import Rule, read_rule
from trivet.reading.forms import Unreadable


def test_a_rule_with_everything() -> None:
    """Every part of a rule has its field; small letters, a last semicolon and parts of other programs are borne."""
    read = read_rule("freq=yearly;interval=2;count=3;bymonth=3,1;bymonthday=-1,15;byday=1MO,-2TU,FR;bysetpos=-1;wkst=su;X-ODD=1;")
    assert read == Rule(
        frequency="YEARLY",
        interval=2,
        count=3,
        by_month=(1, 3),
        by_month_day=(-1, 15),
        by_day=((1, 0), (-2, 1), (0, 4)),
        by_position=(-1,),
        week_start=6,
    )


@pytest.mark.parametrize(
    "text",
    [
        "", "FREQ", "FREQ=", "FREQ=FORTNIGHTLY", "INTERVAL=2", "FREQ=DAILY;FREQ=DAILY", "FREQ=DAILY;INTERVAL=0", "FREQ=DAILY;COUNT=-1",
        "FREQ=DAILY;COUNT=9999999", "FREQ=DAILY;BYMONTH=13", "FREQ=DAILY;BYMONTHDAY=0", "FREQ=DAILY;BYDAY=XX", "FREQ=WEEKLY;BYDAY=1MO",
        "FREQ=MONTHLY;BYWEEKNO=2", "FREQ=HOURLY;BYSETPOS=1", "FREQ=DAILY;BYEASTER=1", "FREQ=DAILY;BYMONTH=1,,2", "FREQ=DAILY;WKST=1",
    ],
)  # fmt: skip
def test_what_is_no_rule(text: str) -> None:
    """A part that is unknown, doubled, out of range or out of place is answered with what to write instead."""
    read = read_rule(text)
    assert isinstance(read, Unreadable)
    assert read.what.startswith("how this event repeats can't be read: ") and "write" in read.remedy


@given(st.text(max_size=60))
def test_any_text(text: str) -> None:
    """No text raises anything."""
    assert isinstance(read_rule(text), Rule | Unreadable)
