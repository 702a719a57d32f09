"""The YAML library's refusals in plain words, for what the scan could not put right."""

from __future__ import annotations

import yaml

from trivet.model.problem import Place, Problem, Severity
from trivet.reading.entries import entry
from trivet.reading.quoting import quoted

_LINE_UP = "line it up with the lines it belongs to"
_QUOTE = ""
"""In place of a remedy: put the text of the line in double quotes."""
_BEFORE = "write a key and a colon, or a dash and a space, before it"

_WORDS = (
    ("found unexpected end of stream", "quotes are opened here and never closed", _QUOTE),
    ("found unexpected document indicator", "quotes are opened here and never closed", _QUOTE),
    ("unknown escape character", "a backslash in double quotes has a meaning of its own", _QUOTE),
    ("hexdecimal number", "a backslash in double quotes has a meaning of its own", _QUOTE),
    ("Unicode character escape", "a backslash in double quotes has a meaning of its own", _QUOTE),
    ("found a tab character", "a tab stands where only spaces may", "write spaces in place of the tab"),
    (
        "expected <document start>",
        "this line stands outside of what the file began with",
        "begin the file with its first key, without brackets, braces and %",
    ),
    (
        "did not find expected key",
        "this line does not fit the lines above it",
        "line it up with the key it belongs to, and see that the line above has its colon",
    ),
    (
        "expected '-' indicator",
        "this line stands in a list and has no dash",
        "write a dash and a space before it, or line it up with the keys that it belongs to",
    ),
    ("expected ',' or", "a bracket or brace is opened and not closed", _QUOTE),
    ("mapping values are not allowed", "a colon before a space reads as the end of a key", _QUOTE),
    ("block sequence entries", "a list can't begin on this line", _QUOTE),
    ("could not find expected ':'", "this line has no colon after its key", _BEFORE),
)


def refusal(error: yaml.MarkedYAMLError, text: str, typed: str, file: str, first_line: int) -> Problem:
    """Return the problem that the library's refusal of `text` means; `typed` is the text before it was mended, line for line."""
    lines = text.split("\n")
    what, remedy = _meaning(error)
    opening = "never closed" in what or "not closed" in what
    mark = (error.context_mark if opening else error.problem_mark) or error.problem_mark or error.context_mark
    at = min(mark.line, len(lines) - 1) if mark else 0
    column = min(mark.column, len(lines[at])) if mark else 0
    if not lines[at].strip():
        at = next((index for index in range(at, -1, -1) if lines[index].strip()), at)
        column = len(lines[at]) - len(lines[at].lstrip())
    first = typed.split("\n")[at].strip()[:1]
    if remedy == _BEFORE and first in "\"'[{":
        remedy = f"take the {first} away that it begins with, or write a key and a colon before it"
    place = Place(file, first_line + at, column + 1, max(1, len(lines[at].rstrip()) - column))
    return Problem("line-not-read", Severity.ERROR, place, what, remedy or _in_quotes(lines[at]))


def _meaning(error: yaml.MarkedYAMLError) -> tuple[str, str]:
    said = f"{error.context or ''} {error.problem or ''}"
    found = next(((words, remedy) for part, words, remedy in _WORDS if part in said), None)
    return found or ("this line can't be read as a key with its value, nor as a list item", _BEFORE)


def _in_quotes(line: str) -> str:
    each = entry(line)
    value = each.region.strip()
    if value and (each.key is not None or each.dash):
        return f"{_LINE_UP}, or put its text in double quotes: write {each.lead.strip()} {quoted(value)}"
    return f"{_LINE_UP}, or write a key and a colon before it"
