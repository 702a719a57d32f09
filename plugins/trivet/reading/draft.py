"""A unit file as it was typed: plain data that may still be wrong anywhere, with the place of each value."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Any

from trivet.model.places import Path, Places
from trivet.model.problem import Place, Problem, Severity
from trivet.reading.where import words


@dataclass(frozen=True, slots=True)
class Said:
    """A text of the file, or one entry of a comma list, with the path of the value it stands in."""

    text: str
    path: Path
    place: Place


@dataclass(frozen=True, slots=True)
class Draft:
    """`data` is {} where the file could not be read. `lines` are the lines of the whole file.

    `files` are the other files of the unit folder, as paths inside it; `units` are the slugs of the department's units.
    `answered` are the lines that can't be read as typed and have their answer: what they seem to say is not judged further.
    """

    slug: str
    file: str
    data: Mapping[str, Any]
    places: Places
    lines: tuple[str, ...]
    body: str = ""
    body_line: int = 1
    files: tuple[str, ...] = ()
    units: tuple[str, ...] = ()
    simulation: bool = False
    answered: frozenset[int] = frozenset()

    def value(self, *path: str | int) -> Any:
        """Return what stands at `path`, None where nothing does."""
        found: Any = self.data
        for step in path:
            if isinstance(step, int):
                found = found[step] if isinstance(found, list) and step < len(found) else None
            else:
                found = found.get(step) if isinstance(found, dict) else None
        return found

    def text(self, *path: str | int) -> Said | None:
        """Return the text or number at `path`, None where there is none."""
        found = self.value(*path)
        if isinstance(found, bool) or not isinstance(found, str | int | Decimal) or found == "":
            return None
        return Said(str(found), path, self.places.find(*path))

    def items(self, *path: str | int) -> Iterator[Path]:
        """Yield the path of each entry of the list at `path`."""
        found = self.value(*path)
        for index in range(len(found) if isinstance(found, list) else 0):
            yield (*path, index)

    def listed(self, *path: str | int) -> Iterator[Said]:
        """Yield each entry of the comma list or YAML list at `path`, with blanks taken off."""
        whole = self.text(*path)
        if whole is None:
            for item in self.items(*path):
                if entry := self.text(*item):
                    yield entry
            return
        start = 0
        for part in whole.text.split(","):
            word = part.strip()
            if word:
                yield Said(word, path, self.spot(whole, start + len(part) - len(part.lstrip()), len(word)))
            start += len(part) + 1

    def spot(self, said: Said, offset: int, length: int) -> Place:
        """Return the place of a part of a text, by where it stands on the line; the whole text where it runs over lines."""
        place = said.place
        line = self.lines[place.line - 1] if 0 < place.line <= len(self.lines) else ""
        part = said.text[offset : offset + length]
        # Curly quotes, outer quotes and doubled ones shift a text against its line, so the part is looked for from there on.
        at = line.find(part, max(0, place.column - 1 + offset)) if part else -1
        return replace(place, column=at + 1, length=len(part)) if at >= 0 else place

    def unanswered(self, problems: Iterable[Problem]) -> Iterator[Problem]:
        """Yield the problems that stand on lines which have no answer yet."""
        return (problem for problem in problems if problem.place.file != self.file or problem.place.line not in self.answered)

    def error(self, code: str, said: Said | Path, what: str, remedy: str) -> Problem:
        """Say what is wrong with a text, or with the value at a path: the unit can't be used until it is mended."""
        return self._problem(code, Severity.ERROR, said, what, remedy)

    def warning(self, code: str, said: Said | Path, what: str, remedy: str) -> Problem:
        """Say what is doubtful."""
        return self._problem(code, Severity.WARNING, said, what, remedy)

    def advice(self, code: str, said: Said | Path, what: str, remedy: str) -> Problem:
        """Say what could be better."""
        return self._problem(code, Severity.ADVICE, said, what, remedy)

    def _problem(self, code: str, severity: Severity, said: Said | Path, what: str, remedy: str) -> Problem:
        path, place = (said.path, said.place) if isinstance(said, Said) else (said, self.places.find(*said))
        return Problem(code, severity, place, what, remedy, words(path))
