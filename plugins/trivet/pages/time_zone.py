"""A time zone as a calendar file describes it: each change of the clock of the school year, one by one."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from trivet.pages.ical import component

_STEP = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Observance:
    """What clocks show from `onset` on, the local time at which they change by the old offset (RFC 5545 3.6.5)."""

    onset: datetime
    before: timedelta
    offset: timedelta
    name: str
    summer: bool


def time_zone_lines(zone: str, first: date, last: date) -> list[str]:
    """Return the VTIMEZONE of `zone` that holds from `first` to `last`."""
    parts = [line for each in observances(zone, first, last) for line in _lines(each)]
    return component("VTIMEZONE", [f"TZID:{zone}", *parts])


def observances(zone: str, first: date, last: date) -> tuple[Observance, ...]:
    """Return what clocks show at the start of `first`, and each change up to the end of `last`, in order.

    What holds at `first` is told by the change before it, else, where there is none in the year before, from that year's beginning on.
    """
    info = ZoneInfo(zone)
    begin = datetime.combine(date(first.year - 1, 1, 1), time(), UTC)
    end = datetime.combine(last, time(), UTC) + 2 * _STEP
    changes = [_observance(info, change) for change in _changes(info, begin, end)]
    start = datetime.combine(first, time(), info).replace(tzinfo=None)
    earlier = [each for each in changes if each.onset <= start]
    if earlier:
        return (earlier[-1], *(each for each in changes if each.onset > start))
    here = begin.astimezone(info)
    offset = _offset(info, begin)
    return (Observance(here.replace(tzinfo=None), offset, offset, here.tzname() or zone, bool(here.dst())), *changes)


def _changes(info: ZoneInfo, begin: datetime, end: datetime) -> Iterator[datetime]:
    """Yield the first second (UTC) of each stretch with another offset or name."""
    at = begin
    while at < end:
        after = at + _STEP
        if _shown(info, at) != _shown(info, after):
            low, high = at, after
            while high - low > timedelta(seconds=1):
                middle = low + timedelta(seconds=int((high - low).total_seconds()) // 2)
                low, high = (middle, high) if _shown(info, middle) == _shown(info, low) else (low, middle)
            yield high
        at = after


def _shown(info: ZoneInfo, at: datetime) -> tuple[timedelta | None, str | None]:
    here = at.astimezone(info)
    return here.utcoffset(), here.tzname()


def _observance(info: ZoneInfo, change: datetime) -> Observance:
    before, offset, here = _offset(info, change - timedelta(seconds=1)), _offset(info, change), change.astimezone(info)
    return Observance((change + before).replace(tzinfo=None), before, offset, here.tzname() or "", bool(here.dst()))


def _offset(info: ZoneInfo, at: datetime) -> timedelta:
    return at.astimezone(info).utcoffset() or timedelta()


def _lines(each: Observance) -> list[str]:
    return component(
        "DAYLIGHT" if each.summer else "STANDARD",
        [
            f"DTSTART:{each.onset:%Y%m%dT%H%M%S}",
            f"TZOFFSETFROM:{_signed(each.before)}",
            f"TZOFFSETTO:{_signed(each.offset)}",
            f"TZNAME:{each.name}",
        ],
    )


def _signed(offset: timedelta) -> str:
    """Return an offset as +HHMM, with seconds where it has some."""
    seconds = int(offset.total_seconds())
    hours, rest = divmod(abs(seconds), 3600)
    minutes, left = divmod(rest, 60)
    return f"{'-' if seconds < 0 else '+'}{hours:02d}{minutes:02d}{f'{left:02d}' if left else ''}"
