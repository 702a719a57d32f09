"""Events of a calendar file: what they are called and on which local dates they fall (RFC 5545 3.6.1)."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from trivet.reading.calendars.lines import Line, content_lines, plain_text
from trivet.reading.calendars.rules import Rule, read_rule
from trivet.reading.forms import Unreadable

FIRST_YEAR, LAST_YEAR = 1900, 2199

_MOMENT = re.compile(r"([0-9]{4})([0-9]{2})([0-9]{2})(?:T([0-9]{2})([0-9]{2})([0-9]{2})(Z?))?")
_DURATION = re.compile(r"\+?P(?:([0-9]{1,4})W)?(?:([0-9]{1,5})D)?(?:T(?:([0-9]{1,5})H)?(?:([0-9]{1,6})M)?(?:([0-9]{1,7})S)?)?")


@dataclass(frozen=True, slots=True)
class Moment:
    """A date, or a clock time of one: `at` is local to the zone it was written in, `zone` None where that is the school's own."""

    at: datetime
    all_day: bool
    zone: ZoneInfo | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """One VEVENT. `line` is where it begins, `rule_line` where its rule stands. `length` is what it lasts, as written on the clock."""

    line: int
    rule_line: int
    summary: str
    categories: tuple[str, ...]
    uid: str
    start: Moment
    length: timedelta
    rule: Rule | None = None
    also: tuple[Moment, ...] = ()
    but_not: tuple[Moment, ...] = ()
    replaces: Moment | None = None
    cancelled: bool = False

    @property
    def whole_days(self) -> bool:
        """Whether it lasts from midnight to midnight."""
        return self.start.all_day or (self.start.at.time() == time() and self.length > timedelta() and not self.length % timedelta(days=1))


@dataclass(frozen=True, slots=True)
class Faulty:
    """An event, or a part of one, that can't be read."""

    line: int
    what: str
    remedy: str


@dataclass(slots=True)
class _Raw:
    line: int
    lines: list[Line] = field(default_factory=list)


def read_events(text: str) -> Iterator[Event | Faulty]:
    """Yield the events of a calendar file in order; never raises."""
    for raw in _components(text):
        yield from _event(raw)


def _components(text: str) -> Iterator[_Raw]:
    """Yield each VEVENT with its own lines; what lies deeper (alarms) and outside (zones, to-dos) is left out."""
    open_components: list[str] = []
    raw: _Raw | None = None
    depth = 0
    for line in content_lines(text):
        name = line.value.strip().upper()
        if line.name == "BEGIN":
            open_components.append(name)
            if name == "VEVENT" and raw is None:
                raw, depth = _Raw(line.number), len(open_components)
        elif line.name == "END":
            if raw is not None and len(open_components) <= depth:
                yield raw
                raw = None
            if open_components:
                open_components.pop()
        elif raw is not None and len(open_components) == depth:
            raw.lines.append(line)
    if raw is not None:
        yield raw


def _event(raw: _Raw) -> Iterator[Event | Faulty]:
    by_name: dict[str, list[Line]] = {}
    for line in raw.lines:
        by_name.setdefault(line.name, []).append(line)
    one = {name: lines[0] for name, lines in by_name.items()}
    start = _moment(one["DTSTART"]) if "DTSTART" in one else None
    if start is None:
        at = one["DTSTART"].number if "DTSTART" in one else raw.line
        yield Faulty(at, "it can't be read when this event begins", "write its dates under `closures` or `days`")
        return
    rule = read_rule(one["RRULE"].value) if "RRULE" in one else None
    if isinstance(rule, Unreadable):
        yield Faulty(one["RRULE"].number, rule.what, rule.remedy)
        rule = None
    yield Event(
        line=raw.line,
        rule_line=one["RRULE"].number if "RRULE" in one else raw.line,
        summary=plain_text(one["SUMMARY"].value) if "SUMMARY" in one else "",
        categories=tuple(plain_text(each) for line in by_name.get("CATEGORIES", ()) for each in line.value.split(",")),
        uid=one["UID"].value.strip() if "UID" in one else "",
        start=start,
        length=_length(one, start),
        rule=rule,
        also=_moments(by_name.get("RDATE", ())),
        but_not=_moments(by_name.get("EXDATE", ())),
        replaces=_moment(one["RECURRENCE-ID"]) if "RECURRENCE-ID" in one else None,
        cancelled="STATUS" in one and one["STATUS"].value.strip().upper() == "CANCELLED",
    )


def _length(one: dict[str, Line], start: Moment) -> timedelta:
    """What an event lasts; without an end a date lasts its day and a time no time."""
    end = _moment(one["DTEND"]) if "DTEND" in one else None
    if end is not None and end.all_day == start.all_day:
        return max(timedelta(), _in_zone(end, start.zone) - start.at)
    if "DURATION" in one and (found := _DURATION.fullmatch(one["DURATION"].value.strip())):
        weeks, days, hours, minutes, seconds = (int(each or 0) for each in found.groups())
        return timedelta(weeks=weeks, days=days, hours=hours, minutes=minutes, seconds=seconds)
    return timedelta(days=1) if start.all_day else timedelta()


def _moments(lines: Sequence[Line]) -> tuple[Moment, ...]:
    """The dates of lists; a period counts by its beginning."""
    found = (_moment(line, each.partition("/")[0]) for line in lines for each in line.value.split(","))
    return tuple(each for each in found if each is not None)


def _moment(line: Line, value: str = "") -> Moment | None:
    zone = _zone(line.parameters.get("TZID", ""))
    return moment(value or line.value, zone)


def moment(text: str, zone: ZoneInfo | None) -> Moment | None:
    """Read 19970902, 19970902T090000 or 19970902T170000Z, None where it is none of them or lies outside 1900 to 2199."""
    found = _MOMENT.fullmatch(text.strip())
    if found is None or not FIRST_YEAR <= int(found[1]) <= LAST_YEAR:
        return None
    try:
        day = date(int(found[1]), int(found[2]), int(found[3]))
        if found[4] is None:
            return Moment(datetime.combine(day, time()), all_day=True)
        second = min(59, int(found[6]))  # a leap second
        at = datetime.combine(day, time(int(found[4]), int(found[5]), second))
    except ValueError:
        return None
    return Moment(at, all_day=False, zone=ZoneInfo("UTC") if found[7] else zone)


def _zone(name: str) -> ZoneInfo | None:
    """The zone of this name; a name that nobody else knows is the school's own."""
    if not name:
        return None
    try:
        return ZoneInfo(name)
    except (LookupError, ValueError, OSError):
        return None


def _in_zone(each: Moment, zone: ZoneInfo | None) -> datetime:
    """The clock time of a moment in another zone; unknown zones are taken for the same."""
    if each.zone is None or zone is None or each.all_day or each.zone is zone:
        return each.at
    return each.at.replace(tzinfo=each.zone).astimezone(UTC).astimezone(zone).replace(tzinfo=None)


def in_school_time(each: Moment, school: ZoneInfo) -> datetime:
    """Return the clock time of a moment at the school."""
    return _in_zone(each, school) if each.zone is not None else each.at


def in_clock_of(each: Moment, event: Moment, school: ZoneInfo) -> datetime:
    """Return the clock time of a moment by the clock in which an event is written."""
    return _in_zone(each, event.zone or school)
