from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.reading.school.dates import a_date, dates_in, no_such_date


@given(st.dates())
def test_every_date_of_the_calendar_is_read(day: date) -> None:
    """A date in ISO 8601 form is that date."""
    assert a_date(day.isoformat()) == day


@pytest.mark.parametrize("text", ["2026-02-30", "2027-02-29", "2026-13-01", "2026-00-10", "2026-04-31", "0000-01-01"])
def test_a_date_that_does_not_exist_is_none(text: str) -> None:
    """There is no 30 February, no 29 February outside leap years and no month 13."""
    assert a_date(text) is None
    assert no_such_date(text)[0] == f"there is no {text}"


def test_the_remedy_names_the_last_day_of_the_month() -> None:
    """A day too many is answered with how many there are."""
    assert no_such_date("2026-02-30")[1] == "write a day from 01 to 28: that month has 28 days"
    assert "01 to 12" in no_such_date("2026-30-02")[1]


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("2026-09-07, Labor Day", ("2026-09-07", "2026-09-07", "Labor Day")),
        ("2026-11-25 to 2026-11-27, fall break", ("2026-11-25", "2026-11-27", "fall break")),
        ("2026-11-25 – 2026-11-27", ("2026-11-25", "2026-11-27", "")),
        ("2026-12-21 to 2027-01-01, winter break, both weeks", ("2026-12-21", "2027-01-01", "winter break, both weeks")),
    ],
)
def test_a_closure_is_one_date_or_two_and_a_reason(text: str, parts: tuple[str, str, str]) -> None:
    """One date counts as first and last; what follows the comma is the reason."""
    assert dates_in(text) == parts
