"""Calendar files as other programs read them."""

from __future__ import annotations

import io
from collections.abc import Mapping
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import icalendar
import pytest
from dateutil.tz import tzical

from tests.support.department import tiny_class, tiny_department, tiny_unit
from tests.support.lock import tiny_lock
from trivet.model.department import Department
from trivet.model.school import Run
from trivet.model.station import CheckItem
from trivet.pages.calendar_files import calendar_file, calendar_files
from trivet.pages.words import load_words
from trivet.planning.department import plan_department

CHICAGO = ZoneInfo("America/Chicago")


def written(department: Department, class_id: str = "p1") -> bytes:
    return calendar_file(department, plan_department(department), class_id, load_words())


def read(department: Department) -> list[Any]:
    return list(icalendar.Calendar.from_ical(written(department)).walk("VEVENT"))


def test_the_file_stands_by_the_standard() -> None:
    """Every line ends with CRLF and has at most 75 octets, and the required properties stand once in each component (RFC 5545 3.1, 3.6)."""
    content = written(tiny_department())
    lines = content.split(b"\r\n")
    assert lines[-1] == b"" and all(b"\n" not in line and b"\r" not in line and len(line) <= 75 for line in lines)
    whole = icalendar.Calendar.from_ical(content)
    assert not whole.errors
    assert str(whole["VERSION"]) == "2.0" and whole["PRODID"]
    assert len(whole.walk("VTIMEZONE")) == 1
    events = whole.walk("VEVENT")
    assert len(events) == len({str(event["UID"]) for event in events}) == 4
    for event in events:
        assert not event.errors
        assert {"UID", "DTSTAMP", "SEQUENCE", "DTSTART", "DTEND", "SUMMARY", "LOCATION", "DESCRIPTION", "URL"} <= set(event)


def test_what_an_entry_says() -> None:
    """An entry names class, unit, rounds and room, tells clock times, materials and, where groups are public, who is where."""
    first, *_, last = read(tiny_department(locks=[tiny_lock(tiny_class())]))
    assert str(first["SUMMARY"]) == "p1 Float or sink?: Round 1 of 3"
    assert str(first["LOCATION"]) == "Room 12"
    assert str(first["URL"]) == "https://trivet.example/lesson/p1/float-or-sink/#2026-11-30"
    said = str(first["DESCRIPTION"]).split("\n")
    assert said == [
        "Round 1 at 8:20, 23 min: A Online, B Hands-on and C Teacher-led",
        "For the whole unit: 3 × graduated cylinder 25 mL, 2 × balance 0.1 g, 594 mL water, 5 × device",
        "Lesson sheet: https://trivet.example/lesson/p1/float-or-sink/#2026-11-30",
    ]
    assert str(last["SUMMARY"]) == "p1 Float or sink?: Write-up"
    assert str(last["DESCRIPTION"]).startswith("Write-up at 8:09, 12 min\nLesson sheet")


def test_groups_that_are_not_public_leave_no_trace() -> None:
    """A leveled unit gives the same file as one that is not drawn yet."""
    leveled = replace(tiny_lock(tiny_class()), leveled=True)
    assert written(tiny_department(locks=[leveled])) == written(tiny_department())


def test_a_pre_check_has_an_entry() -> None:
    """The pre-check stands at the end of the last meeting two school days ahead, for its five minutes."""
    unit = replace(tiny_unit(), pre_check=(CheckItem("Which float?", "the cork"),))
    check = read(tiny_department(unit=unit))[0]
    assert str(check["SUMMARY"]) == "p1 Float or sink?: pre-check"
    assert check["DTSTART"].dt == datetime(2026, 11, 26, 8, 52, tzinfo=CHICAGO)
    assert (check["DTEND"].dt - check["DTSTART"].dt).total_seconds() == 300


@pytest.mark.parametrize(
    ("starts", "offsets"),
    [(date(2026, 10, 29), {-5, -6}), (date(2027, 3, 11), {-6, -5})],
    ids=["2026-11-01", "2027-03-14"],
)
def test_a_change_of_the_clock_moves_no_lesson(starts: date, offsets: set[int]) -> None:
    """A unit across the change of the clock begins at 8:05 local on each day, by the named zone and by the zone in the file."""
    department = tiny_department(starts=starts)
    own = tzical(io.StringIO(written(department).decode())).get()
    found = set()
    for event in read(department):
        start = event["DTSTART"].dt
        assert isinstance(start, datetime)
        assert event["DTSTART"].params["TZID"] == "America/Chicago"
        assert start.time() == time(8, 5)
        in_file = start.replace(tzinfo=own)
        assert in_file.astimezone(UTC) == start.replace(tzinfo=CHICAGO).astimezone(UTC)
        found.add((in_file.utcoffset() or timedelta()) // timedelta(hours=1))
    assert found == offsets


def test_a_round_trip_through_another_program() -> None:
    """Read and written again by the icalendar package, the file says the same."""
    once = icalendar.Calendar.from_ical(written(tiny_department()))
    twice = icalendar.Calendar.from_ical(once.to_ical())
    assert [dict(event) for event in once.walk("VEVENT")] == [dict(event) for event in twice.walk("VEVENT")]


def by_uid(department: Department) -> Mapping[str, bytes]:
    return {str(event["UID"]): event.to_ical() for event in read(department)}


def test_after_a_lost_day_only_what_moved_differs() -> None:
    """A lost day changes the bytes of the entries that moved and of no other, and adds or takes away none."""
    before, after = by_uid(tiny_department()), by_uid(tiny_department(lost=(date(2026, 12, 2),)))
    assert {uid for uid in before if before[uid] != after[uid]} == {f"2026-p1-float-or-sink-day-{n}@trivet.example" for n in (3, 4)}


def test_every_class_has_a_file() -> None:
    """A class without a run has a calendar too, with the zone and no entry; files stand at the address that contracts give."""
    classes = [tiny_class(), tiny_class("p2")]
    department = tiny_department(classes=classes, runs=(Run(class_id="p1", unit="float-or-sink", starts=date(2026, 11, 30)),))
    files = list(calendar_files(department, plan_department(department), load_words()))
    assert [file.path for file in files] == ["calendar/p1.ics", "calendar/p2.ics"]
    empty = icalendar.Calendar.from_ical(files[1].content)
    assert not empty.walk("VEVENT") and len(empty.walk("VTIMEZONE")) == 1


def test_hostile_words_stay_words() -> None:
    """A title that looks like lines of a calendar file is one title."""
    unit = replace(tiny_unit(), title="A;B,C\\n\nEND:VEVENT\r\nBEGIN:VALARM")
    events = read(tiny_department(unit=unit))
    assert len(events) == 4
    assert str(events[0]["SUMMARY"]) == "p1 A;B,C\\n\nEND:VEVENT\nBEGIN:VALARM: Round 1 of 3"
