"""`school/bells.yml`: the periods of each day type."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import time

from trivet.model.problem import Problem
from trivet.model.school import DayType, Period
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.values import a_time, clock, ends_of, snake

LONGEST_MINUTES = 240
"""A period longer than this was not meant."""


def read_bells(sheet: Sheet) -> tuple[Mapping[str, DayType], tuple[Problem, ...]]:
    """Return the day types by their name in snake case, periods in order of the clock, and what is wrong among them.

    A period that can't be read is left out, and so is one that ends before it begins.
    """
    problems: list[Problem] = []
    bells = {}
    for spoken, written in sheet.data["day types"].items():
        read = [_period(sheet, spoken, name, said, problems) for name, said in written.items()]
        periods = sorted((period for period in read if period), key=lambda p: (p.start, p.end, p.name))
        bells[snake(spoken)] = DayType(snake(spoken), {period.name: period for period in periods})
        problems += _overlaps(sheet, spoken, periods)
    return bells, tuple(problems)


def _period(sheet: Sheet, day_type: str, name: str, said: str, problems: list[Problem]) -> Period | None:
    path = ("day types", day_type, name)
    for text in ends_of(said):
        if a_time(text) is None:
            problems.append(sheet.error("no-such-time", path, f"the clock has no {text}", "write a time from 0:00 to 23:59, such as 13:05"))
    start, end = (a_time(text) for text in ends_of(said))
    if start is None or end is None:
        return None
    if start >= end:
        what = f"{name} begins at {clock(start)} and ends at {clock(end)}"
        problems.append(sheet.error("ends-before-start", path, what, _on_24_hours(start, end)))
        return None
    if end.hour < 6:
        afternoon = f"{clock(_later(start))}-{clock(_later(end))}"
        what = f"{name} lies in the night, from {clock(start)} to {clock(end)}"
        problems.append(sheet.warning("in-the-night", path, what, f"write {afternoon} for the afternoon"))
    return Period(name, start, end)


def _later(at: time) -> time:
    return time((at.hour + 12) % 24, at.minute)


def _on_24_hours(start: time, end: time) -> str:
    for first, last in ((start, _later(end)), (_later(start), _later(end))):
        if 0 < _minutes(last) - _minutes(first) <= LONGEST_MINUTES and last.hour >= 12:
            return f"write {clock(first)}-{clock(last)}, on the 24-hour clock"
    return f"write {clock(end)}-{clock(start)}, the earlier time first" if start != end else "write a later end"


def _minutes(at: time) -> int:
    return at.hour * 60 + at.minute


def _overlaps(sheet: Sheet, day_type: str, periods: list[Period]) -> list[Problem]:
    problems = []
    for index, after in enumerate(periods):
        # Half-open stretches: a period may begin at the minute at which another ends.
        before = max((each for each in periods[:index] if not _split(each.name, after.name)), key=lambda each: each.end, default=None)
        if before and after.start < before.end:
            what = f"{after.name} begins at {clock(after.start)}, before {before.name} has ended at {clock(before.end)}"
            remedy = f"write a start at {clock(before.end)} or later, or end {before.name} earlier"
            problems.append(sheet.error("periods-overlap", ("day types", day_type, after.name), what, remedy))
    return problems


def _split(one: str, other: str) -> bool:
    """Say whether two names are halves of one period around lunch, as P5A and P5B are; such halves may overlap."""
    return one[:-1] == other[:-1] and one[-1].isalpha() and other[-1].isalpha() and one[:-1][-1:].isdigit()
