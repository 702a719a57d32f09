"""A rule by which an event repeats (RRULE, RFC 5545 3.3.10)."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from trivet.reading.forms import Unreadable

FREQUENCIES = ("SECONDLY", "MINUTELY", "HOURLY", "DAILY", "WEEKLY", "MONTHLY", "YEARLY")
WEEKDAYS = ("MO", "TU", "WE", "TH", "FR", "SA", "SU")
"""In the order of `date.weekday`."""

_RANGES = {
    "BYSECOND": (0, 60),
    "BYMINUTE": (0, 59),
    "BYHOUR": (0, 23),
    "BYMONTHDAY": (-31, 31),
    "BYYEARDAY": (-366, 366),
    "BYWEEKNO": (-53, 53),
    "BYMONTH": (1, 12),
    "BYSETPOS": (-366, 366),
}
_NOT_ZERO = ("BYMONTHDAY", "BYYEARDAY", "BYWEEKNO", "BYSETPOS")
_BY_DAY = re.compile(r"([+-]?[0-9]{1,2})?(MO|TU|WE|TH|FR|SA|SU)")
_MOST = 100_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """A rule as written. `by_day` holds (nth, weekday), nth 0 for every one; `until` is still the text of a date or of a time."""

    frequency: str
    interval: int = 1
    count: int | None = None
    until: str = ""
    by_month: tuple[int, ...] = ()
    by_week_number: tuple[int, ...] = ()
    by_year_day: tuple[int, ...] = ()
    by_month_day: tuple[int, ...] = ()
    by_day: tuple[tuple[int, int], ...] = ()
    by_hour: tuple[int, ...] = ()
    by_minute: tuple[int, ...] = ()
    by_second: tuple[int, ...] = ()
    by_position: tuple[int, ...] = ()
    week_start: int = 0


_FIELDS = {
    "BYMONTH": "by_month",
    "BYWEEKNO": "by_week_number",
    "BYYEARDAY": "by_year_day",
    "BYMONTHDAY": "by_month_day",
    "BYHOUR": "by_hour",
    "BYMINUTE": "by_minute",
    "BYSECOND": "by_second",
    "BYSETPOS": "by_position",
}


def _frequency(value: str) -> str | None:
    return value if value in FREQUENCIES else None


def _count(value: str) -> int | None:
    return int(value) if re.fullmatch(r"[0-9]{1,6}", value) and 0 < int(value) <= _MOST else None


def _week_start(value: str) -> int | None:
    return WEEKDAYS.index(value) if value in WEEKDAYS else None


def _by_day(value: str) -> tuple[tuple[int, int], ...] | None:
    days = [_BY_DAY.fullmatch(each.strip()) for each in value.split(",")]
    return tuple((int(day[1] or 0), WEEKDAYS.index(day[2])) for day in days if day) if all(days) else None


def _numbers(key: str) -> Callable[[str], tuple[int, ...] | None]:
    low, high = _RANGES[key]

    def read(value: str) -> tuple[int, ...] | None:
        found = []
        for each in value.split(","):
            number = int(each) if re.fullmatch(r"[+-]?[0-9]{1,3}", each.strip()) else high + 1
            if not low <= number <= high or (number == 0 and key in _NOT_ZERO):
                return None
            found.append(number)
        return tuple(sorted(set(found)))

    return read


_READERS: dict[str, tuple[str, Callable[[str], Any]]] = {
    "FREQ": ("frequency", _frequency),
    "INTERVAL": ("interval", _count),
    "COUNT": ("count", _count),
    "UNTIL": ("until", str),
    "WKST": ("week_start", _week_start),
    "BYDAY": ("by_day", _by_day),
    **{key: (field, _numbers(key)) for key, field in _FIELDS.items()},
}


def read_rule(text: str) -> Rule | Unreadable:
    """Read the value of an RRULE line; parts that other programs add (X-…) say nothing here."""
    found: dict[str, Any] = {}
    for part in text.strip().rstrip(";").split(";"):
        key, _, value = part.upper().partition("=")
        if key.startswith("X-"):
            continue
        field, read = _READERS.get(key, ("", _unknown))
        said = read(value.strip()) if value and field not in found else None
        if said is None:
            return _unreadable(part or text)
        found[field] = said
    if "frequency" not in found:
        return _unreadable(text)
    rule = Rule(**found)
    return _unreadable(text) if _contradicts(rule) else rule


def _unknown(_: str) -> None:
    return None


def _contradicts(rule: Rule) -> bool:
    """Say whether parts stand together that the standard keeps apart, and of which nobody could say what they mean."""
    return (
        (any(nth for nth, _ in rule.by_day) and (rule.frequency not in ("MONTHLY", "YEARLY") or bool(rule.by_week_number)))
        or (bool(rule.by_week_number) and rule.frequency != "YEARLY")
        or (bool(rule.by_position) and rule.frequency in ("SECONDLY", "MINUTELY", "HOURLY"))
        or (bool(rule.by_month_day) and rule.frequency == "WEEKLY")
        or (bool(rule.by_year_day) and rule.frequency in ("DAILY", "WEEKLY", "MONTHLY"))
    )


def _unreadable(part: str) -> Unreadable:
    return Unreadable(f"how this event repeats can't be read: {part[:60]}", "write its dates under `closures` or `days`")
