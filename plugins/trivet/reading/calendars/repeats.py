"""On which dates and times a rule falls, from the first one to a last date (RFC 5545 3.3.10, 3.8.5.3).

The steps are bounded: a rule whose days never come (30 February) ends at the last date asked for, and so does one without an end.
"""

from __future__ import annotations

import calendar
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from itertools import count, islice, product

from trivet.reading.calendars.rules import Rule

MOST_STEPS = 60_000
"""Days (or hours, minutes, seconds) looked at for one rule: a daily one for 164 years."""

MOST_FOUND = 4_000

_SECONDS = {"HOURLY": 3600, "MINUTELY": 60, "SECONDLY": 1}


class Budget:
    """Steps that may still be taken, for one rule or for all rules of a file."""

    def __init__(self, steps: int) -> None:
        """Begin with so many steps."""
        self.left = steps

    def take(self) -> bool:
        """Take one step, and say whether it was there to take."""
        self.left -= 1
        return self.left >= 0


@dataclass(frozen=True, slots=True)
class Repeats:
    """`times` in order, the first one always among them. `in_step`: the rule itself falls on it. `whole`: nothing was cut off."""

    times: tuple[datetime, ...]
    in_step: bool
    whole: bool


def repeats(
    first: datetime, rule: Rule, last: datetime, *, since: date | None = None, until: datetime | None = None, budget: Budget | None = None
) -> Repeats:
    """Return when an event falls that begins at `first` (local, without a zone) up to `last`, both included.

    `until` is the rule's own end in the same clock; what lies before `since` may be left out. The first time counts as the first of
    `count`, also where the rule itself would not fall on it (which the standard leaves undefined).
    """
    steps = Budget(min(MOST_STEPS, budget.left) if budget else MOST_STEPS)
    begun = steps.left
    end = min(last, until) if until else last
    found = [first]
    most = min(rule.count or MOST_FOUND, MOST_FOUND)
    skip_to = None if rule.count else since
    for at in _times(first, rule, end, skip_to, steps):
        if at > end or len(found) >= most:
            break
        if at > first:
            found.append(at)
    if budget:
        budget.left -= begun - max(0, steps.left)
    whole = steps.left >= 0 and (len(found) < MOST_FOUND or rule.count == MOST_FOUND)
    return Repeats(tuple(found), first in _times(first, rule, first, None, Budget(MOST_STEPS)), whole)


def _times(first: datetime, rule: Rule, end: datetime, skip_to: date | None, steps: Budget) -> Iterator[datetime]:
    if rule.frequency in _SECONDS:
        yield from _by_the_clock(first, rule, end, skip_to, steps)
        return
    times = _times_of_day(first, rule)
    for days in _periods(first.date(), rule, end.date(), skip_to, steps):
        found = [datetime.combine(day, at) for day in days for at in times]
        yield from _positions(found, rule.by_position)


def _positions(found: list[datetime], positions: tuple[int, ...]) -> Iterator[datetime]:
    """Yield those at the positions, counted from 1 or from the end."""
    if not positions:
        yield from found
        return
    places = {place - 1 if place > 0 else len(found) + place for place in positions}
    yield from (found[place] for place in sorted(places) if 0 <= place < len(found))


def _times_of_day(first: datetime, rule: Rule) -> list[time]:
    """The clock times of a day on which the rule falls. A leap second counts as the second before it."""
    hours, minutes = rule.by_hour or (first.hour,), rule.by_minute or (first.minute,)
    seconds = sorted({min(second, 59) for second in rule.by_second}) or [first.second]
    return [time(*each) for each in islice(product(hours, minutes, seconds), 1440)]


# by day, week, month and year


def _periods(first: date, rule: Rule, end: date, skip_to: date | None, steps: Budget) -> Iterator[list[date]]:
    """Yield the days of each period on which the rule falls, periods without one included."""
    fits = _Fits(first, rule)
    for begin, length in _stretches(first, rule, skip_to or first):
        if begin > end:
            return
        days = []
        for offset in range(length):
            if not steps.take():
                return
            day = begin + timedelta(days=offset)
            if fits.day(day):
                days.append(day)
        yield days


def _stretches(first: date, rule: Rule, since: date) -> Iterator[tuple[date, int]]:
    """Yield first day and length of each day, week, month or year that the rule looks at, those long before `since` left out."""
    every = rule.interval
    ahead = max(0, (since - first).days)
    try:
        match rule.frequency:
            case "DAILY":
                for number in count(ahead // every):
                    yield first + timedelta(days=number * every), 1
            case "WEEKLY":
                begin = first - timedelta(days=(first.weekday() - rule.week_start) % 7)
                for number in count(ahead // (7 * every)):
                    yield begin + timedelta(weeks=number * every), 7
            case "MONTHLY":
                for number in count(ahead // (31 * every)):
                    years, month = divmod(first.month - 1 + number * every, 12)
                    begin = date(first.year + years, month + 1, 1)
                    yield begin, calendar.monthrange(begin.year, begin.month)[1]
            case _:
                for number in count(ahead // (366 * every)):
                    begin = date(first.year + number * every, 1, 1)
                    yield begin, 365 + calendar.isleap(begin.year)
    except (OverflowError, ValueError):  # the calendar ends with the year 9999
        return


class _Fits:
    """Whether a day is one of the rule's; what the rule leaves open comes from its first day."""

    def __init__(self, first: date, rule: Rule) -> None:
        self.rule = rule
        self.months, self.month_days = rule.by_month, rule.by_month_day
        self.weekdays = {weekday for nth, weekday in rule.by_day if nth == 0}
        self.nths = {(nth, weekday) for nth, weekday in rule.by_day if nth}
        if rule.by_day or rule.by_month_day or rule.by_year_day:
            return
        if rule.frequency == "WEEKLY" or rule.by_week_number:
            self.weekdays = {first.weekday()}
        elif rule.frequency in ("MONTHLY", "YEARLY"):
            self.month_days = (first.day,)
            if rule.frequency == "YEARLY":
                self.months = rule.by_month or (first.month,)

    def day(self, day: date) -> bool:
        """Say whether the rule falls on this day."""
        return self._in_month(day) and self._in_year(day) and self._on_weekday(day)

    def _in_month(self, day: date) -> bool:
        if self.months and day.month not in self.months:
            return False
        return not self.month_days or _among(*_of_month(day), self.month_days)

    def _in_year(self, day: date) -> bool:
        rule = self.rule
        if rule.by_year_day and not _among(*_of_year(day), rule.by_year_day):
            return False
        return not rule.by_week_number or _among(*week_number(day, rule.week_start), rule.by_week_number)

    def _on_weekday(self, day: date) -> bool:
        if day.weekday() in self.weekdays or not (self.weekdays or self.nths):
            return True
        if not self.nths:
            return False
        in_month = self.rule.frequency == "MONTHLY" or bool(self.rule.by_month)
        place, length = _of_month(day) if in_month else _of_year(day)
        nth, nth_from_end = (place - 1) // 7 + 1, -((length - place) // 7 + 1)
        return (nth, day.weekday()) in self.nths or (nth_from_end, day.weekday()) in self.nths


def _of_month(day: date) -> tuple[int, int]:
    """Return the day's place in its month, and the month's length."""
    return day.day, calendar.monthrange(day.year, day.month)[1]


def _of_year(day: date) -> tuple[int, int]:
    """Return the day's place in its year, and the year's length."""
    return day.timetuple().tm_yday, 365 + calendar.isleap(day.year)


def _among(place: int, length: int, places: tuple[int, ...]) -> bool:
    """Whether a place counted from 1 is among `places`, of which negative ones count from the end."""
    return place in places or place - length - 1 in places


def week_number(day: date, week_start: int) -> tuple[int, int]:
    """Return the number of a day's week and how many weeks its year has; week 1 is the first with four days of the year (ISO 8601)."""
    middle = day - timedelta(days=(day.weekday() - week_start) % 7) + timedelta(days=3)
    start, after = _week_one(middle.year, week_start), _week_one(middle.year + 1, week_start)
    begin = middle - timedelta(days=3)
    return (begin - start).days // 7 + 1, (after - start).days // 7


def _week_one(year: int, week_start: int) -> date:
    fourth = date(year, 1, 4)
    return fourth - timedelta(days=(fourth.weekday() - week_start) % 7)


# by the clock


def _by_the_clock(first: datetime, rule: Rule, end: datetime, skip_to: date | None, steps: Budget) -> Iterator[datetime]:
    """Yield every so many hours, minutes or seconds; parts of a rule that are longer than a step only leave times out."""
    step = timedelta(seconds=_SECONDS[rule.frequency] * rule.interval)
    fits = _Fits(first.date(), rule)
    at = first
    if skip_to is not None and skip_to > first.date():
        at += (datetime.combine(skip_to, time()) - first) // step * step
    while at <= end and steps.take():
        if fits.day(at.date()) and (not rule.by_hour or at.hour in rule.by_hour):
            yield from _within(at, rule)
        if at > datetime.max - step:
            return
        at += step


def _within(at: datetime, rule: Rule) -> Iterator[datetime]:
    """The times inside one step: minutes of an hour, seconds of a minute."""
    minutes: tuple[int, ...] = (at.minute,)
    seconds: tuple[int, ...] = (at.second,)
    if rule.by_minute:
        minutes = rule.by_minute if rule.frequency == "HOURLY" else tuple(m for m in minutes if m in rule.by_minute)
    if rule.by_second:
        own = tuple(sorted({min(second, 59) for second in rule.by_second}))
        seconds = own if rule.frequency != "SECONDLY" else tuple(s for s in seconds if s in own)
    yield from (at.replace(minute=minute, second=second) for minute in minutes for second in seconds)
