"""Time zones of calendar files against the standard's example, published dates, and the zone's own table."""

from __future__ import annotations

import io
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from dateutil.tz import tzical

from trivet.pages.ical import component, file_of
from trivet.pages.time_zone import observances, time_zone_lines

FIRST, LAST = date(2026, 8, 24), date(2027, 6, 4)


def test_the_example_of_the_standard() -> None:
    """New York in 1998 and 1999 has the changes that RFC 5545 3.6.5 gives as its example."""
    lines = time_zone_lines("America/New_York", date(1998, 9, 1), date(1999, 6, 30))
    assert lines[0:2] == ["BEGIN:VTIMEZONE", "TZID:America/New_York"]
    standard = ["BEGIN:STANDARD", "DTSTART:19981025T020000", "TZOFFSETFROM:-0400", "TZOFFSETTO:-0500", "TZNAME:EST", "END:STANDARD"]
    daylight = ["BEGIN:DAYLIGHT", "DTSTART:19990404T020000", "TZOFFSETFROM:-0500", "TZOFFSETTO:-0400", "TZNAME:EDT", "END:DAYLIGHT"]
    assert lines[-13:] == [*standard, *daylight, "END:VTIMEZONE"]


def test_changes_of_the_demo_year() -> None:
    """In the United States clocks change on 2026-11-01 and 2027-03-14 (references of the design, 3.5)."""
    found = [(each.onset.isoformat(), each.name) for each in observances("America/Chicago", FIRST, LAST)]
    assert found == [("2026-03-08T02:00:00", "CDT"), ("2026-11-01T02:00:00", "CST"), ("2027-03-14T02:00:00", "CDT")]


def test_a_zone_that_never_changes() -> None:
    """A zone without summer time is told once, from before the school year on."""
    (only,) = observances("America/Phoenix", FIRST, LAST)
    assert (only.before, only.offset, only.name, only.summer) == (timedelta(hours=-7), timedelta(hours=-7), "MST", False)
    assert only.onset.date() < FIRST


@pytest.mark.parametrize(
    "zone",
    [
        "America/Chicago", "America/Phoenix", "America/St_Johns", "Europe/Berlin", "Europe/Dublin", "Africa/Casablanca",
        "Asia/Kathmandu", "Australia/Lord_Howe", "Pacific/Apia", "America/Nuuk", "UTC",
    ],
)  # fmt: skip
def test_another_reader_has_the_same_offsets(zone: str) -> None:
    """Read back with dateutil, every hour of the school year at which schools are open has the offset of the zone's own table."""
    lines = component("VCALENDAR", ["VERSION:2.0", "PRODID:-//T//T//EN", *time_zone_lines(zone, FIRST, LAST)])
    read = tzical(io.StringIO(file_of(lines).decode())).get()
    own = ZoneInfo(zone)
    for offset in range((LAST - FIRST).days + 1):
        for hour in (6, 12, 18):
            when = datetime.combine(FIRST + timedelta(days=offset), time(hour))
            assert when.replace(tzinfo=read).utcoffset() == when.replace(tzinfo=own).utcoffset(), (zone, when)


def test_seconds_of_an_offset() -> None:
    """Before standard time an offset had seconds, and they are written (RFC 5545 3.3.14)."""
    lines = time_zone_lines("Europe/Amsterdam", date(1936, 9, 1), date(1937, 6, 30))
    assert "TZOFFSETFROM:+001932" in lines or "TZOFFSETFROM:+011932" in lines


def test_what_holds_at_the_first_day_is_told() -> None:
    """The first change told lies before the first day at any time of the year."""
    for month in range(1, 13):
        first = date(2026, month, 1)
        assert observances("America/Chicago", first, first)[0].onset < datetime.combine(first, time())
    assert datetime(2026, 1, 1, tzinfo=UTC).utcoffset() == timedelta()
