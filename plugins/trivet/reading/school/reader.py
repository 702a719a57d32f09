"""Read the files of school/ one after the other: source, strict YAML, schema. What is wrong is kept, and nothing is raised."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from pathlib import Path
from typing import Any, TypeVar

from trivet.model.places import Places
from trivet.model.problem import Place, Problem, Severity
from trivet.model.school import Calendar, DayType
from trivet.reading.school.checks.names import check_keys
from trivet.reading.school.sentences import form_answer
from trivet.reading.school.sheet import Sheet
from trivet.reading.source import read_source
from trivet.reading.strict import load
from trivet.reading.validate import validate

REQUIRED = {
    "school": "write `name:`, `time zone:` and `teachers:` in it",
    "bells": "write `day types:` in it, and under each day type its periods, such as `P1: 8:05-8:57`",
    "calendar": "write `first day:`, `last day:` and `week:` in it",
    "classes": "write `classes:` in it, and under each class `name:`, `teacher:`, `grade:`, `period:`, `room:` and `numbers:`",
    "rooms": "write `rooms:` in it, and under each room `name:`, `online:`, `hands-on:` and `teacher-led:`",
}
"""Files that must be there, each with what to write. The other four have a default: built-in words, or nothing."""

NAME_KEYS = ("name",)
"""Keys of school files that would name students elsewhere, and here name a class, a room or a role."""

Part = TypeVar("Part")


class Reader:
    """Holds what was met on the way. `broken` are the kinds of file that are there and can't be used."""

    def __init__(self, root: Path) -> None:
        """Take the folder of the project."""
        self.root = root
        self.problems: list[Problem] = []
        self.places: dict[str, Places] = {}
        self.sources: dict[str, str] = {}
        self.broken: set[str] = set()

    def add(self, problems: Iterable[Problem]) -> None:
        """Keep problems."""
        self.problems += problems

    def sheet(self, kind: str) -> Sheet | None:
        """Return `school/<kind>.yml` where it is there and fits its schema."""
        file = f"school/{kind}.yml"
        path = self.root / "school" / f"{kind}.yml"
        if not path.exists() and not path.is_symlink():
            if kind in REQUIRED:
                self.problems.append(Problem("file-missing", Severity.ERROR, Place(file), "this file is missing", REQUIRED[kind]))
                self.broken.add(kind)
            return None
        source = read_source(path, file)
        self.sources[file] = source.text
        self.add(source.problems)
        loaded = load(source.text, file) if source.readable else None
        problems: list[Problem] = list(loaded.problems) if loaded else []
        if loaded and loaded.readable:
            self.places[file] = loaded.places
            fits = _fits(loaded.value, kind, loaded.places, file)
            # A line that can't be read as typed has its answer: what it seems to say is not judged further.
            answered = {problem.place.line for problem in problems if problem.severity is Severity.ERROR}
            problems += [problem for problem in fits if problem.place.line not in answered]
        self.add(problems)
        if loaded is None or not loaded.readable or any(problem.severity is Severity.ERROR for problem in problems):
            self.broken.add(kind)
            return None
        return Sheet(file, loaded.value, loaded.places)

    def part(self, sheet: Sheet | None, read: Callable[[Sheet], tuple[Part, tuple[Problem, ...]]]) -> Part | None:
        """Return what `read` makes of the sheet, None where there is no sheet, and keep its problems."""
        if sheet is None:
            return None
        part, problems = read(sheet)
        self.add(problems)
        return part

    def calendar_files(self, sheet: Sheet, calendar: Calendar, bells: Mapping[str, DayType], zone: str) -> Calendar:
        """Return the calendar with what its files add, and keep their problems and texts."""
        from trivet.reading.school.ics import read_calendar_files  # noqa: PLC0415 - only a school that has such files pays for it

        read = read_calendar_files(self.root, sheet, calendar, bells, zone)
        self.add(read.problems)
        self.sources |= read.sources
        return read.calendar


def _fits(value: Any, kind: str, places: Places, file: str) -> Iterable[Problem]:
    """Yield keys that would hold names of students, then what the schema says about all others."""
    named = tuple(check_keys(value, places, but=NAME_KEYS))
    at = {problem.place for problem in named}
    yield from named
    yield from (problem for problem in validate(value, kind, places, file, form_answer(places)) if problem.place not in at)
