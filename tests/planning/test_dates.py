"""School days, rotation days and meetings."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

from dateutil.rrule import MO, MONTHLY, TH, rrule
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support.department import period, tiny_bells, tiny_calendar, tiny_class
from trivet.model.school import Calendar, Closure, DayType, SpecialDay
from trivet.planning.dates import meetings, meetings_of_run, school_days

MONDAY = date(2026, 8, 24)


def week(closures: tuple[Closure, ...] = (), days: int = 14, **changes: Any) -> Calendar:
    return tiny_calendar(first=MONDAY, last=MONDAY + timedelta(days - 1), closures=closures, **changes)


def letters(calendar: Calendar) -> str:
    return "".join(day.rotation_day for day in school_days(calendar))


def test_slide_letter_is_not_consumed() -> None:
    """Six-day cycle A-F, last day in session E, closed two days: the next session is F (kcsd.org, references 3.3)."""
    closed = Closure(date(2026, 8, 31), date(2026, 9, 1))
    calendar = week((closed,), rotation=tuple("ABCDEF"), days=12)
    found = {day.date: day.rotation_day for day in school_days(calendar)}
    assert found[date(2026, 8, 28)] == "E"
    assert date(2026, 8, 31) not in found
    assert found[date(2026, 9, 2)] == "F"


def test_cancelled_b_day_comes_next() -> None:
    """A cancelled B day is still the next day in session (a principal's answer, references 3.3)."""
    calendar = week((Closure(date(2026, 8, 25), date(2026, 8, 25)),), rotation=("A", "B"), days=5)
    assert [(d.date.day, d.rotation_day) for d in school_days(calendar)] == [(24, "A"), (26, "B"), (27, "A"), (28, "B")]


def test_numbered_days_skip_a_planned_friday_and_resume_after_snow() -> None:
    """Days 1 to 6 skip a no-school Friday and go on after snow (hudsonvillechristian.org, references 3.3)."""
    friday, snow = date(2026, 8, 28), date(2026, 9, 2)
    calendar = week((Closure(friday, friday), Closure(snow, snow)), rotation=tuple("123456"))
    assert letters(calendar) == "12345612"


def test_fixed_letters_belong_to_dates() -> None:
    """Letters printed on dates in advance: a closure uses up its letter (common practice, from memory)."""
    calendar = week((Closure(date(2026, 8, 25), date(2026, 8, 25)),), rotation=("A", "B"), slide=False, days=5)
    assert [(d.date.day, d.rotation_day) for d in school_days(calendar)] == [(24, "A"), (26, "A"), (27, "B"), (28, "A")]


def test_override_second_b_in_a_row() -> None:
    """A day run as a second B in a row (references 3.3, 2019-02-01): the slide goes on from it, fixed letters do not move."""
    special = {date(2026, 8, 26): SpecialDay(rotation_day="B")}
    assert letters(week(rotation=("A", "B"), special=special, days=5)) == "ABBAB"
    assert letters(week(rotation=("A", "B"), special=special, slide=False, days=5)) == "ABBBA"
    assert letters(week(rotation=("A", "B"), special={date(2026, 8, 26): SpecialDay(rotation_day="A")}, days=5)) == "ABABA"


def test_exam_days_run_as_a() -> None:
    """Exam days always run as A (references 3.3): each date is overridden, whatever the mode."""
    exams = {date(2026, 8, 26): SpecialDay("testing", "A"), date(2026, 8, 27): SpecialDay("testing", "A")}
    for slide in (True, False):
        days = school_days(week(rotation=("A", "B"), special=exams, slide=slide, days=5))
        assert [(d.day_type, d.rotation_day) for d in days[2:4]] == [("testing", "A")] * 2


def test_special_day_types_open_and_closures_shut() -> None:
    """A special date changes the day type, opens a Saturday, and stays shut inside a closure."""
    special = {
        date(2026, 8, 26): SpecialDay("assembly"),
        date(2026, 8, 29): SpecialDay("regular"),
        date(2026, 8, 30): SpecialDay(rotation_day="A"),
        date(2026, 8, 31): SpecialDay("regular"),
    }
    days = school_days(week((Closure(date(2026, 8, 31), date(2026, 9, 4)),), special=special))
    assert [(d.date.day, d.day_type) for d in days] == [
        (24, "regular"), (25, "regular"), (26, "assembly"), (27, "regular"), (28, "regular"), (29, "regular"),
    ]  # fmt: skip
    assert [d.index for d in days] == list(range(6))


def test_holidays_of_the_year() -> None:
    """The 2026-27 dates of references 3.5 follow from the rules of 5 U.S.C. 6103 and hold no lesson where they are closures."""

    def nth(month: int, year: int, weekday: object) -> date:
        return rrule(MONTHLY, dtstart=date(year, month, 1), byweekday=weekday, count=1)[0].date()

    named = {
        "Labor Day": (date(2026, 9, 7), nth(9, 2026, MO(1))),
        "second Monday of October": (date(2026, 10, 12), nth(10, 2026, MO(2))),
        "Thanksgiving": (date(2026, 11, 26), nth(11, 2026, TH(4))),
        "third Monday of January": (date(2027, 1, 18), nth(1, 2027, MO(3))),
        "third Monday of February": (date(2027, 2, 15), nth(2, 2027, MO(3))),
        "Memorial Day": (date(2027, 5, 31), nth(5, 2027, MO(-1))),
        "Veterans Day": (date(2026, 11, 11), date(2026, 11, 11)),
    }
    assert all(printed == computed for printed, computed in named.values())
    closures = tuple(Closure(day, day, name) for name, (day, _) in named.items())
    held = {day.date for day in school_days(tiny_calendar(closures=closures))}
    assert not held & {day for day, _ in named.values()}
    assert len(held) == len({day.date for day in school_days(tiny_calendar())}) - 7
    assert date(2027, 6, 19).weekday() == 5


def test_clock_changes_do_not_move_a_lesson() -> None:
    """Around 2026-11-01 and 2027-03-14, when US clocks change, the class meets at the same local time."""
    found = {m.date: m for m in meetings(school_days(tiny_calendar()), tiny_bells(), tiny_class())}
    for before, after in ((date(2026, 10, 30), date(2026, 11, 2)), (date(2027, 3, 12), date(2027, 3, 15))):
        assert (found[before].start, found[before].end, found[before].minutes) == (found[after].start, found[after].end, 52)


def test_class_meets_where_its_period_exists() -> None:
    """A class meets on its rotation days only, and only where the day's bell schedule has its period."""
    bells = {**tiny_bells(), "assembly": DayType("assembly", {"P2": period("P2", 40)})}
    special = {date(2026, 8, 26): SpecialDay("assembly"), date(2026, 8, 27): SpecialDay("parade")}
    calendar = week(rotation=("A", "B"), special=special, days=5)
    days = school_days(calendar)
    assert [m.date.day for m in meetings(days, bells, tiny_class())] == [24, 25, 28]
    assert [m.date.day for m in meetings(days, bells, tiny_class(meets=("A",)))] == [24, 28]
    assert [m.date.day for m in meetings(days, bells, tiny_class(meets=("B",)))] == [25]


def test_lost_days_are_skipped() -> None:
    """A run uses the meetings from its start on, without the days it lost."""
    all_of_them = meetings(school_days(week(days=5)), tiny_bells(), tiny_class())
    used = meetings_of_run(all_of_them, date(2026, 8, 25), (date(2026, 8, 26),))
    assert [m.date.day for m in used] == [25, 27, 28]


@settings(deadline=None)
@given(st.integers(0, 2**10 - 1), st.integers(1, 8))
def test_slide_gives_equal_counts(closed: int, cycle: int) -> None:
    """Whatever is closed, under slide the letters of the days in session run through the cycle without a gap."""
    closures = tuple(Closure(MONDAY + timedelta(d), MONDAY + timedelta(d)) for d in range(10) if closed >> d & 1)
    rotation = tuple("ABCDEFGH"[:cycle])
    found = letters(week(closures, rotation=rotation))
    assert found == "".join(rotation[i % cycle] for i in range(len(found)))
