"""What calendar files say about school days, and what calendar.yml says against them."""

from __future__ import annotations

import time as stopwatch
from collections.abc import Iterable
from datetime import date
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.support.sheets import SCHOOL, write_school
from trivet.model.school import Calendar, Closure, SpecialDay
from trivet.planning.dates import school_days
from trivet.reading.school.read import ReadSchool, read_school


def with_files(root: Path, events: Iterable[str], more: str = "") -> ReadSchool:
    """Read the small school with a calendar file of these events."""
    lines = "".join(f"BEGIN:VEVENT\r\n{event}\r\nEND:VEVENT\r\n" for event in events)
    content = f"BEGIN:VCALENDAR\r\nVERSION:2.0\r\n{lines}END:VCALENDAR\r\n".encode()
    return with_bytes(root, content, more)


def with_bytes(root: Path, content: bytes, more: str = "") -> ReadSchool:
    calendar = SCHOOL["calendar.yml"].rstrip() + "\n        files:\n          - district.ics\n" + more
    write_school(root, calendar=calendar)
    (root / "school" / "district.ics").write_bytes(content)
    return read_school(root)


def calendar_of(read: ReadSchool) -> Calendar:
    assert read.school is not None, read.problems
    return read.school.calendar


def all_day(summary: str, first: str, last: str = "") -> str:
    end = f"\r\nDTEND;VALUE=DATE:{last}" if last else ""
    return f"SUMMARY:{summary}\r\nDTSTART;VALUE=DATE:{first}{end}"


def test_closures(tmp_path: Path) -> None:
    """Events of whole days whose words mean that school is closed become closures, in one piece across weekends; others do not."""
    calendar = calendar_of(
        with_files(
            tmp_path,
            [
                all_day("Winter Break", "20261221", "20270104"),
                all_day("Veterans Day - No School", "20261111"),
                all_day("Staff day\r\nCATEGORIES:NO SCHOOL", "20261012"),
                all_day("Breakfast with families", "20261013"),
                "SUMMARY:Spring break camp\r\nDTSTART:20261014T090000\r\nDTEND:20261014T120000",
                all_day("Picture day", "20261015"),
                all_day("No school (last year)", "20251015"),
            ],
        )
    )
    assert calendar.closures == (
        Closure(date(2026, 10, 12), date(2026, 10, 12), "Staff day"),
        Closure(date(2026, 11, 11), date(2026, 11, 11), "Veterans Day - No School"),
        Closure(date(2026, 12, 21), date(2027, 1, 1), "Winter Break"),
    )


def test_own_words_for_closures(tmp_path: Path) -> None:
    """`closed when` replaces the words that mean closed."""
    events = [all_day("Conferences", "20261012"), all_day("Fall Break", "20261013")]
    calendar = calendar_of(with_files(tmp_path, events, "        closed when: conferences\n"))
    assert [closure.reason for closure in calendar.closures] == ["Conferences"]


@pytest.mark.parametrize(
    ("summary", "means"),
    [
        ("Early Release", True), ("EARLY RELEASE - staff meeting", True), ("Early-release day", True),
        ("District early release schedule", True),
        ("Early release at 12:13", True), ("Not so early. Release of prices", False), ("Ask about early release forms", False),
    ],
)  # fmt: skip
def test_day_types(tmp_path: Path, summary: str, means: bool) -> None:
    """An event called after a day type gives its date that day type."""
    read = with_files(tmp_path, [all_day(summary, "20261013")])
    assert calendar_of(read).special == ({date(2026, 10, 13): SpecialDay("early_release")} if means else {})


def test_rotation_days(tmp_path: Path) -> None:
    """An event called A day or Day A sets the rotation day of its date, and nothing longer does."""
    more = "        rotation:\n          days: A, B\n"
    events = [all_day("B Day", "20260824"), all_day("Day A", "20260825"), all_day("A day at the zoo", "20260826")]
    calendar = calendar_of(with_files(tmp_path, events, more))
    assert calendar.special == {date(2026, 8, 24): SpecialDay("", "B"), date(2026, 8, 25): SpecialDay("", "A")}
    assert [day.rotation_day for day in school_days(calendar)[:4]] == ["B", "A", "B", "A"]


def test_the_file_of_the_school_outranks_them(tmp_path: Path) -> None:
    """A date under `days` is held whatever the district says, keeps its own day type, and takes only what it leaves open."""
    more = "        rotation:\n          days: A, B\n        days:\n          2026-10-13: regular\n          2026-10-14: B\n"
    events = [
        all_day("No school", "20261013", "20261015"),
        all_day("Early release", "20261013"),
        all_day("Early release", "20261014"),
        all_day("A day", "20261014"),
    ]
    calendar = calendar_of(with_files(tmp_path, events, more))
    assert calendar.closures == ()
    assert calendar.special == {date(2026, 10, 13): SpecialDay("regular"), date(2026, 10, 14): SpecialDay("early_release", "B")}


def test_a_closure_outranks_a_day_type(tmp_path: Path) -> None:
    """On a day that one event closes and another gives a day type, school is closed."""
    calendar = calendar_of(with_files(tmp_path, [all_day("Early release", "20261013"), all_day("No school", "20261013")]))
    assert calendar.special == {}
    assert [closure.first for closure in calendar.closures] == [date(2026, 10, 13)]


def test_weekends_are_not_opened(tmp_path: Path) -> None:
    """An event called after a day type does not make a school day of a Saturday."""
    calendar = calendar_of(with_files(tmp_path, [all_day("Early release", "20261017"), all_day("Early release", "20261016")]))
    assert calendar.special == {date(2026, 10, 16): SpecialDay("early_release")}


def test_what_was_read_is_told(tmp_path: Path) -> None:
    """A reader is told which days a file closes, and that a file says nothing."""
    read = with_files(tmp_path, [all_day("Winter Break", "20261221", "20270102"), all_day("Early release", "20261013")])
    assert [(p.code, p.severity.value, p.what) for p in read.problems] == [
        ("calendar-read", "advice", "10 days are closed and 1 day differs by this file: 2026-12-21 to 2027-01-01 Winter Break"),
    ]
    empty = with_files(tmp_path, [all_day("Game", "20261013")])
    assert [(p.code, p.severity.value) for p in empty.problems] == [("calendar-says-nothing", "warning")]


@pytest.mark.parametrize(
    ("content", "code"),
    [
        (b"", "file-empty"), (b"<html>", "not-a-calendar"), ("BEGIN:VCALENDAR".encode("utf-16"), "file-utf16"),
        (b"BEGIN:VCALENDAR\nX:\xe9", "file-not-utf8"),
        (b"PK\x03\x04\x00", "file-binary"), (b"BEGIN:VCALENDAR\n" + b"x" * 1024 * 1024, "file-too-large"),
    ],
    ids=["empty", "page", "utf-16", "latin-1", "binary", "large"],
)  # fmt: skip
def test_files_that_are_none(tmp_path: Path, content: bytes, code: str) -> None:
    """A file that is no calendar file stops the build with its reason, and the school is still read."""
    read = with_bytes(tmp_path, content)
    assert [(p.code, p.severity.value) for p in read.problems] == [(code, "error")]
    assert calendar_of(read).closures == ()


def test_a_link_is_not_followed(tmp_path: Path) -> None:
    """A link to a calendar file elsewhere is refused."""
    elsewhere = tmp_path / "elsewhere.ics"
    elsewhere.write_text("BEGIN:VCALENDAR\nEND:VCALENDAR\n")
    root = tmp_path / "project"
    with_files(root, [])
    (root / "school" / "district.ics").unlink()
    (root / "school" / "district.ics").symlink_to(elsewhere)
    assert "file-is-link" in [p.code for p in read_school(root).problems]


def test_a_large_file_is_read_in_a_moment(tmp_path: Path) -> None:
    """A file of the largest size, full of events that repeat without end, is read in a few seconds."""
    event = "SUMMARY:break\r\nDTSTART:19700101T000000\r\nDURATION:P1D\r\nRRULE:FREQ=SECONDLY;BYMONTH=2;BYMONTHDAY=30"
    count = 1024 * 1024 // (len(event) + 30) - 1
    began = stopwatch.perf_counter()
    read = with_files(tmp_path, [event] * count)
    assert stopwatch.perf_counter() - began < 8
    assert "file-too-large" not in {p.code for p in read.problems}


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(content=st.one_of(st.binary(max_size=300), st.binary(max_size=300).map(lambda tail: b"BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\n" + tail)))
def test_any_bytes(tmp_path: Path, content: bytes) -> None:
    """Whatever bytes a calendar file holds, the school is read."""
    assert calendar_of(with_bytes(tmp_path, content)).first == date(2026, 8, 24)
