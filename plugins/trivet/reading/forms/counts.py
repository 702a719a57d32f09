"""Grades, class numbers and short lists: `6-8`, `1-9, 11-32`, `32 from 2026-10-05`, `glass, spill`."""

from __future__ import annotations

import re
from datetime import date
from itertools import pairwise

from trivet.model.school import LateSeat
from trivet.reading.forms.dates import DATE, date_of
from trivet.reading.forms.unreadable import DASH, Unreadable, instead, said

_GRADE = r"[1-9]|1[0-2]"
_SEAT = r"[1-9][0-9]?"
_SPAN = rf"{_SEAT}(?:\s*(?:{DASH}|to)\s*{_SEAT})?"
GRADES_PATTERN = rf"^({_GRADE})(?:\s*{DASH}\s*({_GRADE}))?$"
NUMBERS_PATTERN = rf"^{_SPAN}(?:\s*,\s*{_SPAN})*$"
LATE_PATTERN = rf"^{_SEAT}\s+from\s+{DATE}(?:\s*,\s*{_SEAT}\s+from\s+{DATE})*$"


def grades(value: object) -> tuple[int, int] | Unreadable:
    """Read the lowest and the highest grade, from 1 to 12: `6-8`, or `7` for both."""
    text = said(value)
    found = re.fullmatch(GRADES_PATTERN[1:-1], text)
    if found and int(found[1]) <= int(found[2] or found[1]):
        return int(found[1]), int(found[2] or found[1])
    numbers = sorted(int(each) for each in re.findall(r"\d{1,3}", text) if 1 <= int(each) <= 12)
    what = f"these grades can't be read: {text}" if text else "the grades are missing"
    if not numbers:
        return Unreadable(what, "write 6-8, or 7 for one grade")
    return instead(what, str(numbers[0]) if numbers[0] == numbers[-1] else f"{numbers[0]}-{numbers[-1]}")


def numbers(value: object) -> tuple[int, ...] | Unreadable:
    """Read class numbers from 1 to 99, in ascending order: `1-9, 11-32`."""
    text = said(value) if not isinstance(value, list) else ", ".join(said(each) for each in value)
    if re.fullmatch(NUMBERS_PATTERN[1:-1], text):
        seats = [seat for part in text.split(",") for seat in _span(part)]
        twice = sorted({seat for seat in seats if seats.count(seat) > 1})
        if twice:
            return instead(f"{_and(twice)} {'is' if len(twice) == 1 else 'are'} named twice", write_numbers(seats))
        backward = next((part.strip() for part in text.split(",") if not _span(part)), "")
        if backward:
            ends = sorted(int(each) for each in re.findall(r"\d+", backward))
            return instead(f"{backward} runs backward", write_numbers([*seats, *range(ends[0], ends[-1] + 1)]))
        return tuple(sorted(seats))
    what = f"these class numbers can't be read: {text}" if text else "the class numbers are missing"
    seats = []
    for found in re.finditer(rf"(\d{{1,4}})(?:\s*(?:{DASH}|to|\.\.+|through|thru)\s*(\d{{1,4}}))?", text):
        low, high = sorted((int(found[1]), int(found[2] or found[1])))
        if low > 99:
            what = "class numbers go from 1 to 99"
        seats += range(max(low, 1), min(high, 99) + 1)
    return instead(what, write_numbers(seats)) if seats else Unreadable(what, "write 1-31, or 1-9, 11-32")


def write_numbers(seats: list[int] | tuple[int, ...]) -> str:
    """Write class numbers as `numbers` reads them, in stretches."""
    stretches: list[list[int]] = []
    for seat in sorted(set(seats)):
        if stretches and stretches[-1][-1] == seat - 1:
            stretches[-1].append(seat)
        else:
            stretches.append([seat])
    return ", ".join(str(each[0]) if len(each) == 1 else f"{each[0]}-{each[-1]}" for each in stretches)


def late(value: object) -> tuple[LateSeat, ...] | Unreadable:
    """Read the class numbers that join on a date, in ascending order: `32 from 2026-10-05`, several with commas."""
    text = said(value) if not isinstance(value, list) else ", ".join(said(each) for each in value)
    if re.fullmatch(LATE_PATTERN[1:-1], text):
        seats: list[LateSeat] = []
        for part in text.split(","):
            seat, _, day = part.partition(" from ")
            first = date_of(day)
            if isinstance(first, Unreadable):
                return Unreadable(first.what, f"write {seat.strip()} from {first.corrected}", f"{seat.strip()} from {first.corrected}")
            seats.append(LateSeat(int(seat), first))
        seats.sort(key=lambda each: each.seat)
        twice = next((each.seat for each, after in pairwise(seats) if each.seat == after.seat), None)
        if twice is not None:
            return Unreadable(f"{twice} joins twice", "leave one of the two out")
        return tuple(seats)
    found = re.match(r"\D*(\d{1,2})\b\D{1,20}?(?=\S*\d)(.+)", text)
    joins = date_of(found[2]) if found else None
    iso = joins.isoformat() if isinstance(joins, date) else joins.corrected if joins else ""
    what = f"who joins late can't be read: {text}" if text else "who joins late is missing"
    if found and iso:
        return instead(what, f"{int(found[1])} from {iso}")
    return Unreadable(what, "write 32 from 2026-10-05")


def listed(value: object) -> tuple[str, ...] | Unreadable:
    """Read a list of short things, with commas in one line or one a line; nothing is an empty list."""
    if value is None:
        return ()
    items = [said(each) for each in value] if isinstance(value, list) else [each.strip() for each in said(value).split(",")]
    if isinstance(value, dict) or (isinstance(value, list) and any(isinstance(each, dict | list) for each in value)):
        remedy = "write the texts with commas between them, or one a line after a dash"
        return Unreadable("a list of short texts is expected here", remedy)
    return tuple(each for each in items if each)


def _span(part: str) -> range:
    ends = [int(each) for each in re.findall(r"\d+", part)]
    return range(ends[0], ends[-1] + 1)


def _and(seats: list[int]) -> str:
    return " and ".join(str(seat) for seat in seats)
