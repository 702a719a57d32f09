"""Dates, lists and counts as people say them."""

from __future__ import annotations

from datetime import date, timedelta
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.planning.say import say_closed, say_count, say_date, say_dates, say_list, say_money, say_number, say_weekdays

MONDAY = date(2026, 11, 30)


@given(st.dates(date(1900, 1, 1), date(2400, 1, 1)))
def test_dates_say_what_the_calendar_says(day: date) -> None:
    """The weekday and month are those of the calendar, in English whatever the machine's language, the day without a zero in front."""
    weekday, _, rest = say_date(day).partition(", ")
    month, _, number = rest.partition(" ")
    days = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"]
    assert days.index(weekday) == (day - date(1900, 1, 1)).days % 7  # January 1, 1900 was a Monday
    assert (month[:3], number) == ("JanFebMarAprMayJunJulAugSepOctNovDec"[3 * day.month - 3 : 3 * day.month], str(day.day))


@pytest.mark.parametrize(
    ("items", "said"),
    [([], ""), (["a"], "a"), (["a", "b"], "a and b"), (["a", "b", "c"], "a, b and c"), (["a, b", "c"], "a, b and c")],
)
def test_lists(items: list[str], said: str) -> None:
    """The last of a list is joined by `and`, the others by commas; one thing stands alone and nothing says nothing."""
    assert say_list(items) == said


def test_weekdays_are_said_once() -> None:
    """Two classes on one day name it once, in the order given, in full or by three letters."""
    days = [MONDAY, MONDAY, MONDAY + timedelta(2), MONDAY + timedelta(4)]
    assert say_weekdays(days) == "Monday, Wednesday and Friday"
    assert say_weekdays(iter(days), 3) == "Mon, Wed and Fri"
    assert say_weekdays([]) == ""


@pytest.mark.parametrize("count", [0, 1, 3, 4, 5, 9])
def test_no_date_is_lost(count: int) -> None:
    """Up to four dates are all named; past that four stand and the rest is counted, so that named and counted add up."""
    said = say_dates([MONDAY + timedelta(day) for day in range(count)])
    more = int(said.rsplit(" and ")[-1].split()[0]) if "more" in said else 0
    assert said.count("day, ") + more == count
    assert more == max(0, count - 4)


@pytest.mark.parametrize(
    ("amount", "said"),
    [
        ("2.25", "2.25"),
        ("60", "60"),
        ("60.0", "60"),
        ("40000", "40,000"),
        ("1234567.50", "1,234,567.5"),
        ("0.0", "0"),
        ("1E+3", "1,000"),
        ("0.0000001", "0.0000001"),
        ("0.5", "0.5"),
    ],
)
def test_numbers(amount: str, said: str) -> None:
    """No idle zeros, no exponent, thousands apart."""
    assert say_number(Decimal(amount)) == said


@given(st.decimals(min_value=0, max_value=10**9, places=4))
def test_numbers_are_exact(amount: Decimal) -> None:
    """What is said is the amount itself, to the last digit."""
    assert Decimal(say_number(amount).replace(",", "")) == amount


@pytest.mark.parametrize(
    ("amount", "locale", "said"),
    [
        ("0", "en-US", "$0.00"),
        ("1234.5", "es-US", "$1,234.50"),
        ("6.5", "en-CA", "6.50"),
        ("6.5", "en-AU", "6.50"),
        ("0.125", "en-US", "$0.12"),
    ],
)
def test_money(amount: str, locale: str, said: str) -> None:
    """Two decimals, half cents to the even one, and the dollar sign only where the school is in the United States."""
    assert say_money(Decimal(amount), locale) == said


@pytest.mark.parametrize(
    ("count", "said"), [(0, "no days"), (1, "one day"), (2, "two days"), (10, "ten days"), (11, "11 days"), (37, "37 days")]
)
def test_counts(count: int, said: str) -> None:
    """Counts up to ten are words and one is single; from 11 on they are figures."""
    assert say_count(count, "day") == said


@pytest.mark.parametrize(
    ("reason", "said"),
    [
        ("", "no school"),
        ("Labor Day", "no school (Labor Day)"),
        ("No school: burst pipe", "no school (burst pipe)"),
        ("NO SCHOOL", "no school"),
        ("No schooling today", "no school (No schooling today)"),
    ],
)
def test_closed_days_are_said_once(reason: str, said: str) -> None:
    """The words of a calendar that begin with no school stand without them behind ours."""
    assert say_closed(reason) == said
