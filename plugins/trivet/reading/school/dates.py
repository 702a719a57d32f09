"""Dates as school files write them: `2026-08-24`, and stretches such as `2026-11-25 to 2026-11-27, fall break`."""

from __future__ import annotations

import re
from datetime import date

from trivet.model.problem import Problem
from trivet.reading.school.sheet import Sheet

DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")


def read_date(sheet: Sheet, path: tuple[str | int, ...], text: str, problems: list[Problem], *, at_key: bool = False) -> date | None:
    """Return the date, or None and add a problem where the calendar has no such day."""
    found = a_date(text)
    if found is None:
        problems.append(sheet.error("no-such-date", path, *no_such_date(text), at_key=at_key))
    return found


def a_date(text: str) -> date | None:
    """Return the date that `2026-08-24` names, None where the calendar has no such day."""
    year, month, day = (int(part) for part in text.split("-"))
    try:
        return date(year, month, day)
    except ValueError:
        return None


def no_such_date(text: str) -> tuple[str, str]:
    """Say what is wrong with a date that does not exist, and what to do."""
    year, month, _ = (int(part) for part in text.split("-"))
    if year < 1:
        return f"there is no {text}", "write a year such as 2026"
    if not 1 <= month <= 12:
        return f"there is no {text}", "write the month as 01 to 12: year-month-day"
    from calendar import monthrange  # noqa: PLC0415 - only a date that does not exist asks for it

    _, days = monthrange(year, month)
    return f"there is no {text}", f"write a day from 01 to {days}: that month has {days} days"


def dates_in(text: str) -> tuple[str, str, str]:
    """Split `2026-11-25 to 2026-11-27, fall break` into first date, last date and the rest; one date counts as both."""
    found = DATE.findall(text)
    rest = text[text.rindex(found[-1]) + 10 :].lstrip(" ,")
    return found[0], found[-1], rest.strip()
