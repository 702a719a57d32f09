"""The demo's calendar files, as two other programs read them."""

from __future__ import annotations

import io
from dataclasses import replace
from datetime import UTC, date, datetime, time
from itertools import pairwise
from typing import Any
from zoneinfo import ZoneInfo

import icalendar
import pytest
from dateutil.tz import tzical

from trivet.model.department import Department
from trivet.model.plan import Plans
from trivet.pages.calendar_files import calendar_file
from trivet.pages.words import load_words
from trivet.planning.calendar_events import calendar_events
from trivet.planning.department import plan_department
from trivet.planning.timed_runs import settled

CHICAGO = ZoneInfo("America/Chicago")


@pytest.fixture(scope="module")
def plans(demo: Department) -> Plans:
    return plan_department(demo)


def calendars(demo: Department, plans: Plans) -> dict[str, bytes]:
    return {class_id: calendar_file(demo, plans, class_id, load_words()) for class_id in demo.school.classes}


def events(content: bytes) -> list[Any]:
    whole = icalendar.Calendar.from_ical(content)
    assert not whole.errors
    return list(whole.walk("VEVENT"))


def test_every_lesson_is_an_entry(demo: Department, plans: Plans) -> None:
    """Each class's file has one entry for each planned day, at its period's times, and one for each pre-check; no two overlap."""
    for class_id, content in calendars(demo, plans).items():
        own = [plan for plan in plans.plans if plan.class_id == class_id]
        days = {(day.date, day.start, day.end) for plan in own for day in plan.days}
        checks = {plan.pre_check.date for plan in own if plan.pre_check}
        found = [(event["DTSTART"].dt, event["DTEND"].dt) for event in events(content)]
        assert {
            (start.date(), start.time(), end.time()) for start, end in found if (start.date(), start.time(), end.time()) in days
        } == days
        assert len(found) == len(days) + len(checks)
        assert all(before[1] <= after[0] for before, after in pairwise(found))


def test_entries_are_known_apart(demo: Department, plans: Plans) -> None:
    """No two entries of the whole school have one name, so that several classes may go into one calendar."""
    names = [str(event["UID"]) for content in calendars(demo, plans).values() for event in events(content)]
    assert len(names) == len(set(names)) > 50


def test_two_programs_have_the_same_hours(demo: Department, plans: Plans) -> None:
    """By the zone that the file describes, read with dateutil, and by the zone's name, each lesson begins at the same second."""
    for content in calendars(demo, plans).values():
        own = tzical(io.StringIO(content.decode())).get("America/Chicago")
        for event in events(content):
            start = event["DTSTART"].dt.replace(tzinfo=None)
            assert start.replace(tzinfo=own).astimezone(UTC) == start.replace(tzinfo=CHICAGO).astimezone(UTC)


def test_what_entries_tell(demo: Department, plans: Plans) -> None:
    """A day with a round tells rounds, clock times and materials, and links to its sheet; lines are folded at 75 octets."""
    content = calendars(demo, plans)["p1"]
    assert max(len(line) for line in content.split(b"\r\n")) <= 75
    (first,) = [event for event in events(content) if event["DTSTART"].dt == datetime(2026, 11, 30, 8, 5, tzinfo=CHICAGO)]
    said = str(first["DESCRIPTION"])
    assert said.startswith("Round 1 at 8:18, 23 min: A ")
    assert "graduated cylinder 25 mL" in said
    assert f"https://trivet.example/lesson/p1/float-or-sink/#{date(2026, 11, 30)}" in said


def entries(department: Department) -> dict[str, tuple[tuple[date, time, time], int]]:
    """When each entry of the school is, and its number."""
    known = settled(department)
    plans = plan_department(known)
    found = (event for class_id in known.school.classes for event in calendar_events(known, plans, class_id))
    return {event.uid: ((event.date, event.start, event.end), event.sequence) for event in found}


def test_whatever_day_is_lost(demo: Department) -> None:
    """Each day of each run is lost once: every entry that moves has a larger number, and no other has another one (RFC 5545 3.8.7.4)."""
    before = entries(demo)
    moved = 0
    for place, run in enumerate(demo.school.runs):
        for day in {when[0] for uid, (when, _) in before.items() if f"-{run.class_id}-{run.unit}-day-" in uid}:
            runs = list(demo.school.runs)
            runs[place] = replace(run, lost=(*run.lost, day))
            after = entries(replace(demo, school=replace(demo.school, runs=tuple(runs))))
            for uid in set(before) & set(after):
                (when, number), (now, larger) = before[uid], after[uid]
                assert larger > number if when != now else larger == number, (uid, day)
                moved += when != now
    assert moved > 50
