"""Calendar files that calendar.yml names under `files`: what their events say about closures, day types and rotation days.

What stands in calendar.yml itself outranks them. Which words of an event mean that school is closed is common practice, no source,
and a department writes its own under `closed when`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

from trivet.model.problem import Place, Problem, Severity
from trivet.model.school import Calendar, Closure, DayType, SpecialDay
from trivet.reading.calendars.events import Faulty, read_events
from trivet.reading.calendars.expand import Dated, dated
from trivet.reading.school.days import is_closed
from trivet.reading.school.event_words import CLOSED_WHEN, EventWords
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.values import listed, spoken
from trivet.reading.source import Source, read_source

BYTES_MOST = 1024 * 1024
SHOWN = 4
REASON_MOST = 40
FIRST_LINE = "BEGIN:VCALENDAR"


@dataclass(frozen=True, slots=True)
class CalendarFiles:
    """The calendar with what its files add, what is wrong in them, and their texts by file."""

    calendar: Calendar
    problems: tuple[Problem, ...]
    sources: Mapping[str, str]


@dataclass(slots=True)
class _Found:
    """What the files say, by date, for a calendar in its zone. The first word on a date stands."""

    calendar: Calendar
    words: EventWords
    zone: ZoneInfo
    closed: dict[date, str] = field(default_factory=dict)
    day_types: dict[date, str] = field(default_factory=dict)
    letters: dict[date, str] = field(default_factory=dict)


def read_calendar_files(root: Path, sheet: Sheet, calendar: Calendar, bells: Mapping[str, DayType], zone: str) -> CalendarFiles:
    """Read the files named in calendar.yml and lay what they say under it; never raises on any content."""
    words = EventWords(listed(sheet.data.get("closed when")) or CLOSED_WHEN, bells, calendar)
    found, problems, sources = _Found(calendar, words, ZoneInfo(zone)), list[Problem](), dict[str, str]()
    for index, name in enumerate(sheet.data.get("files", [])):
        file = f"school/{name}"
        source = _source(root / "school" / name, file)
        sources[file] = source.text
        problems += _missing(source, sheet, index, name)
        if source.readable:
            problems += _read(source.text, file, found)
    return CalendarFiles(_under(found), tuple(problems), sources)


# files


def _source(path: Path, file: str) -> Source:
    """The text of a file; odd characters in it are no fault of the school."""
    try:
        too_large = path.lstat().st_size > BYTES_MOST
    except (OSError, ValueError):
        too_large = False  # what is wrong is said by the next line
    if too_large:
        what = f"this file is larger than {BYTES_MOST // 1024} KB"
        return Source("", (Problem("file-too-large", Severity.ERROR, Place(file), what, "export this school year alone"),), readable=False)
    source = read_source(path, file, BYTES_MOST)
    return replace(source, problems=()) if source.readable else source


def _missing(source: Source, sheet: Sheet, index: int, name: str) -> Iterator[Problem]:
    """A file that is not there is a fault of the line that names it."""
    for problem in source.problems:
        if problem.code == "file-missing":
            what = f"there is no file {name} in school/"
            yield sheet.error("file-missing", ("files", index), what, f"put {name} there, or take it out here")
        else:
            yield problem


def _read(text: str, file: str, found: _Found) -> Iterator[Problem]:
    if text.lstrip()[: len(FIRST_LINE)].upper() != FIRST_LINE:
        remedy = "export it again as iCalendar (.ics), and not as a page or a table"
        yield Problem("not-a-calendar", Severity.ERROR, Place(file), f"no calendar file: it does not begin with {FIRST_LINE}", remedy)
        return
    events = []
    for event in read_events(text):
        if isinstance(event, Faulty):
            yield _faulty(event, file)
        elif found.words.concern(event):
            events.append(event)
    before = _count(found)
    for one in dated(events, found.calendar.first, found.calendar.last, found.zone):
        if isinstance(one, Faulty):
            yield _faulty(one, file)
        else:
            yield from _take(one, file, found)
    yield _summary(file, before, found)


def _faulty(fault: Faulty, file: str) -> Problem:
    return Problem("calendar-event", Severity.WARNING, Place(file, fault.line), fault.what, fault.remedy)


def _count(found: _Found) -> tuple[int, int]:
    return len(found.closed), len({*found.day_types, *found.letters})


def _summary(file: str, before: tuple[int, int], found: _Found) -> Problem:
    closed, differ = (now - then for now, then in zip(_count(found), before, strict=True))
    if not closed and not differ:
        remedy = "write `closed when:` in calendar.yml with the words that its events use, such as no school, or take the file out"
        what = "no event of this file closes school or names a day type"
        return Problem("calendar-says-nothing", Severity.WARNING, Place(file), what, remedy)
    new = dict(list(found.closed.items())[before[0] :])
    named = [_named(closure) for closure in _stretches(new, found.calendar)]
    what = f"{say_days(closed, 'is closed', 'are closed')} and {say_days(differ, 'differs', 'differ')} by this file"
    if named:
        what += f": {'; '.join(named[:SHOWN])}" + (f"; and {len(named) - SHOWN} more" if len(named) > SHOWN else "")
    return Problem("calendar-read", Severity.ADVICE, Place(file), what, "where one is wrong, write that date under `days` in calendar.yml")


def say_days(count: int, one: str, many: str) -> str:
    """Return a count of days with its verb."""
    return f"1 day {one}" if count == 1 else f"{count} days {many}"


def _named(closure: Closure) -> str:
    days = f"{closure.first}" if closure.first == closure.last else f"{closure.first} to {closure.last}"
    reason = closure.reason if len(closure.reason) <= REASON_MOST else f"{closure.reason[: REASON_MOST - 3].rstrip()}..."
    return f"{days} {reason}".rstrip()


# what is laid under the calendar


def _take(one: Dated, file: str, found: _Found) -> Iterator[Problem]:
    calendar, words = found.calendar, found.words
    for offset in range((one.last - one.first).days + 1):
        day = one.first + timedelta(days=offset)
        if day.weekday() not in calendar.weekly or not calendar.first <= day <= calendar.last or is_closed(calendar, day):
            continue
        if words.closes(one.event):
            if day not in calendar.special:  # a date that calendar.yml names is held
                found.closed.setdefault(day, one.event.summary)
            continue
        own = calendar.special.get(day, SpecialDay())
        day_type, letter = words.day_type(one.event.summary), words.letter(one.event.summary)
        if day_type and not own.day_type:
            other = found.day_types.setdefault(day, day_type)
            if other != day_type:
                what = f"{day} is called {spoken(day_type)} here, and {spoken(other)} by an earlier event, which stands"
                remedy = f"write {day}: {spoken(day_type)} under `days` in calendar.yml, or {spoken(other)}"
                yield Problem("calendar-disagrees", Severity.WARNING, Place(file, one.event.line), what, remedy)
        if letter and not own.rotation_day:
            found.letters.setdefault(day, letter)


def _under(found: _Found) -> Calendar:
    """Return the calendar with what was found where it says nothing itself; a closure outranks a day type."""
    calendar = found.calendar
    special = dict(calendar.special)
    for day in sorted({*found.day_types, *found.letters} - set(found.closed)):
        own = special.get(day, SpecialDay())
        special[day] = SpecialDay(own.day_type or found.day_types.get(day, ""), own.rotation_day or found.letters.get(day, ""))
    return replace(calendar, closures=(*calendar.closures, *_stretches(found.closed, calendar)), special=special)


def _stretches(closed: Mapping[date, str], calendar: Calendar) -> tuple[Closure, ...]:
    """Put days of one reason that follow each other, with nothing but weekends between, into one closure."""
    stretches: list[Closure] = []
    for day in sorted(closed):
        last = stretches[-1] if stretches else None
        if last is not None and last.reason == closed[day] and _next_day(last.last, calendar) == day:
            stretches[-1] = replace(last, last=day)
        else:
            stretches.append(Closure(day, day, closed[day]))
    return tuple(stretches)


def _next_day(day: date, calendar: Calendar) -> date:
    """The next date whose weekday is one of school."""
    return next(each for offset in range(1, 8) if (each := day + timedelta(days=offset)).weekday() in calendar.weekly)
