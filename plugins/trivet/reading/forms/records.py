"""What a class did, and how long it waits between units.

`2026-11-30, round 1`; `2026-12-01, rounds 2 and 3 and write-up, without B`; `2026-12-01, round 2, 11 min`; `2 weeks`.
"""

from __future__ import annotations

import re
from itertools import pairwise

from trivet.model.school import Done, HalfDone
from trivet.reading.forms.dates import DATE, date_of
from trivet.reading.forms.unreadable import LOOSE_NUMBER, Unreadable, as_number, instead, said

_AND = r"\s*(?:,|and|,\s*and)\s*"
_ROUNDS = rf"rounds?\s+([1-9](?:{_AND}[1-9])*)"
_GROUPS = rf"[ABC](?:{_AND}[ABC])?"
DONE_PATTERN = (
    rf"^({DATE})\s*,\s*(?:{_ROUNDS}(?:{_AND}(write-up))?|(write-up))"
    rf"(?:\s*,?\s*without\s+({_GROUPS}))?(?:\s*,\s*([1-9][0-9]?)\s*min)?$"
)
HALF_PATTERN = rf"^({DATE})\s*,\s*round\s+([1-9])\s*,\s*([1-9][0-9]?)\s*min$"

GAP_DAYS_MOST = 300
GAP_PATTERN = r"^([0-9]{1,3})\s+(days?|weeks?)$"

_DONE_EXAMPLE = "2026-11-30, round 1"
_HALF_EXAMPLE = "2026-12-01, round 2, 11 min"


def done(value: object) -> Done | Unreadable:
    """Read what was done on a date: whole rounds, the write-up, who missed it, and the minutes where they differ from the plan."""
    text = said(value)
    found = re.fullmatch(DONE_PATTERN[1:-1], text)
    if found is None:
        return _nobody(text) or _slip(text, "what was done can't be read", _DONE_EXAMPLE)
    day = date_of(found[1])
    if isinstance(day, Unreadable):
        return instead(day.what, text.replace(found[1], day.corrected))
    rounds = tuple(int(number) for number in re.findall(r"[1-9]", found[2] or ""))
    without = tuple(sorted(set(re.findall(r"[ABC]", found[5] or ""))))
    if any(after != before + 1 for before, after in pairwise(rounds)):
        remedy = f"write - {found[1]}, round {rounds[0]} for that day, and each other round on its own date"
        return Unreadable(f"rounds of one day follow each other: {text}", remedy)
    return Done(
        date=day,
        rounds=rounds,
        write_up=bool(found[3] or found[4]),
        without=without,
        minutes=int(found[6]) if found[6] else None,
    )


def _nobody(text: str) -> Unreadable | None:
    """What is wrong with the groups that missed a round: all three, or one that there is not."""
    found = re.search(r"\bwithout\s+(.*)$", text, re.IGNORECASE)
    letters = set(re.findall(r"\b[A-Za-z]\b", found[1])) if found else set()
    day = re.search(DATE, text)
    if letters == {"A", "B", "C"}:
        return Unreadable(
            f"a round without all three groups was not held: {text}", f"write - {day[0] if day else '2026-11-30'} under `lost`"
        )
    if letters - {"A", "B", "C"}:
        return Unreadable(f"station groups are called A, B and C: {text}", "write the groups that missed the round, such as without B")
    return None


def half_done(value: object) -> HalfDone | Unreadable:
    """Read on which date a round was stopped, and after how many minutes at the stations."""
    text = said(value)
    found = re.fullmatch(HALF_PATTERN[1:-1], text)
    if found is None:
        return _slip(text, "which round was stopped can't be read", _HALF_EXAMPLE)
    day = date_of(found[1])
    if isinstance(day, Unreadable):
        return instead(day.what, text.replace(found[1], day.corrected))
    return HalfDone(day, int(found[2]), int(found[3]))


def gap(value: object) -> int | Unreadable:
    """Read the days between the last day of one unit and the first of the next: `2 weeks`, `10 days`."""
    text = said(value)
    found = re.fullmatch(GAP_PATTERN[1:-1], text)
    if found is None:
        loose = re.search(rf"({LOOSE_NUMBER})?\s*(d|w)?", text, re.IGNORECASE)
        number = as_number(loose[1]) if loose and loose[1] else 2
        unit = "day" if loose and (loose[2] or "").lower() == "d" else "week"
        count = int(number)
        return instead(f"this gap can't be read: {text}" if text else "the gap is missing", f"{count} {unit}{'' if count == 1 else 's'}")
    days = int(found[1]) * (7 if found[2].startswith("week") else 1)
    if days > GAP_DAYS_MOST:
        return Unreadable(f"a gap of {days} days is longer than a school year", "write fewer weeks, or `starts:` with a date")
    return days


def _slip(text: str, what: str, example: str) -> Unreadable:
    """Answer with the example, on the date that was written where there is one."""
    day = re.search(DATE, text)
    corrected = example.replace(example[:10], day[0]) if day else example
    return Unreadable(f"{what}: {text}" if text else "nothing is written here", f"write - {corrected}", "")
