"""Durations: `2 min`, `20-30 min`, `30 s`."""

from __future__ import annotations

import re
from decimal import Decimal

from trivet.model.unit import ROUND_LEAST, ROUND_MOST
from trivet.reading.forms.unreadable import DASH, LOOSE_NUMBER, Unreadable, as_number, instead, plain, said, up

HALVES = r"0\.5|[1-9](?:\.[05])?|[1-5][0-9](?:\.[05])?|60(?:\.0)?"
"""Minutes from 0.5 to 60 in halves."""

MINUTE_WORD = r"(?:min|mins|minute|minutes)"
MINUTES_PATTERN = rf"^({HALVES})\s+{MINUTE_WORD}$"
SECONDS_PATTERN = r"^([1-9][0-9]{0,3})\s+(?:s|sec|second|seconds)$"
ROUND_PATTERN = rf"^([1-9][0-9]{{0,2}})(?:\s*{DASH}\s*([1-9][0-9]{{0,2}}))?(?:\s+{MINUTE_WORD})?$"

SECONDS_MOST = 3600

_LOOSE = re.compile(
    rf"(?<![\w.])(?:(?P<clock>\d{{1,2}}:\d\d)|(?:{LOOSE_NUMBER}\s*(?:{DASH}|to|or)\s*)?(?P<number>{LOOSE_NUMBER}))\s*"
    r"(?P<unit>hours?|hrs?|h|minutes?|mins?|m|seconds?|secs?|s|['’′])?\.?(?![\w])",
    re.IGNORECASE,
)


def minutes(value: object) -> float | Unreadable:
    """Read minutes, a multiple of 0.5 from 0.5 to 60: `2 min`."""
    text = said(value)
    found = re.fullmatch(MINUTES_PATTERN[1:-1], text)
    if found:
        return float(found[1])
    loose = loose_minutes(text)
    if loose is None:
        return Unreadable(f"these minutes can't be read: {text}" if text else "minutes are missing here", "write 2 min", "2 min")
    if loose > 60:
        return Unreadable(f"{text} is longer than 60 min", "write 60 min or less", "60 min")
    return instead(f"these minutes can't be read: {text}", f"{plain(loose)} min")


def loose_minutes(text: str) -> Decimal | None:
    """Return the minutes that `text` probably means, rounded up to halves and at least 0.5, or None."""
    found = _LOOSE.search(text)
    if found is None:
        return None
    if found["clock"]:
        whole, seconds = found["clock"].split(":")
        number = Decimal(whole) + Decimal(seconds) / 60
    else:
        number = as_number(found["number"])
        unit = (found["unit"] or "m").lower()
        number = number * 60 if unit.startswith("h") else number / 60 if unit.startswith("s") else number
    return max(up(number, "0.5"), Decimal("0.5"))


def seconds(value: object) -> int | Unreadable:
    """Read seconds, from 1 to 3600: `30 s`."""
    text = said(value)
    found = re.fullmatch(SECONDS_PATTERN[1:-1], text)
    if found and int(found[1]) <= SECONDS_MOST:
        return int(found[1])
    loose = _LOOSE.search(text)
    if loose is None or loose["clock"]:
        return Unreadable(f"these seconds can't be read: {text}" if text else "seconds are missing here", "write 30 s", "30 s")
    unit = (loose["unit"] or "s").lower()
    number = as_number(loose["number"]) * (1 if unit.startswith("s") else 3600 if unit.startswith("h") else 60)
    count = min(max(int(up(number)), 1), SECONDS_MOST)
    return instead(f"these seconds can't be read: {text}", f"{count} s")


def round_bounds(value: object) -> tuple[int, int] | Unreadable:
    """Read the shortest and the longest round in minutes: `20-30 min`, or `25` for both."""
    text = said(value)
    found = re.fullmatch(ROUND_PATTERN[1:-1], text)
    typed = [int(each) for each in (found[1], found[2] or found[1])] if found else [int(each) for each in re.findall(r"\d{1,3}", text)]
    if not typed:
        return instead(f"the minutes of a round can't be read: {text}" if text else "the minutes of a round are missing", "20-30 min")
    low, high = sorted(min(max(each, ROUND_LEAST), ROUND_MOST) for each in (typed[0], typed[min(1, len(typed) - 1)]))
    if found and typed == [low, high]:
        return low, high
    if not found:
        what = f"the minutes of a round can't be read: {text}"
    elif typed[0] > typed[1]:
        what = f"the shortest round comes first: {text}"
    else:
        what = f"a round has from {ROUND_LEAST} to {ROUND_MOST} minutes: {text}"
    return instead(what, _bounds(low, high))


def _bounds(low: int, high: int) -> str:
    return f"{low} min" if low == high else f"{low}-{high} min"
