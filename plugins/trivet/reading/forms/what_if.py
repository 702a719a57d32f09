"""What would be otherwise on a day: `2026-12-02 early release`, `2026-12-02 lost`, `2026-12-02 to 2026-12-04 closed`, `2026-12-02 B`."""

from __future__ import annotations

import re
from collections.abc import Collection

from trivet.model.school import Closure
from trivet.model.what_if import WhatIf
from trivet.reading.forms.dates import DATE, date_range
from trivet.reading.forms.unreadable import DASH, Unreadable, said
from trivet.reading.near import nearest, plain

LOST = ("lost", "lose", "lesson lost", "no lesson", "no class", "cancelled", "canceled", "missed")
CLOSED = ("closed", "closure", "no school", "school closed", "holiday", "snow", "day off", "off")
SMALL = ("a", "an", "is", "as", "on", "day", "days", "schedule", "bells")
"""Words around the one that counts."""


def what_if(value: object, day_types: Collection[str], rotation: Collection[str]) -> WhatIf | Unreadable:
    """Read a day (or a stretch of days) and what it would be: lost, closed, a day type of bells.yml, a rotation day, or both of these."""
    text = said(value)
    found = re.match(rf"({DATE}(?:\s+(?:to|{DASH})\s+{DATE})?)\s*[,:;]?\s*(.*)$", text)
    days = date_range(found[1] if found else text)
    if isinstance(days, Unreadable):
        return Unreadable(days.what, f"write a day and what it would be, such as {_corrected(days.corrected)}")
    words = (found[2] if found else "").strip()
    if not words:
        return Unreadable(
            f"it is not said what {text} would be", f"write what it would be, such as {days.first} early release, or {days.first} lost"
        )
    parts = [part for part in (_heart(each) for each in re.split(r"[,/]|\band\b", words)) if part]
    if _one_of(parts, LOST):
        return WhatIf(first=days.first, last=days.last, lost=True)
    if _one_of(parts, CLOSED):
        return WhatIf(first=days.first, last=days.last, closed=words)
    return _day(days, words, day_types, rotation)


def _corrected(text: str) -> str:
    """The days that were meant, with what they would be where that was said."""
    if not text:
        return "2026-12-02 early release"
    days, _, words = text.partition(", ")
    return f"{days} {words or 'early release'}"


def _heart(words: str) -> str:
    """The words without the small ones around them, as they sound."""
    return " ".join(word for word in plain(words).split() if word not in SMALL)


def _one_of(parts: list[str], known: Collection[str]) -> bool:
    return len(parts) == 1 and parts[0] in known


def _day(days: Closure, words: str, day_types: Collection[str], rotation: Collection[str]) -> WhatIf | Unreadable:
    by_sound = {_heart(name) or name: name for name in day_types}
    letters = {plain(letter): letter for letter in rotation}
    day_type = letter = ""
    for part in re.split(r"[,/]|\band\b", words):
        sound = _heart(part)
        # A rotation day may be called as a small word is: A, day A, an A day.
        bare = sound or next((word for word in reversed(plain(part).split()) if word in letters), "")
        if bare in letters and not letter:
            letter = letters[bare]
            continue
        if sound in by_sound and not day_type:
            day_type = by_sound[sound]
            continue
        # `early release B`: the last word is the rotation day.
        head, _, tail = plain(part).rpartition(" ")
        if tail in letters and _heart(head) in by_sound and not letter and not day_type:
            day_type, letter = by_sound[_heart(head)], letters[tail]
            continue
        return _unknown(days, part.strip(), [*by_sound.values()], [*rotation])
    return WhatIf(first=days.first, last=days.last, day_type=day_type, rotation_day=letter)


def _unknown(days: Closure, word: str, day_types: list[str], rotation: list[str]) -> Unreadable:
    names = [name.replace("_", " ") for name in day_types]
    near = nearest(word, [*names, *LOST[:1], *CLOSED[:1]])
    known = [*names, *(f"{letter} day" for letter in rotation), "lost", "closed"]
    dates = f"{days.first}" if days.first == days.last else f"{days.first} to {days.last}"
    remedy = f"write {dates} {near}" if near else f"write one of: {', '.join(known)}"
    return Unreadable(f'it is not known what "{word}" would be', remedy)
