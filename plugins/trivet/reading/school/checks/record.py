"""Can what a run records as done be so: on a day on which the class met, not on a lost one, once?"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from trivet.model.problem import Problem
from trivet.model.school import Done, HalfDone, Run
from trivet.reading import forms
from trivet.reading.forms import Unreadable
from trivet.reading.school.sheet import Sheet

WHOLE_CLASS = "whole_class"


def check_record(sheet: Sheet, run: Run, meets: tuple[date, ...]) -> Iterator[Problem]:
    """Yield what is wrong with the `done` and `half` lines of a run; `meets` are the dates on which its class meets."""
    seen: dict[int, tuple[str | int, ...]] = {}
    for path, each in _lines(sheet, run):
        yield from _date(sheet, run, path, each.date, meets)
        for number in each.rounds if isinstance(each, Done) else ():
            if number in seen:
                line = sheet.places.find(*seen[number]).line
                yield sheet.error("round-done-twice", path, f"round {number} is done already on line {line}", "leave one of the two out")
            seen.setdefault(number, path)
        if isinstance(each, Done) and each.without and run.way == WHOLE_CLASS:
            what = "in a whole-class round no group is at a station of its own"
            yield sheet.error("without-in-whole-class", path, what, "leave `without` out")
    halves = [path for path, each in _lines(sheet, run) if isinstance(each, HalfDone)]
    dates = [each.date for _, each in _lines(sheet, run) if isinstance(each, HalfDone)]
    for place, day in enumerate(dates):
        if day in dates[:place]:
            yield sheet.error("half-twice", halves[place], f"a round was stopped on {day} already", "leave one of the two out")


def _lines(sheet: Sheet, run: Run) -> Iterator[tuple[tuple[str | int, ...], Done | HalfDone]]:
    said = sheet.data["runs"][run.index]
    for key, read in (("done", forms.done), ("half", forms.half_done)):
        for place, text in enumerate(said.get(key, [])):
            found = read(text)
            if not isinstance(found, Unreadable):
                yield ("runs", run.index, key, place), found


def _date(sheet: Sheet, run: Run, path: tuple[str | int, ...], day: date, meets: tuple[date, ...]) -> Iterator[Problem]:
    if day in run.lost:
        yield sheet.error("lost-and-done", path, f"{day} stands under `lost` too", "leave it out there, or here")
    elif run.begins == "date" and day < run.starts:
        yield sheet.error("done-before-start", path, f"{day} comes before this run starts on {run.starts}", "mend one of the two dates")
    elif meets and day not in meets:
        yield sheet.error("done-no-meeting", path, f"{run.class_id} does not meet on {day}", "write the date on which it was done")
