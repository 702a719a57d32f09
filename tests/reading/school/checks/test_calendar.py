from __future__ import annotations

from tests.support.department import tiny_bells
from tests.support.sheets import said, sheet
from trivet.reading.school.calendar import read_calendar
from trivet.reading.school.checks.calendar import check_calendar

YEAR = "first day: 2026-08-24\nlast day: 2027-06-04\nweek:\n  Monday: regular\nrotation:\n  days: A, B\n"


def check(more: str = "", year: str = YEAR) -> list[str]:
    """Hold a calendar against bell schedules `regular` and `early_release`."""
    written = sheet("calendar", year + more)
    calendar, problems = read_calendar(written)
    assert calendar is not None
    assert problems == ()
    return said(check_calendar(written, calendar, tiny_bells(early_release=38)))


def test_known_day_types_and_rotation_days_pass() -> None:
    """Every way to write a single day is known here."""
    assert check("days:\n  2026-12-01: early release\n  2026-12-02: B\n  2026-12-03: regular, A\n") == []


def test_a_day_type_of_the_week_must_have_a_bell_schedule() -> None:
    """A near miss gets the spoken name, not the model's."""
    assert check(year=YEAR.replace("regular", "early releese")) == [
        '4: week, Monday: there is no day type "early releese"; write early release'
    ]


def test_a_single_day_is_held_against_day_types_and_rotation_days() -> None:
    """Each half of `regular, C` is looked at for itself."""
    assert check("days:\n  2026-12-01: asembly\n  2026-12-02: regular, C\n  2026-12-03: reglar, B\n") == [
        '8: day 2026-12-01: there is no day type "asembly"; write one of: regular, early release, A, B; or add it to school/bells.yml',
        '9: day 2026-12-02: there is no rotation day "C"; write one of: A, B; or add it to `rotation: days:`',
        '10: day 2026-12-03: there is no day type "reglar"; write regular',
    ]


def test_dates_outside_the_year_are_doubted() -> None:
    """A closure, a term or a single day of another year is a warning: it is most likely a slip in the year."""
    year = "write a date from 2026-08-24 to 2027-06-04"
    assert check("closures:\n  - 2027-09-07, Labor Day\nterms:\n  - Fall, 2026-08-20 to 2026-12-18\ndays:\n  2027-12-01: regular\n") == [
        f"12: day 2027-12-01: 2027-12-01 lies outside the school year; {year}",
        f"8: closure 1: 2027-09-07 lies outside the school year; {year}",
        f"10: term 1: 2026-08-20 to 2026-12-18 lies outside the school year; {year}",
    ]


def test_a_day_can_not_be_closed_and_held() -> None:
    """A date in the closures that also has a day type contradicts itself."""
    what = "day 2026-11-25: 2026-11-25 is closed, and has a day type or rotation day here"
    remedy = "leave it out here, or take it out of the closures"
    assert check("closures:\n  - 2026-11-25 to 2026-11-27, fall break\ndays:\n  2026-11-25: early release\n") == [f"10: {what}; {remedy}"]


def test_a_rotation_day_stands_once() -> None:
    """A, B, A would count A twice."""
    assert check(year=YEAR.replace("A, B", "A, B, A")) == ["6: rotation, days: A stands here twice; leave one of them out"]
