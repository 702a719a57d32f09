"""Make warnings and advice about a finished unit, at the places of its file."""

from __future__ import annotations

from trivet.model.places import Path
from trivet.model.problem import Problem, Severity
from trivet.model.unit import Unit
from trivet.reading.where import words


def warning(unit: Unit, code: str, path: Path, what: str, remedy: str) -> Problem:
    """Say what is doubtful at `path` of the unit's file."""
    return Problem(code, Severity.WARNING, unit.places.find(*path), what, remedy, words(path))


def advice(unit: Unit, code: str, path: Path, what: str, remedy: str) -> Problem:
    """Say what could be better at `path` of the unit's file."""
    return Problem(code, Severity.ADVICE, unit.places.find(*path), what, remedy, words(path))
