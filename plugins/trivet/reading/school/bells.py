"""`school/bells.yml`: the periods of each day type."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import time

from trivet.model.problem import Problem
from trivet.model.school import DayType, Period
from trivet.reading.school.sentences import read_sentence
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.values import snake


def read_bells(sheet: Sheet) -> tuple[Mapping[str, DayType], tuple[Problem, ...]]:
    """Return the day types by their name in snake case, periods in order of the clock, and what is wrong among them.

    A period whose times can't be so is left out.
    """
    problems: list[Problem] = []
    bells = {}
    for spoken, written in sheet.data["day types"].items():
        read = ((name, read_sentence(sheet, ("day types", spoken, name), "times", said, problems)) for name, said in written.items())
        periods = sorted((Period(name, *times) for name, times in read if times), key=lambda p: (p.start, p.end, p.name))
        bells[snake(spoken)] = DayType(snake(spoken), {period.name: period for period in periods})
        problems += _overlaps(sheet, spoken, periods)
    return bells, tuple(problems)


def _overlaps(sheet: Sheet, day_type: str, periods: list[Period]) -> list[Problem]:
    problems = []
    for index, after in enumerate(periods):
        earlier = (each for each in periods[:index] if not _split(each.name, after.name))
        before = max(earlier, key=lambda each: each.end, default=None)
        # Half-open stretches: a period may begin at the minute at which another ends.
        if before and after.start < before.end:
            what = f"{after.name} begins at {_clock(after.start)}, before {before.name} has ended at {_clock(before.end)}"
            remedy = f"write a start at {_clock(before.end)} or later, or end {before.name} earlier"
            problems.append(sheet.error("periods-overlap", ("day types", day_type, after.name), what, remedy))
    return problems


def _split(one: str, other: str) -> bool:
    """Say whether two names are halves of one period around lunch, as P5A and P5B are; such halves may overlap."""
    return one[:-1] == other[:-1] and one[-1].isalpha() and other[-1].isalpha() and one[:-1][-1:].isdigit()


def _clock(at: time) -> str:
    return f"{at.hour}:{at.minute:02d}"
