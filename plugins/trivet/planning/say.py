"""Dates, lists and counts as people say them."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from datetime import date
from decimal import Decimal

from trivet.model.station import Kind

STATION_NAMES = {Kind.ONLINE: "online", Kind.HANDS_ON: "hands-on", Kind.TEACHER_LED: "teacher-led"}

_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip
_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


def say_date(day: date) -> str:
    """Return a date such as Monday, November 30."""
    return f"{_DAYS[day.weekday()]}, {_MONTHS[day.month - 1]} {day.day}"


def say_weekdays(days: Iterable[date], letters: int | None = None) -> str:
    """Return days of one week by name, each once: Tuesday and Wednesday, or Tue and Wed with three letters."""
    return say_list(list(dict.fromkeys(_DAYS[day.weekday()][:letters] for day in days)))


def say_list(items: Sequence[str]) -> str:
    """Return "a", "a and b", "a, b and c"."""
    return " and ".join((", ".join(items[:-1]), items[-1])) if len(items) > 1 else "".join(items)


def say_dates(days: Sequence[date], most: int = 4) -> str:
    """Return dates as a list; past `most`, how many more there are."""
    named = [say_date(day) for day in days[:most]]
    return say_list([*named, f"{len(days) - most} more"] if len(days) > most else named)


def say_closed(reason: str) -> str:
    """Return why no school is held, without saying so twice where a calendar's own words begin so."""
    own = re.sub(r"^no school\b[\s:,;–—-]*", "", reason, flags=re.IGNORECASE)
    return f"no school ({own})" if own else "no school"


def say_number(amount: Decimal) -> str:
    """Return an amount without idle zeros and without an exponent: 2.25, 60, 40,000."""
    return f"{amount.normalize():,f}"


def say_money(amount: Decimal, locale: str) -> str:
    """Return a sum of money with two decimals; the sign of the dollar where the school writes US English."""
    return f"{'$' if locale.endswith('US') else ''}{amount:,.2f}"


def say_gap(days: int) -> str:
    """Return a gap between two units: 2 weeks, 10 days, "" for none."""
    count, unit = (days // 7, "week") if days % 7 == 0 else (days, "day")
    return f"{count} {unit}{'' if count == 1 else 's'}" if days else ""


def say_count(count: int, thing: str) -> str:
    """Return a count in words up to ten, with a plain plural: one day, four days, 12 days."""
    number = _NUMBERS[count] if count < len(_NUMBERS) else str(count)
    return f"{number} {thing}" if count == 1 else f"{number} {thing}s"
