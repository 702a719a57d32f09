from __future__ import annotations

from datetime import date, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support.department import period, tiny_calendar, tiny_class
from trivet.model.school import Calendar, Closure, DayType, SpecialDay
from trivet.planning.dates import meetings, school_days
from trivet.reading.school.days import held_days, is_closed, meeting_days

FIRST = date(2026, 8, 24)
BELLS = {
    "regular": DayType("regular", {"P1": period("P1", 52)}),
    "late": DayType("late", {"P2": period("P2", 52)}),
}
DAY = st.integers(0, 60).map(lambda n: FIRST + timedelta(days=n))
ROTATION = st.sampled_from([(), ("A", "B"), ("1", "2", "3", "4", "5", "6")])


@st.composite
def calendars(draw: st.DrawFn) -> Calendar:
    """Two months with closures, special days and a rotation of either mode."""
    rotation = draw(ROTATION)
    weekly = draw(st.dictionaries(st.integers(0, 6), st.sampled_from(["regular", "late"])))
    closures = [Closure(first, first + timedelta(days=draw(st.integers(0, 4)))) for first in draw(st.lists(DAY, max_size=4))]
    day = st.builds(SpecialDay, st.sampled_from(["", "regular", "late"]), st.sampled_from(["", *rotation]))
    return tiny_calendar(
        first=FIRST,
        last=FIRST + timedelta(days=60),
        weekly=weekly,
        rotation=rotation,
        slide=draw(st.booleans()),
        closures=tuple(closures),
        special=draw(st.dictionaries(DAY, day, max_size=5)),
    )


@settings(max_examples=150)
@given(calendars(), st.sampled_from([(), ("A",), ("B",), ("2", "5")]))
def test_reading_and_planning_agree_on_the_days_of_a_class(calendar: Calendar, meets: tuple[str, ...]) -> None:
    """The days on which reading lets a run start are the days on which planning sees the class meet."""
    school_class = tiny_class(meets=meets)
    planned = [meeting.date for meeting in meetings(school_days(calendar), BELLS, school_class)]
    assert list(meeting_days(tuple(held_days(calendar)), BELLS, school_class)) == planned


def test_a_closure_covers_its_first_and_last_day() -> None:
    """Both ends of a closure are closed, and the days beside it are not."""
    calendar = tiny_calendar(closures=(Closure(date(2026, 11, 25), date(2026, 11, 27)),))
    assert [is_closed(calendar, date(2026, 11, day)) for day in (24, 25, 27, 28)] == [False, True, True, False]
