"""Entries of a class's calendar: the same entry stays the same, and a newer one has the larger number."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support.department import STARTS, tiny_bells, tiny_calendar, tiny_department, tiny_unit
from trivet.model.department import Department
from trivet.model.school import Calendar, Closure, Defaults, Done, Run, SpecialDay
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


def number(calendar: Calendar) -> int:
    return event_sequence(tiny_department(calendar=calendar).school, "p1", STARTS)


def test_a_special_bell_schedule_raises_the_number() -> None:
    """A date that gets other bells than its weekday's usual ones raises the number of what stays on it."""
    usual = tiny_calendar()
    calendar = tiny_calendar(special={STARTS: SpecialDay("assembly")})
    assert number(calendar) == number(usual) + 1
    assert number(tiny_calendar(special={STARTS: SpecialDay("regular", "A")})) == number(usual)
    found = checked(tiny_department(calendar=calendar, bells=tiny_bells(52, assembly=48)))
    first = "2026-p1-float-or-sink-day-1@trivet.example"
    assert found[first][0] == checked(tiny_department())[first][0] + 1


def test_a_lesson_that_moves_back_needs_a_word_and_then_has_a_larger_number() -> None:
    """Back to what they were, the files give the same numbers as before; with the date of the change written down, larger ones.

    RFC 5545 3.8.7.4: the number only ever rises. No function of the files alone can do that when they return to what they were.
    """
    first = checked(tiny_department())
    moved = checked(tiny_department(lost=(STARTS + timedelta(days=2),)))
    assert checked(tiny_department()) == first
    back = checked(tiny_department(calendar=tiny_calendar(moved_earlier=(STARTS + timedelta(days=1),))))
    for uid, (before, day) in moved.items():
        assert back[uid][1] == first[uid][1]
        changed = day != first[uid][1]
        assert back[uid][0] > before if changed or first[uid][1] > STARTS else back[uid] == first[uid]


def test_entries_before_the_date_of_a_change_stay() -> None:
    """A date under `moved earlier` leaves the entries before it alone, number and stamp, and raises both for those from it on."""
    since = STARTS + timedelta(days=2)
    before = {event.uid: event for event in events_of(tiny_department())}
    for event in events_of(tiny_department(calendar=tiny_calendar(moved_earlier=(since,)))):
        same = before[event.uid]
        assert (event.sequence == same.sequence) == (event.stamp == same.stamp) == (event.date < since)
        assert event.stamp == (since if event.date >= since else date(2026, 8, 24))


def test_rounds_done_ahead_of_the_plan_raise_the_number() -> None:
    """Where more was done than planned, what is left comes earlier, and its number is larger all the same."""
    bells = tiny_bells(52, short=30, long=110)
    calendar = tiny_calendar(special={STARTS: SpecialDay("long"), STARTS + timedelta(days=1): SpecialDay("short")})
    ahead = Run(class_id="p1", unit="float-or-sink", starts=STARTS, done=(Done(date=STARTS, rounds=(1, 2, 3), minutes=20),))
    planned = tiny_department(bells=bells, calendar=calendar, defaults=Defaults(rounds_a_day=1))
    before, after = checked(planned), checked(replace(planned, school=replace(planned.school, runs=(ahead,))))
    write_up = "2026-p1-float-or-sink-day-2@trivet.example"
    assert (before[write_up][1], after[write_up][1]) == (STARTS + timedelta(days=2), STARTS + timedelta(days=1))
    assert after[write_up][0] > before[write_up][0]


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
