"""Clock times and dates: `8:05-8:57`, `2026-11-30`, `2026-11-25 to 2026-11-27, fall break`."""

from __future__ import annotations

import calendar
import re
from datetime import date, time

from trivet.model.school import Closure, Term
from trivet.reading.forms.unreadable import DASH, Unreadable, instead, said

DATE = r"20[0-9]{2}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])"
DATE_PATTERN = rf"^({DATE})$"
DATE_RANGE_PATTERN = rf"^({DATE})(?:\s+(?:to|{DASH})\s+({DATE}))?(?:\s*,\s*(\S.*))?$"
TERM_PATTERN = rf"^([^,\s](?:[^,]*[^,\s])?)\s*,\s*({DATE})\s+(?:to|{DASH})\s+({DATE})$"
CLOCK = r"(?:[01]?[0-9]|2[0-3]):[0-5][0-9]"
CLOCK_RANGE_PATTERN = rf"^({CLOCK})\s*(?:{DASH}|to)\s*({CLOCK})$"

FIRST_BELL = time(6, 0)
"""An earlier bell is an afternoon time written without its 12 hours (common practice, no source)."""

_MONTHS = {name.lower(): number for number, name in enumerate(calendar.month_abbr) if name}
_LOOSE_DATE = re.compile(
    r"(?P<y>20\d\d)[-/. ](?P<m>\d{1,2})[-/. ](?P<d>\d{1,2})|(?P<m2>\d{1,2})[-/.](?P<d2>\d{1,2})[-/.](?P<y2>(?:20)?\d\d)|"
    r"(?P<name>[A-Za-z]{3,9})\.? (?P<d3>\d{1,2})(?:st|nd|rd|th)?,? (?P<y3>20\d\d)|"
    r"(?P<d4>\d{1,2})\.? (?P<name2>[A-Za-z]{3,9})\.?,? (?P<y4>20\d\d)"
)
_LOOSE_CLOCK = re.compile(r"(?<!\d)(\d{1,2})(?:[:.h]?([0-5]\d))?\s*([ap])?\.?(?:m\b\.?)?", re.IGNORECASE)


def date_of(value: object) -> date | Unreadable:
    """Read a date between 2000 and 2099: `2026-11-30`."""
    text = said(value)
    if re.fullmatch(DATE, text):
        return _real(text)
    return _date_slip(text)


def date_range(value: object) -> Closure | Unreadable:
    """Read one day or a stretch of days with what they are called, which may be left out: `2026-11-25 to 2026-11-27, fall break`."""
    text = said(value)
    found = re.fullmatch(DATE_RANGE_PATTERN[1:-1], text)
    if found is None:
        return _range_slip(text)
    last = found[2] or found[1]
    days = _two(found[1], last)
    if isinstance(days, Unreadable):
        first, last = (_nearest(each) for each in (found[1], last))
        return instead(days.what, _days(first, last, found[3]))
    if days[0] > days[1]:
        return instead(f"the last day stands before the first: {text}", _days(last, found[1], found[3]))
    return Closure(*days, found[3] or "")


def term(value: object) -> Term | Unreadable:
    """Read a stretch of the school year with its name in front: `Fall, 2026-08-24 to 2027-01-15`."""
    text = said(value)
    found = re.fullmatch(TERM_PATTERN[1:-1], text)
    if found is None:
        dates = [each for each in map(_iso, _LOOSE_DATE.finditer(text)) if each]
        name = re.split(r"[,:]|\d{1,4}[-/]", text)[0].strip() or "Fall"
        first, last = (*dates, "2026-08-24", "2027-01-15")[:2] if len(dates) > 1 else ("2026-08-24", "2027-01-15")
        return instead(f"this term can't be read: {text}", f"{name}, {first} to {last}")
    days = _two(found[2], found[3])
    if isinstance(days, Unreadable):
        return instead(days.what, f"{found[1]}, {_nearest(found[2])} to {_nearest(found[3])}")
    if days[0] > days[1]:
        return instead(f"the last day stands before the first: {text}", f"{found[1]}, {found[3]} to {found[2]}")
    return Term(found[1], *days)


def clock_range(value: object) -> tuple[time, time] | Unreadable:
    """Read when a period starts and ends, on the 24-hour clock: `8:05-8:57`."""
    text = said(value)
    found = re.fullmatch(CLOCK_RANGE_PATTERN[1:-1], text)
    if found is None:
        return _clock_slip(text)
    start, end = _clock(found[1]), _clock(found[2])
    if start < FIRST_BELL or end <= start:
        later = [_afternoon(each) if each < FIRST_BELL else each for each in (start, end)]
        if later[1] > later[0]:
            return instead(f"hours after noon go on counting, 1:05 in the afternoon is 13:05: {text}", _range(*later))
        if later[1] < later[0]:
            return instead(f"this period ends before it starts: {text}", _range(later[1], later[0]))
        return Unreadable(f"this period ends when it starts: {text}", "write when it starts and ends, as in 8:05-8:57")
    return start, end


# dates


def _real(text: str) -> date | Unreadable:
    year, month, day = (int(part) for part in text.split("-"))
    days = calendar.monthrange(year, month)[1]
    if day > days:
        return instead(f"{calendar.month_name[month]} {year} has {days} days", f"{year}-{month:02d}-{days:02d}")
    return date(year, month, day)


def _two(first: str, last: str) -> tuple[date, date] | Unreadable:
    start, end = _real(first), _real(last)
    if isinstance(start, Unreadable):
        return start
    return end if isinstance(end, Unreadable) else (start, end)


def _nearest(text: str) -> str:
    real = _real(text)
    return real.corrected if isinstance(real, Unreadable) else text


def _days(first: str, last: str, words: str | None) -> str:
    """The stretch from `first` to `last`, one day where they are the same."""
    days = first if first == last else f"{first} to {last}"
    return f"{days}, {words}" if words else days


def _iso(found: re.Match[str]) -> str:
    """The date that a loose one means, month before day as in the US; "" if there is no such month."""
    year = found["y"] or found["y2"] or found["y3"] or found["y4"]
    day = int(found["d"] or found["d2"] or found["d3"] or found["d4"])
    name = found["name"] or found["name2"]
    month = _MONTHS.get(name[:3].lower(), 0) if name else int(found["m"] or found["m2"])
    if month > 12 >= day:
        month, day = day, month
    return f"{2000 + int(year) % 100}-{month:02d}-{day:02d}" if 1 <= month <= 12 and 1 <= day <= 31 else ""


def _date_slip(text: str) -> Unreadable:
    stretch = re.fullmatch(DATE_RANGE_PATTERN[1:-1], text)
    if stretch and stretch[2] and stretch[1] < stretch[2]:
        remedy = f"write {stretch[1]}; where more days count, each of them stands on a line of its own"
        return Unreadable(f"one date is asked for, and this is a stretch of days: {text}", remedy, stretch[1])
    loose = _LOOSE_DATE.search(text)
    iso = _iso(loose) if loose else ""
    real = _real(iso) if iso else None
    if isinstance(real, Unreadable):
        return real
    if iso:
        return instead(f"this date can't be read: {text}", iso)
    example = "write year, month and day, as in 2026-11-30"
    return Unreadable(f"this date can't be read: {text}" if text else "the date is missing", example)


def _range_slip(text: str) -> Unreadable:
    found = [(each, _iso(each)) for each in _LOOSE_DATE.finditer(text)]
    dates = [(each, iso) for each, iso in found if iso and not isinstance(_real(iso), Unreadable)][:2]
    what = f"these days can't be read: {text}" if text else "the days are missing"
    if not dates:
        return Unreadable(what, "write 2026-09-07, Labor Day, or 2026-11-25 to 2026-11-27, fall break")
    words = (text[: dates[0][0].start()] + " " + text[dates[-1][0].end() :]).strip(" ,;:()-–—")
    isos = sorted(iso for _, iso in dates)
    return instead(what, _days(isos[0], isos[-1], words))


# clock


def _clock(text: str) -> time:
    hour, minute = text.split(":")
    return time(int(hour), int(minute))


def _minutes(each: time) -> int:
    return each.hour * 60 + each.minute


def _afternoon(each: time) -> time:
    return each.replace(hour=each.hour + 12)


def _range(start: time, end: time) -> str:
    return f"{start.hour}:{start.minute:02d}-{end.hour}:{end.minute:02d}"


def _clock_slip(text: str) -> Unreadable:
    what = f"these times can't be read: {text}" if text else "the times are missing"
    times = []
    halves = [each[3] for each in _LOOSE_CLOCK.finditer(text)]
    for each in _LOOSE_CLOCK.finditer(text):
        hour, minute = int(each[1]), int(each[2] or 0)
        half = (each[3] or (halves[-1] if halves and hour < 12 and hour >= 7 and halves[-1] == "a" else "") or "").lower()
        if hour > 23:
            break
        if half == "p" and hour < 12:
            hour += 12
        start = time(hour, minute)
        times.append(_afternoon(start) if start < FIRST_BELL and half != "a" else start)
    if len(times) == 4 and FIRST_BELL <= times[0] < times[1] <= times[2] < times[3]:
        longer = max((times[0], times[1]), (times[2], times[3]), key=lambda part: _minutes(part[1]) - _minutes(part[0]))
        return instead(
            f"a period goes on from its start to its end, and no round goes over lunch; its longer part counts: {text}", _range(*longer)
        )
    if len(times) == 2 and FIRST_BELL <= times[0] < times[1]:
        return instead(what, _range(times[0], times[1]))
    return Unreadable(what, "write when it starts and ends, as in 8:05-8:57")
