"""What would be otherwise on a day, as teachers write it."""

from __future__ import annotations

from datetime import date

import pytest

from trivet.model.what_if import WhatIf
from trivet.reading.forms import Unreadable, what_if

DAY_TYPES = ("regular", "early_release", "block_odd", "assembly", "testing")
ROTATION = ("A", "B")
DAY = date(2026, 12, 2)


def read(text: str) -> WhatIf | Unreadable:
    return what_if(text, DAY_TYPES, ROTATION)


def of_day(**how: object) -> WhatIf:
    return WhatIf(**{"first": DAY, "last": DAY, **how})  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "text",
    [
        "2026-12-02 early_release", "2026-12-02 early release", "2026-12-02, Early Release", "2026-12-02: early-release day",
        "2026-12-02 is an early release day", "2026-12-02  EARLY RELEASE SCHEDULE",
    ],
)  # fmt: skip
def test_a_day_type_in_any_writing(text: str) -> None:
    """Capitals, underscores, hyphens and small words around it don't count."""
    assert read(text) == of_day(day_type="early_release")


@pytest.mark.parametrize("word", ["lost", "Lost", "is lost", "cancelled", "a lost day", "no lesson"])
def test_lost(word: str) -> None:
    """A lost day is lost to the unit, whatever it is called."""
    assert read(f"2026-12-02 {word}") == of_day(lost=True)


@pytest.mark.parametrize("word", ["closed", "no school", "snow day", "holiday", "a day off"])
def test_closed(word: str) -> None:
    """A closed day keeps the words as its reason."""
    assert read(f"2026-12-02 {word}") == of_day(closed=word)


def test_rotation_days_and_both() -> None:
    """A rotation day stands alone, with day, or beside a day type; it is not taken for a small word."""
    assert read("2026-12-02 A") == read("2026-12-02 A day") == read("2026-12-02 is day A") == of_day(rotation_day="A")
    assert read("2026-12-02 regular, B") == read("2026-12-02 regular B") == of_day(day_type="regular", rotation_day="B")


def test_a_stretch_of_days() -> None:
    """Several days in a row are one change."""
    assert read("2026-12-02 to 2026-12-04 closed") == WhatIf(first=DAY, last=date(2026, 12, 4), closed="closed")


@pytest.mark.parametrize(
    ("text", "remedy"),
    [
        ("2026-12-02 erly release", "write 2026-12-02 early release"),
        ("2026-12-02 assemblies", "write 2026-12-02 assembly"),
        ("2026-12-02 party", "write one of: regular, early release, block odd, assembly, testing, A day, B day, lost, closed"),
        ("2026-12-02", "such as 2026-12-02 early release"),
        ("12/2/2026 lost", "2026-12-02 lost"),
        ("Dec 2, 2026 early release", "2026-12-02 early release"),
        ("2026-11-31 lost", "2026-11-30"),
        ("Wednesday lost", "2026-12-02 early release"),
    ],
)
def test_slips(text: str, remedy: str) -> None:
    """What can't be read is answered with what to write."""
    found = read(text)
    assert isinstance(found, Unreadable)
    assert remedy in found.remedy
    assert "invalid" not in found.what + found.remedy
