from __future__ import annotations

from datetime import date

import pytest

from tests.support.sheets import codes, said, sheet
from trivet.model.problem import Problem
from trivet.model.school import Calendar, Closure, SpecialDay, Term
from trivet.reading.school.calendar import read_calendar

YEAR = "first day: 2026-08-24\nlast day: 2027-06-04\nweek:\n  Monday: regular\n  Friday: early release\n"


def calendar(more: str = "", year: str = YEAR) -> tuple[Calendar | None, tuple[Problem, ...]]:
    """Read a calendar with more lines below the year."""
    return read_calendar(sheet("calendar", year + more))


def test_a_year_is_two_dates_and_a_week() -> None:
    """Everything else may be left out: no rotation, no closures, no special days, no terms."""
    read, problems = calendar()
    assert problems == ()
    assert read == Calendar(first=date(2026, 8, 24), last=date(2027, 6, 4), weekly={0: "regular", 4: "early_release"})


def test_closures_have_dates_and_a_reason() -> None:
    """Published dates of 2026-27: Labor Day is Monday 2026-09-07, Thanksgiving Thursday 2026-11-26 (5 U.S.C. 6103)."""
    read, problems = calendar("closures:\n  - 2026-09-07, Labor Day\n  - 2026-11-25 to 2026-11-27, fall break\n")
    assert problems == ()
    assert read is not None
    assert read.closures == (
        Closure(date(2026, 9, 7), date(2026, 9, 7), "Labor Day"),
        Closure(date(2026, 11, 25), date(2026, 11, 27), "fall break"),
    )
    assert read.closures[0].first.weekday() == 0
    assert read.closures[1].first.weekday() == 2


@pytest.mark.parametrize(("mode", "slide"), [("", True), ("  mode: slide\n", True), ("  mode: fixed\n", False)])
def test_a_rotation_slides_unless_it_says_fixed(mode: str, slide: bool) -> None:
    """Common practice: a closed day does not use up its rotation day."""
    read, _ = calendar(f"rotation:\n  days: A, B\n{mode}")
    assert read is not None
    assert (read.rotation, read.slide) == (("A", "B"), slide)


def test_a_single_day_is_a_day_type_a_rotation_day_or_both() -> None:
    """One word is a rotation day where the rotation has it, else a day type; two words are both."""
    read, problems = calendar("rotation:\n  days: A, B\ndays:\n  2026-12-01: early release\n  2026-12-03: B\n  2026-12-04: regular, B\n")
    assert problems == ()
    assert read is not None
    assert read.special == {
        date(2026, 12, 1): SpecialDay("early_release", ""),
        date(2026, 12, 3): SpecialDay("", "B"),
        date(2026, 12, 4): SpecialDay("regular", "B"),
    }


def test_numbered_rotation_days_are_read_as_text() -> None:
    """A six-day cycle numbers its days, and a lone 3 is day 3."""
    read, problems = calendar("rotation:\n  days: 1, 2, 3, 4, 5, 6\ndays:\n  2026-12-01: 3\n")
    assert problems == ()
    assert read is not None
    assert read.special == {date(2026, 12, 1): SpecialDay("", "3")}


def test_terms_have_a_name_and_two_dates() -> None:
    """The name stands before the first comma."""
    read, _ = calendar("terms:\n  - Fall, 2026-08-24 to 2027-01-15\n")
    assert read is not None
    assert read.terms == (Term("Fall", date(2026, 8, 24), date(2027, 1, 15)),)


def test_every_date_that_does_not_exist_is_answered_at_its_line() -> None:
    """All dates are looked at, and what can be read is kept."""
    read, problems = calendar("closures:\n  - 2026-09-31, Labor Day\n  - 2026-10-12, staff day\ndays:\n  2027-02-29: regular\n")
    assert codes(problems) == ["days-unreadable", "date-unreadable"]
    assert [problem.place.line for problem in problems] == [7, 10]
    assert read is not None
    assert [closure.reason for closure in read.closures] == ["staff day"]


def test_a_stretch_that_ends_first_is_turned_round_in_the_remedy() -> None:
    """Swapped dates are answered with the two in order."""
    _, problems = calendar("closures:\n  - 2026-11-27 to 2026-11-25, fall break\n")
    what = "the last day stands before the first: 2026-11-27 to 2026-11-25, fall break"
    assert said(problems) == [f"7: closure 1: {what}; write - 2026-11-25 to 2026-11-27, fall break"]


def test_a_year_that_ends_before_it_begins_is_no_calendar() -> None:
    """Nothing can be planned in it, so there is no calendar and one problem."""
    read, problems = calendar(year=YEAR.replace("2027-06-04", "2026-06-04"))
    assert read is None
    assert codes(problems) == ["year-ends-first"]
