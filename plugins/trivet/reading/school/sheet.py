"""One file under school/ that fits its schema, and the problems that a closer look finds in it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from trivet.model.places import Places
from trivet.model.problem import Place, Problem, Severity
from trivet.reading.where import words


@dataclass(frozen=True, slots=True)
class Sheet:
    """Plain data of one file, with the place of each value. `file` is its path from the project's root."""

    file: str
    data: Mapping[str, Any]
    places: Places

    def error(self, code: str, path: tuple[str | int, ...], what: str, remedy: str, *, at_key: bool = False) -> Problem:
        """Say what is wrong at `path`; the plan can't be made until it is mended."""
        return Problem(code, Severity.ERROR, self._place(path, at_key), what, remedy, words(path))

    def warning(self, code: str, path: tuple[str | int, ...], what: str, remedy: str, *, at_key: bool = False) -> Problem:
        """Say what is doubtful at `path`."""
        return Problem(code, Severity.WARNING, self._place(path, at_key), what, remedy, words(path))

    def _place(self, path: tuple[str | int, ...], at_key: bool) -> Place:
        return self.places.key(*path) if at_key else self.places.find(*path)
