"""Notice a text that YAML cuts off at ` #`: `Room #5` reads as Room."""

from __future__ import annotations

import re

import yaml

from trivet.model.problem import Place, Problem, Severity
from trivet.reading.quoting import quoted
from trivet.reading.spots import Spots

_REST = re.compile(r"[ \t]+#.*")
_COMMENT = re.compile(r" {2,}# ")


def cut_off(event: yaml.ScalarEvent, spots: Spots) -> Problem | None:
    """Return a warning if a plain text is followed by a comment that may be part of it: not after two spaces and before one."""
    line, column = spots.end(event)
    typed = spots.line(line)
    rest = _REST.match(typed, column)
    if not event.value or rest is None or _COMMENT.match(typed, column):
        return None
    at = typed.index("#", column)
    before = typed[: spots.start(event)[1]].strip() if spots.start(event)[0] == line else ""
    corrected = f"{before} {quoted(event.value + rest[0].rstrip())}".strip()
    return Problem(
        "hash-cuts-text",
        Severity.WARNING,
        Place(spots.file, spots.first_line + line, at + 1, len(typed) - at),
        "everything after # is left out as a comment",
        f"if it belongs to the text, write {corrected}; if it is a comment, put two spaces before # and one after",
    )
