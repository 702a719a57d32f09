"""On which dates a rule falls: odd cases of the standard, and another implementation on rules made at random.

The standard's own examples stand in `test_standard_examples`.
"""

from __future__ import annotations

import calendar
import time as stopwatch
from datetime import date, datetime, timedelta

import pytest
from dateutil.rrule import rrulestr
from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.reading.calendars.repeats import MOST_STEPS, Budget, repeats, week_number
from trivet.reading.calendars.rules import Rule, read_rule

NINE = datetime(1997, 9, 2, 9)
"""The first time of most examples in RFC 5545 3.8.5.3."""
LAST = datetime(2009, 12, 31, 23, 59)


def rule_of(text: str) -> Rule:
    rule = read_rule(text)
    assert isinstance(rule, Rule), rule
    return rule


def listed(text: str, year: int = 1997) -> list[str]:
    """Read "Sep 2,12; Oct 2" as dates; a number of four digits begins a year."""
    found, month = [], 0
    months = {name: number for number, name in enumerate(calendar.month_abbr) if name}
    for word in text.replace(",", " ").replace(";", " ").split():
        if word in months:
            month = months[word]
        elif len(word) == 4:
            year = int(word)
        else:
            found.append(f"{year}-{month:02d}-{int(word):02d}")
    return found


def test_friday_the_thirteenth() -> None:
    """Every Friday the 13th from 1997-09-02, which is none itself and counted only as the first date (RFC 5545 3.8.5.3)."""
    found = repeats(NINE, rule_of("FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13"), datetime(2000, 12, 31))
    assert [f"{at:%Y-%m-%d}" for at in found.times] == ["1997-09-02", *listed("1998 Feb 13; Mar 13; Nov 13; 1999 Aug 13; 2000 Oct 13")]
    assert not found.in_step


def test_the_inconsistent_example() -> None:
    """Every three hours until 17:00 UTC, which is 13:00 in New York, is 9:00 and 12:00; the standard lists 15:00 too (RFC 5545 p. 131)."""
    rule = rule_of("FREQ=HOURLY;INTERVAL=3;UNTIL=19970902T170000Z")
    assert [at.hour for at in repeats(NINE, rule, LAST, until=datetime(1997, 9, 2, 13)).times] == [9, 12]
    assert [at.hour for at in repeats(NINE, rule, LAST, until=datetime(1997, 9, 2, 17)).times] == [9, 12, 15]


def test_iso_weeks() -> None:
    """Week numbers are those of ISO 8601 where weeks begin on Monday, for every day of forty years (`date.isocalendar`)."""
    for offset in range(40 * 365):
        day = date(1998, 1, 1) + timedelta(days=offset)
        assert week_number(day, 0)[0] == day.isocalendar().week


NUMBERS = {
    "BYMONTH": st.integers(1, 12),
    "BYMONTHDAY": st.integers(-28, 28).filter(bool),
    "BYYEARDAY": st.integers(-366, 366).filter(bool),
}
WEEKDAYS = st.sampled_from(("MO", "TU", "WE", "TH", "FR", "SA", "SU"))
DAY_PARTS = {
    "DAILY": ((), ("BYMONTH",), ("BYMONTHDAY",), ("BYMONTH", "BYMONTHDAY")),
    "WEEKLY": ((), ("BYMONTH",)),
    "MONTHLY": ((), ("BYMONTHDAY",)),
    "YEARLY": ((), ("BYMONTH",), ("BYMONTHDAY",), ("BYYEARDAY",), ("BYMONTH", "BYMONTHDAY"), ("BYWEEKNO",)),
}


@st.composite
def rules(draw: st.DrawFn) -> str:
    """A rule as the standard allows it, and whose days do come: the other program looks for them until the year 9999."""
    frequency = draw(st.sampled_from(tuple(DAY_PARTS)))
    chosen = draw(st.sampled_from(DAY_PARTS[frequency]))
    parts = [f"FREQ={frequency}", f"INTERVAL={draw(st.integers(1, 5))}"]
    for key in chosen:
        numbers = draw(st.sets(NUMBERS[key], min_size=1, max_size=3)) if key in NUMBERS else {draw(st.integers(1, 51))}
        parts.append(f"{key}={','.join(map(str, sorted(numbers)))}")
    weeks = "BYWEEKNO" in chosen  # programs differ about a week without a weekday
    if weeks or draw(st.booleans()):
        counts = frequency in ("MONTHLY", "YEARLY") and not {"BYMONTHDAY", "BYYEARDAY", "BYWEEKNO"} & set(chosen)
        # All counted or none: the other program takes 1MO,TU for what is both.
        nth = st.sampled_from(("1", "2", "-1", "-2")) if counts and draw(st.booleans()) else st.just("")
        parts.append(f"BYDAY={','.join(sorted(draw(st.sets(st.builds(str.__add__, nth, WEEKDAYS), min_size=1, max_size=3))))}")
        if draw(st.booleans()):
            parts.append(f"BYSETPOS={draw(st.sampled_from((1, -1)))}")
    if draw(st.booleans()):
        parts += [f"BYHOUR={draw(st.integers(0, 11))},{draw(st.integers(12, 23))}", f"BYMINUTE={draw(st.integers(0, 59))}"]
    if draw(st.booleans()):
        parts.append(f"WKST={draw(st.sampled_from(('MO', 'SU', 'WE')))}")
    if draw(st.booleans()):
        parts.append(f"COUNT={draw(st.integers(1, 30))}")
    return ";".join(parts)


@settings(max_examples=200, deadline=None)
@given(text=rules(), first=st.datetimes(datetime(1999, 1, 1), datetime(2008, 12, 31)).map(lambda at: at.replace(microsecond=0, fold=0)))
def test_another_implementation_finds_the_same(text: str, first: datetime) -> None:
    """Where the first time is one of the rule's own, the dates are those that the dateutil package finds."""
    last = first + timedelta(days=1500)
    theirs: list[datetime] = []
    for at in rrulestr(text, dtstart=first):
        if at > last or len(theirs) == 200:
            break
        theirs.append(at)
    ours = repeats(first, rule_of(text), last)
    assert ours.in_step == (first in theirs)
    if ours.in_step:
        assert list(ours.times)[:200] == theirs
    elif "COUNT" not in text:
        assert list(ours.times)[1:201] == theirs


@settings(max_examples=80, deadline=None)
@given(text=rules(), years=st.integers(1, 30))
def test_leaving_out_the_past_changes_nothing_later(text: str, years: int) -> None:
    """Looking only at what lies after a date finds the same times after it."""
    since = date(1999 + years, 8, 20)
    last = datetime(2000 + years, 6, 10)
    whole, late = (repeats(datetime(1999, 1, 5, 8), rule_of(text), last, since=day) for day in (None, since))
    cut = datetime(since.year, since.month, since.day)
    after = [at for at in whole.times if at >= cut]
    assert [at for at in late.times if at >= cut][: len(after) if not whole.whole else None] == after


@pytest.mark.parametrize(
    "text",
    ["FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30", "FREQ=SECONDLY;BYMONTH=2;BYMONTHDAY=30", "FREQ=SECONDLY", "FREQ=YEARLY;BYYEARDAY=366;BYMONTH=1"],
)
def test_a_rule_without_end_or_days_ends(text: str) -> None:
    """A rule whose days never come, or which never ends, is left after a bounded number of steps."""
    began = stopwatch.perf_counter()
    found = repeats(datetime(2026, 8, 24), rule_of(text), datetime(2027, 6, 4))
    assert len(found.times) <= 4000
    assert found.whole == ("SECONDLY" not in text)
    assert stopwatch.perf_counter() - began < 2


def test_rules_of_one_file_share_their_steps() -> None:
    """Once the steps of a file are used up, a rule gives its first time alone and says that it was cut off."""
    budget = Budget(MOST_STEPS + 10)
    endless = rule_of("FREQ=SECONDLY;BYMONTH=2")
    assert not repeats(NINE, endless, LAST, budget=budget).whole
    after = repeats(NINE, rule_of("FREQ=DAILY"), LAST, budget=budget)
    assert not after.whole and len(after.times) <= 11
