"""Entries of a class's calendar: the same entry stays the same, and a newer one has the larger number."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support.department import STARTS, tiny_bells, tiny_calendar, tiny_department, tiny_unit
from trivet.model.department import Department
from trivet.model.school import Closure, SpecialDay
from trivet.model.station import CheckItem
from trivet.planning.calendar_events import LessonEvent, calendar_events, event_sequence
from trivet.planning.department import plan_department


def events_of(department: Department, class_id: str = "p1") -> tuple[LessonEvent, ...]:
    return calendar_events(department, plan_department(department), class_id)


def checked(department: Department) -> dict[str, tuple[int, date]]:
    return {event.uid: (event.sequence, event.date) for event in events_of(department)}


def test_one_entry_a_day_and_one_for_the_pre_check() -> None:
    """A unit with a pre-check has an entry for it and one for each planned day, by date, each with the clock of its meeting."""
    unit = replace(tiny_unit(), pre_check=(CheckItem("Which of these float?", "the cork"),))
    found = events_of(tiny_department(unit=unit))
    assert [(e.uid, e.date.isoformat(), f"{e.start:%H:%M}", f"{e.end:%H:%M}") for e in found] == [
        ("2026-p1-float-or-sink-pre-check-1@trivet.example", "2026-11-26", "08:52", "08:57"),
        ("2026-p1-float-or-sink-day-1@trivet.example", "2026-11-30", "08:05", "08:57"),
        ("2026-p1-float-or-sink-day-2@trivet.example", "2026-12-01", "08:05", "08:57"),
        ("2026-p1-float-or-sink-day-3@trivet.example", "2026-12-02", "08:05", "08:57"),
        ("2026-p1-float-or-sink-day-4@trivet.example", "2026-12-03", "08:05", "08:57"),
    ]
    assert events_of(tiny_department(unit=unit), "p2") == ()


def test_two_sites_and_two_years_never_share_an_entry() -> None:
    """The address of the site and the school year are part of an entry's name; without an address it still has one."""
    here, there, nowhere = (
        {e.uid for e in events_of(tiny_department(site=site))} for site in ("https://a.example/s/", "https://a.example/", "")
    )
    assert not here & there
    assert "2026-p1-float-or-sink-day-1@a.example/s" in here
    assert "2026-p1-float-or-sink-day-1@trivet" in nowhere
    later = tiny_calendar(first=date(2027, 8, 23), last=date(2028, 6, 2))
    next_year = {e.uid for e in events_of(tiny_department(calendar=later, starts=date(2027, 11, 29)))}
    assert next_year and not next_year & {e.uid for e in events_of(tiny_department())}


def test_a_lost_day_changes_only_what_moved_and_raises_its_number() -> None:
    """After a lost day the entries before it are the same, and each moved one keeps its name and has a larger number."""
    before = checked(tiny_department())
    after = checked(tiny_department(lost=(date(2026, 12, 2),)))
    assert set(after) == set(before)
    moved = {uid for uid in before if before[uid] != after[uid]}
    assert moved == {f"2026-p1-float-or-sink-day-{n}@trivet.example" for n in (3, 4)}
    assert all(after[uid][0] > before[uid][0] for uid in moved)


def test_a_special_bell_schedule_raises_the_number() -> None:
    """A date that gets other bells than its weekday's usual ones raises the number of what stays on it."""
    usual = tiny_calendar()
    calendar = tiny_calendar(special={STARTS: SpecialDay("assembly")})
    assert event_sequence(calendar, STARTS) == event_sequence(usual, STARTS) + 1
    same = tiny_calendar(special={STARTS: SpecialDay("regular", "A")})
    assert event_sequence(same, STARTS) == event_sequence(usual, STARTS)
    found = checked(tiny_department(calendar=calendar, bells=tiny_bells(52, assembly=48)))
    first = "2026-p1-float-or-sink-day-1@trivet.example"
    assert found[first][0] == checked(tiny_department())[first][0] + 1


@settings(max_examples=60, deadline=None)
@given(lost=st.sets(st.integers(0, 20), max_size=5), closed=st.sets(st.integers(0, 20), max_size=5), later=st.integers(0, 10))
def test_what_a_year_brings_never_lowers_a_number(lost: set[int], closed: set[int], later: int) -> None:
    """Lost days, closures and a later start only ever raise the number of an entry that moves, and leave the others alone."""
    before = checked(tiny_department())
    calendar = tiny_calendar(closures=tuple(Closure(day, day) for day in sorted(STARTS + timedelta(days=n) for n in closed)))
    after = checked(
        tiny_department(
            calendar=calendar,
            lost=tuple(sorted(STARTS + timedelta(days=n) for n in lost)),
            starts=STARTS + timedelta(days=later),
        )
    )
    for uid, (number, day) in before.items():
        assert after[uid][0] > number if after[uid][1] != day else after[uid][0] == number
