"""A change of one day plans anew what it touches and nothing else: which published files of the demo change."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from trivet.model.department import Department
from trivet.model.school import Calendar, Closure, SpecialDay
from trivet.pages.build_info import BuildInfo
from trivet.pages.calendar_files import calendar_files
from trivet.pages.data_files import data_files
from trivet.pages.words import load_words
from trivet.planning.department import plan_department

WEDNESDAY = date(2026, 12, 2)
"""p1, p2 hold round 3 of Float or sink? then, k6a round 2 of its unit; k6b meets on B days and does not."""


def published(department: Department) -> dict[str, bytes]:
    """The files of data/ and calendar/."""
    plans = plan_department(department)
    made = (*data_files(plans, BuildInfo(date(2026, 11, 25))), *calendar_files(department, plans, load_words()))
    return {asset.path: asset.content for asset in made}


def changed(before: Department, after: Department) -> list[str]:
    one, two = published(before), published(after)
    assert set(one) == set(two)
    return sorted(path for path in one if one[path] != two[path])


def with_calendar(demo: Department, **changes: object) -> Department:
    calendar: Calendar = replace(demo.school.calendar, **changes)  # type: ignore[arg-type]
    return replace(demo, school=replace(demo.school, calendar=calendar))


def test_a_lost_day_of_one_run(demo: Department) -> None:
    """A day lost by p1 in one unit changes the plan of that run and the calendar of that class."""
    runs = [replace(run, lost=(WEDNESDAY,)) if (run.class_id, run.unit) == ("p1", "float-or-sink") else run for run in demo.school.runs]
    after = replace(demo, school=replace(demo.school, runs=tuple(runs)))
    assert changed(demo, after) == ["calendar/p1.ics", "data/p1/float-or-sink.json"]


def test_another_bell_schedule_on_one_day(demo: Department) -> None:
    """An assembly on a Wednesday changes the runs that have a lesson then, and the calendars of their classes."""
    special = {**demo.school.calendar.special, WEDNESDAY: SpecialDay("assembly")}
    assert changed(demo, with_calendar(demo, special=special)) == [
        "calendar/k6a.ics", "calendar/p1.ics", "calendar/p2.ics",
        "data/k6a/moving-plates.json", "data/p1/float-or-sink.json", "data/p2/float-or-sink.json",
    ]  # fmt: skip


def test_a_day_on_which_nothing_stands(demo: Department) -> None:
    """Other bells on a day without a lesson of a unit change nothing that is published."""
    special = {**demo.school.calendar.special, date(2026, 11, 18): SpecialDay("assembly")}
    assert changed(demo, with_calendar(demo, special=special)) == []


def test_a_closed_day_moves_rotation_days_after_it(demo: Department) -> None:
    """A snow day in January changes the run that has a lesson then; what lies before it, and other classes, stay."""
    closures = (*demo.school.calendar.closures, Closure(date(2027, 1, 13), date(2027, 1, 13), "snow"))
    assert changed(demo, with_calendar(demo, closures=closures)) == ["calendar/p1.ics", "data/p1/warm-metal-cool-water.json"]


def test_one_letter_of_the_rotation(demo: Department) -> None:
    """Under `slide` a date run as a second A day moves the letters after it: it touches the classes that meet by letter."""
    special = {**demo.school.calendar.special, date(2026, 12, 1): SpecialDay(rotation_day="A")}
    assert changed(demo, with_calendar(demo, special=special)) == [
        "calendar/k6a.ics", "calendar/k6b.ics", "data/k6a/moving-plates.json", "data/k6b/beaks-and-seeds.json",
    ]  # fmt: skip


def test_a_day_closed_at_short_notice(demo: Department) -> None:
    """A storm in mid-unit changes the runs that go on from there, and in their calendars no entry before that day."""
    storm = (Closure(WEDNESDAY, WEDNESDAY, "storm"),)
    after = with_calendar(demo, closures=(*demo.school.calendar.closures, *storm), short_notice=storm)
    assert changed(demo, after) == [
        "calendar/k6a.ics", "calendar/k6b.ics", "calendar/p1.ics", "calendar/p2.ics",
        "data/k6a/moving-plates.json", "data/k6b/beaks-and-seeds.json", "data/p1/float-or-sink.json", "data/p2/float-or-sink.json",
    ]  # fmt: skip
    one, two = published(demo), published(after)
    for path in ("calendar/k6a.ics", "calendar/p1.ics", "calendar/p2.ics"):
        entries = [file[path].split(b"BEGIN:VEVENT") for file in (one, two)]
        before, now = ([each for each in found if b"DTSTART;TZID=America/Chicago:202611" in each] for found in entries)
        assert before and now == before, path
