"""The YAML library's refusals in plain words, for what the scan could not put right."""

from __future__ import annotations

import yaml

from trivet.model.problem import Place, Problem, Severity
from trivet.reading.entries import entry
from trivet.reading.quoting import quoted

_WORDS = (
    ("found unexpected end of stream", "quotes are opened here and never closed"),
    ("found unexpected document indicator", "quotes are opened here and never closed"),
    ("unknown escape character", "a backslash in double quotes stands for something else"),
    ("hexdecimal number", "a backslash in double quotes stands for something else"),
    ("Unicode character escape", "a backslash in double quotes stands for something else"),
    ("found a tab character", "a tab stands where only spaces may"),
    ("expected <document start>", "this line stands outside of what the file began with"),
    ("did not find expected key", "this line does not fit the lines above it"),
    ("expected '-' indicator", "this line stands in a list and has no dash"),
    ("expected ',' or", "a bracket or brace is opened and not closed"),
    ("mapping values are not allowed", "a colon before a space reads as the end of a key"),
    ("block sequence entries", "a list can't begin on this line"),
    ("could not find expected ':'", "this line has no colon after its key"),
)


def refusal(error: yaml.MarkedYAMLError, text: str, file: str, first_line: int) -> Problem:
    """Return the problem that the library's refusal means."""
    lines = text.split("\n")
    opening = "never closed" in _meaning(error) or "not closed" in _meaning(error)
    mark = (error.context_mark if opening else error.problem_mark) or error.problem_mark or error.context_mark
    at = min(mark.line, len(lines) - 1) if mark else 0
    column = min(mark.column, len(lines[at])) if mark else 0
    if not lines[at].strip():
        at = next((index for index in range(at, -1, -1) if lines[index].strip()), at)
        column = len(lines[at]) - len(lines[at].lstrip())
    place = Place(file, first_line + at, column + 1, max(1, len(lines[at].rstrip()) - column))
    return Problem("line-not-read", Severity.ERROR, place, _meaning(error), _remedy(lines[at]))


def _meaning(error: yaml.MarkedYAMLError) -> str:
    said = f"{error.context or ''} {error.problem or ''}"
    return next((words for part, words in _WORDS if part in said), "this line can't be read as a key with its value, nor as a list item")


def _remedy(line: str) -> str:
    each = entry(line)
    value = each.region.strip()
    if value and (each.key is not None or each.dash):
        return f"line it up with the lines it belongs to, or put its text in double quotes: write {each.lead.strip()} {quoted(value)}"
    if value:
        return f"write a key and a colon, or a dash, before it: - {quoted(value)}"
    return "line it up with the lines it belongs to"
