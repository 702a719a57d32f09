"""The front matter of a unit or of its translation: versions, fences, the scan of lines, strict YAML, in one go."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from trivet.model.places import Path, Places
from trivet.model.problem import Place, Problem, in_order
from trivet.reading.fence import split
from trivet.reading.limit import PROBLEMS_MOST, limited
from trivet.reading.scan import scan
from trivet.reading.strict import load
from trivet.reading.versions import settled


@dataclass(frozen=True, slots=True)
class Front:
    """What a unit file says and its prose. `readable` is False where the keys could not be read; `value` is then None."""

    value: Any
    places: Places
    body: str
    body_line: int
    problems: tuple[Problem, ...]
    readable: bool = True


def read_front(text: str, file: str) -> Front:
    """Read the text of a unit file. Lines and columns are those of the file as typed."""
    kept, versions = settled(text, file)
    parts = split(kept, file)
    fences = parts.problems
    if parts.readable and any(problem.place.line == 1 for problem in versions):
        fences = ()  # what stands above the first fence is answered already
    if not parts.readable:
        problems = in_order([*versions, *parts.problems])
        return Front(None, Places(file), parts.body, parts.body_line, problems, readable=False)
    scanned = scan(parts.front, file, parts.front_line)
    loaded = load(scanned.text, file, parts.front_line)
    typed = text.split("\n")
    places = Places(file, _within(loaded.places.at, typed), _within(loaded.places.keys, typed))
    said = [*versions, *fences, *scanned.problems, *loaded.problems]
    if len(said) > PROBLEMS_MOST:
        return Front(None, Places(file), parts.body, parts.body_line, limited(said), readable=False)
    return Front(loaded.value, places, parts.body, parts.body_line, in_order(said), loaded.readable)


def _within(places: Mapping[Path, Place], typed: list[str]) -> dict[Path, Place]:
    """Cut lengths to the lines as typed: a line that was mended may be longer."""
    return {path: _cut(place, typed) for path, place in places.items()}


def _cut(place: Place, typed: list[str]) -> Place:
    room = len(typed[place.line - 1].rstrip()) - place.column + 1 if place.line <= len(typed) else 1
    return place if place.length <= room else replace(place, length=max(1, room))
