from __future__ import annotations

import pytest

from tests.support.sheets import said, sheet
from trivet.model.school import DayType
from trivet.reading.school.bells import read_bells


def bells(*periods: str) -> tuple[DayType, list[str]]:
    """Return one day type with these periods, and the sentences about it."""
    read, problems = read_bells(sheet("bells", "day types:\n  regular:\n" + "".join(f"    {line}\n" for line in periods)))
    return read["regular"], said(problems)


def test_day_types_carry_the_words_of_the_model() -> None:
    """`early release` is found as `early_release`, with its periods in order of the clock."""
    read, problems = read_bells(sheet("bells", "day types:\n  early release:\n    P2: 9:01-9:53\n    P1: 8:05-8:43\n"))
    assert problems == ()
    assert list(read) == ["early_release"]
    assert list(read["early_release"].periods) == ["P1", "P2"]
    assert read["early_release"].periods["P1"].minutes == 38


def test_periods_are_half_open() -> None:
    """A period may begin at the very minute at which the one before ends."""
    assert bells("P1: 8:05-8:57", "P2: 8:57-9:49")[1] == []


def test_a_period_that_begins_within_another_is_an_error() -> None:
    """Two periods of a day type do not overlap, in whatever order they are written."""
    expected = "3: day type regular, P2: P2 begins at 8:50, before P1 has ended at 8:57; write a start at 8:57 or later, or end P1 earlier"
    assert bells("P2: 8:50-9:40", "P1: 8:05-8:57")[1] == [expected]


def test_a_period_inside_a_long_one_is_found_past_a_short_one() -> None:
    """Each period is held against every earlier one, not only against its neighbor."""
    _, sentences = bells("P1: 8:00-12:00", "P2: 8:10-8:20", "P3: 9:00-10:00")
    assert len(sentences) == 2


def test_halves_of_a_split_lunch_may_overlap() -> None:
    """P5A and P5B are two halves of one class period around lunch waves."""
    assert bells("P5A: 11:00-11:45", "P5B: 11:30-12:15", "P6: 12:20-13:10")[1] == []


@pytest.mark.parametrize(
    ("written", "remedy"),
    [
        ("12:40-1:32", "write P1: 12:40-13:32"),
        ("1:05-1:57", "write P1: 13:05-13:57"),
        ("9:53-9:01", "write P1: 9:01-9:53"),
        ("9:01-9:01", "write when it starts and ends, as in 8:05-8:57"),
    ],
)
def test_times_that_can_not_be_are_answered_with_what_was_meant(written: str, remedy: str) -> None:
    """An afternoon hour is put on the 24-hour clock, swapped ends are swapped back, and the period is left out."""
    day_type, sentences = bells(f"P1: {written}")
    assert sentences[0].endswith(f"; {remedy}")
    assert day_type.periods == {}
