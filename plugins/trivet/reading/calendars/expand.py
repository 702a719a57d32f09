"""The local dates of all events of a file: repeats, dates added and taken out, single ones replaced (RFC 5545 3.8.4.4, 3.8.5)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from trivet.reading.calendars.events import Event, Faulty, Moment, in_clock_of, in_school_time, moment
from trivet.reading.calendars.repeats import Budget, repeats

MOST_STEPS_A_FILE = 400_000
MOST_DAYS = 400
"""An event of more days counts for its first ones."""


@dataclass(frozen=True, slots=True)
class Dated:
    """One occurrence of an event: its local dates, first and last included."""

    event: Event
    first: date
    last: date


def dated(events: Sequence[Event], first: date, last: date, school: ZoneInfo) -> Iterator[Dated | Faulty]:
    """Yield the occurrences that touch the dates from `first` to `last`, and what is doubtful about repeats; cancelled ones left out."""
    replaced = {(event.uid, in_school_time(event.replaces, school)) for event in events if event.replaces is not None}
    budget = Budget(MOST_STEPS_A_FILE)
    for event in events:
        for found in _occurrences(event, first, last, school, budget):
            if isinstance(found, Faulty):
                yield found
                continue
            at = in_school_time(found, school)
            if event.replaces is None and (event.uid, at) in replaced:
                continue
            one = _days(event, at)
            if not event.cancelled and one.first <= last and first <= one.last:
                yield one


def _days(event: Event, at: datetime) -> Dated:
    """An end at midnight belongs to the day before it."""
    length = min(event.length, timedelta(days=MOST_DAYS))
    end = at + length - timedelta(seconds=1) if length else at
    return Dated(event, at.date(), max(at, end).date())


def _occurrences(event: Event, first: date, last: date, school: ZoneInfo, budget: Budget) -> Iterator[Moment | Faulty]:
    start = event.start
    without = {in_clock_of(each, start, school) for each in event.but_not if not each.all_day}
    without_days = {each.at.date() for each in event.but_not if each.all_day}

    def stays(at: datetime) -> bool:
        return at not in without and at.date() not in without_days

    found = [start.at]
    if event.rule is not None and event.replaces is None:
        end = datetime.combine(last + timedelta(days=1), time())
        since = first - timedelta(days=min(MOST_DAYS, event.length.days + 2))
        until = _until(event, school)
        if event.rule.until and until is None:
            yield Faulty(event.rule_line, f"when this event ends to repeat can't be read: {event.rule.until[:40]}", _REMEDY)
        repeated = repeats(start.at, event.rule, end, since=since, until=until, budget=budget)
        found = list(repeated.times)
        yield from _doubts(event, school, stays(start.at) and not repeated.in_step, whole=repeated.whole, until=until, end=end)
    found += [in_clock_of(each, start, school) for each in event.also]
    for at in dict.fromkeys(sorted(found)):
        if stays(at):
            yield Moment(at, start.all_day, start.zone)


_REMEDY = "compare the dates, and write those that differ under `closures` or `days`"


def _until(event: Event, school: ZoneInfo) -> datetime | None:
    """The end of a rule by the event's own clock: a date holds to its end, a time in UTC is converted."""
    if event.rule is None or not event.rule.until:
        return None
    read = moment(event.rule.until, None)
    if read is None:
        return None
    if read.all_day or event.start.all_day:
        return datetime.combine(read.at.date(), time(23, 59, 59))
    return in_clock_of(read, event.start, school)


def _doubts(event: Event, school: ZoneInfo, out_of_step: bool, *, whole: bool, until: datetime | None, end: datetime) -> Iterator[Faulty]:
    rule = event.rule
    if rule is None:
        return
    if out_of_step:
        what = f"this event begins on {event.start.at.date()}, where its own rule does not fall; that day was counted too"
        yield Faulty(event.rule_line, what, _REMEDY)
    if not whole:
        yield Faulty(event.rule_line, "this event repeats too often to be followed to its end", _REMEDY)
    read = moment(rule.until, None) if rule.until else None
    if read is not None and until is not None and read.zone is not None and read.at != until and not event.start.all_day:
        # The standard's own example ends at 17:00 UTC and lists a time that only 17:00 local would hold (RFC 5545 3.8.5.3, p. 131).
        low, high = sorted((until, read.at))
        between = [at for at in repeats(event.start.at, rule, min(high, end), since=low.date(), until=high).times if low < at <= high]
        if between:
            what = f"this event repeats until {read.at:%H:%M} UTC, which is {until:%H:%M} here; by local time it would fall on other hours"
            yield Faulty(event.rule_line, what, _REMEDY)
