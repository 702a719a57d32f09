"""Lines and events of calendar files, held against another reader, and against anything at all."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import icalendar
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.pages.ical import folded
from trivet.pages.ical import text as escaped
from trivet.reading.calendars.events import Event, Faulty, read_events
from trivet.reading.calendars.expand import Dated, dated
from trivet.reading.calendars.lines import content_lines, plain_text

CHICAGO = ZoneInfo("America/Chicago")


def event(*lines: str) -> str:
    return "\n".join(["BEGIN:VEVENT", *lines, "END:VEVENT", ""])


def one(*lines: str) -> Event:
    (found,) = read_events("BEGIN:VCALENDAR\n" + event(*lines))
    assert isinstance(found, Event)
    return found


def dates(text: str, first: date = date(2026, 8, 24), last: date = date(2027, 6, 4)) -> list[str]:
    events = [each for each in read_events(text) if isinstance(each, Event)]
    found = [each for each in dated(events, first, last, CHICAGO) if isinstance(each, Dated)]
    return [f"{each.first}" if each.first == each.last else f"{each.first} to {each.last}" for each in found]


def doubts(text: str) -> list[str]:
    events = [each for each in read_events(text) if isinstance(each, Event)]
    return [each.what for each in dated(events, date(1997, 1, 1), date(1998, 12, 31), CHICAGO) if isinstance(each, Faulty)]


def test_lines() -> None:
    """A line has a name, parameters (also in quotes, with a colon inside) and a value, and its number in the file."""
    found = list(content_lines('A:1\nDTSTART;TZID="Odd: zone";X=1,2:2026\n 0824\n\nno line\n'))
    assert [(line.name, line.value, line.number) for line in found] == [("A", "1", 1), ("DTSTART", "20260824", 2), ("", "no line", 5)]
    assert found[1].parameters == {"TZID": "Odd: zone", "X": "1,2"}


@settings(max_examples=80)
@given(said=st.text(st.characters(exclude_categories=("Cs", "Cc")), max_size=200))
def test_texts_are_read_as_they_were_written(said: str) -> None:
    """A text written by our own writer, escaped and folded, is read back; blanks are made single."""
    (line,) = content_lines(folded(f"SUMMARY:{escaped(said)}").replace("\r\n", "\n"))
    assert plain_text(line.value) == " ".join(said.split())


@pytest.mark.parametrize(
    "lines",
    [
        ("DTSTART;VALUE=DATE:20261125",),
        ("DTSTART;VALUE=DATE:20261125", "DTEND;VALUE=DATE:20261128"),
        ("DTSTART;VALUE=DATE:20261125", "DURATION:P3D"),
        ("DTSTART;TZID=America/Chicago:20261125T080500", "DTEND;TZID=America/Chicago:20261125T085700"),
        ("DTSTART:20261125T140500Z", "DURATION:PT1H30M"),
        ("DTSTART:20261125T080500", "DURATION:P1W"),
    ],
)
def test_begin_and_length_are_those_of_another_reader(lines: tuple[str, ...]) -> None:
    """Where an event begins and how long it lasts is what the icalendar package reads."""
    theirs: Any = icalendar.Event.from_ical(event(*lines).replace("\n", "\r\n"))
    ours = one(*lines)
    start, end = theirs.start, theirs.end
    begins = start.replace(tzinfo=None) if isinstance(start, datetime) else datetime.combine(start, datetime.min.time())
    assert ours.start.at == begins
    assert ours.start.all_day == (not isinstance(start, datetime))
    assert ours.length == end - start


def test_whole_days() -> None:
    """A date lasts its day, an end is not included, and midnight to midnight is whole days as well."""
    assert dates(event("DTSTART;VALUE=DATE:20261125")) == ["2026-11-25"]
    assert dates(event("DTSTART;VALUE=DATE:20261125", "DTEND;VALUE=DATE:20261128")) == ["2026-11-25 to 2026-11-27"]
    midnight = ("DTSTART;TZID=America/Chicago:20261125T000000", "DTEND;TZID=America/Chicago:20261127T000000")
    assert dates(event(*midnight)) == ["2026-11-25 to 2026-11-26"]
    assert one(*midnight).whole_days
    assert not one("DTSTART:20261125T000000").whole_days
    assert dates(event("DTSTART;VALUE=DATE:20270603", "DTEND;VALUE=DATE:20270610")) == ["2027-06-03 to 2027-06-09"]


def test_times_elsewhere_are_dates_here() -> None:
    """A time in UTC or in another zone falls on the school's own date, and a named zone nobody knows is the school's."""
    assert dates(event("DTSTART:20261126T030000Z")) == ["2026-11-25"]
    assert dates(event("DTSTART;TZID=Asia/Tokyo:20261126T080000")) == ["2026-11-25"]
    assert dates(event("DTSTART;TZID=Central Standard Time:20261125T230000")) == ["2026-11-25"]


def test_a_repeat_keeps_its_local_time() -> None:
    """A weekly event at 19:30 in Chicago stays on its weekday when the clock changes, though it moves in UTC (RFC 5545 3.8.5.3)."""
    text = event("DTSTART;TZID=America/Chicago:20261027T193000", "RRULE:FREQ=WEEKLY;COUNT=3")
    assert dates(text) == ["2026-10-27", "2026-11-03", "2026-11-10"]
    in_utc = event("DTSTART:20261028T043000Z", "RRULE:FREQ=WEEKLY;COUNT=3")  # 23:30 local, and 22:30 after the change
    assert dates(in_utc) == ["2026-10-27", "2026-11-03", "2026-11-10"]


def test_what_an_event_lasts_is_read_by_the_clock() -> None:
    """A day stays a day when the clock changes, whether it is written as one day, as 24 hours or by its end.

    By RFC 5545 3.8.5.3 a duration in days is nominal, while an end gives repeats the same exact duration, so that on 2027-03-14 they
    would spill an hour into the next day. Nobody who writes a day without school means that, so the clock is followed for all three.
    """
    start = "DTSTART;TZID=America/Chicago:20270307T000000"
    for length in ("DURATION:P1D", "DURATION:PT24H", "DTEND;TZID=America/Chicago:20270308T000000"):
        assert dates(event(start, length, "RRULE:FREQ=WEEKLY;COUNT=3")) == ["2027-03-07", "2027-03-14", "2027-03-21"]


def test_dates_added_taken_out_and_replaced() -> None:
    """RDATE adds, EXDATE takes out, an event with RECURRENCE-ID stands in for one of its series, a cancelled one for none."""
    series = event(
        "UID:1", "DTSTART;VALUE=DATE:20260904", "RRULE:FREQ=WEEKLY;COUNT=5", "EXDATE;VALUE=DATE:20260911", "RDATE;VALUE=DATE:20260910"
    )
    moved = event("UID:1", "RECURRENCE-ID;VALUE=DATE:20260918", "DTSTART;VALUE=DATE:20260917")
    gone = event("UID:1", "RECURRENCE-ID;VALUE=DATE:20260925", "DTSTART;VALUE=DATE:20260925", "STATUS:CANCELLED")
    assert dates(series + moved + gone) == ["2026-09-04", "2026-09-10", "2026-10-02", "2026-09-17"]


def test_doubts_are_told() -> None:
    """A first date out of step and an end in UTC that reads otherwise in local time are told; an excluded first date is not."""
    out = event("DTSTART;TZID=America/New_York:19970902T090000", "RRULE:FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13")
    (said,) = doubts(out)
    assert said == "this event begins on 1997-09-02, where its own rule does not fall; that day was counted too"
    excluded = event(
        "DTSTART;TZID=America/New_York:19970902T090000", "EXDATE;TZID=America/New_York:19970902T090000",
        "RRULE:FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13",
    )  # fmt: skip
    assert doubts(excluded) == []
    hourly = "RRULE:FREQ=HOURLY;INTERVAL=3;UNTIL=19970902T170000Z"
    (said,) = doubts(event("DTSTART;TZID=America/New_York:19970902T090000", hourly))
    assert said.startswith("this event repeats until 17:00 UTC, which is 13:00 here")
    daily = "RRULE:FREQ=DAILY;UNTIL=19971224T000000Z"
    assert doubts(event("DTSTART;TZID=America/New_York:19970902T090000", daily)) == []


def test_what_cannot_be_read_has_its_line() -> None:
    """An event without a readable beginning is told by the line of it, and the events around it stand."""
    good = event("DTSTART:20261125T080000")
    text = good + event("SUMMARY:No school", "DTSTART:tomorrow") + event("SUMMARY:No date") + good
    found = list(read_events(text))
    assert [each.line for each in found if isinstance(each, Faulty)] == [6, 8]
    assert sum(isinstance(each, Event) for each in found) == 2


def test_alarms_and_zones_are_no_events() -> None:
    """What lies inside an event, or beside it, does not speak for it."""
    text = event("DTSTART:20261125T080000", "BEGIN:VALARM", "SUMMARY:Ring", "TRIGGER:-PT15M", "END:VALARM", "SUMMARY:No school")
    (found,) = read_events("BEGIN:VJOURNAL\nSUMMARY:x\nDTSTART:20260101\nEND:VJOURNAL\n" + text)
    assert isinstance(found, Event) and found.summary == "No school"


NAMES = st.sampled_from(
    ["BEGIN:VCALENDAR", "BEGIN:VEVENT", "END:VEVENT", "BEGIN:VALARM", "END:VALARM", "END:VCALENDAR", "RRULE:FREQ=DAILY;COUNT=3",
     "DTSTART:20260901", "DTSTART;TZID=x:20260901T080000", "DTEND:19000101", "DURATION:P99999D", "EXDATE:20260901,x", "RECURRENCE-ID:2026",
     "RDATE;VALUE=PERIOD:20260901T080000/PT1H", "SUMMARY:no school", "STATUS:CANCELLED", " folded", ";=:",
     "DTSTART;TZID=../x:20260901T080000"]
)  # fmt: skip


@settings(max_examples=200, deadline=None)
@given(lines=st.lists(st.one_of(NAMES, st.text(max_size=40)), max_size=40))
def test_anything_is_read_without_a_fault_of_ours(lines: list[str]) -> None:
    """Whatever stands in a file, reading it and following its repeats raises nothing."""
    events = [each for each in read_events("\n".join(lines)) if isinstance(each, Event)]
    for found in dated(events, date(2026, 8, 24), date(2027, 6, 4), CHICAGO):
        if isinstance(found, Dated):
            assert found.first <= found.last <= found.first + timedelta(days=401)
