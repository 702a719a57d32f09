"""Take one line of a file apart: indentation, dash, key and what follows."""

from __future__ import annotations

import re
from dataclasses import dataclass

_DASH = re.compile(r"-(?:[ \t]+|$)")
_KEY_END = re.compile(r":(?=[ \t]|$)")
_QUOTED_KEY = re.compile(r"(?:\"(?:[^\"\\]|\\.)*\"|'(?:[^']|'')*')[ \t]*(?=:(?:[ \t]|$))")
_NO_KEY = re.compile(r"[\s\"'\[\]{}#&*!|>%@`,]|[-?:](?:\s|$)")
_HASH = re.compile(r"[ \t]#")


@dataclass(frozen=True, slots=True)
class Entry:
    """One line. `lead` is everything before `region`; `region` is what follows the dash or the colon, with its leading spaces.

    `column` is where the entry begins (the dash, else the text), `inner` where what follows the dash begins; both count from 0.
    """

    column: int
    inner: int
    dash: bool
    key: str | None
    lead: str
    region: str

    @property
    def rest(self) -> str:
        """What follows the indentation and the dash."""
        return (self.lead + self.region)[self.inner :]

    @property
    def has_text(self) -> bool:
        """Whether a text stands on the line after the key or dash, and not only a comment."""
        return self.region.strip() != "" and not self.region.lstrip().startswith("#")

    @property
    def own_column(self) -> int:
        """The column that a line must pass to belong to this entry."""
        return self.inner if self.dash and self.key is not None else self.column


def entry(line: str) -> Entry:
    """Take a line apart; a key is looked for after a dash as well."""
    column = len(line) - len(line.lstrip(" "))
    dash = _DASH.match(line, column)
    inner = dash.end() if dash else column
    key = key_of(line[inner:])
    if key is not None:
        end = line.index(":", inner + len(key)) + 1
        return Entry(column, inner, dash is not None, key, line[:end], line[end:])
    if dash:
        return Entry(column, inner, True, None, line[: column + 1], line[column + 1 :])
    return Entry(column, inner, False, None, line[:column], line[column:])


def without_key(each: Entry) -> Entry:
    """The same line, with what looked like a key taken as text."""
    line = each.lead + each.region
    start = each.column + 1 if each.dash else each.column
    return Entry(each.column, each.inner, each.dash, None, line[:start], line[start:])


def key_of(rest: str) -> str | None:
    """Return the key that `rest` begins with, as typed, or None where it begins with a text."""
    in_quotes = _QUOTED_KEY.match(rest)
    if in_quotes:
        return in_quotes[0].rstrip(" \t")
    end = _KEY_END.search(rest)
    if end is None or _NO_KEY.match(rest) or _HASH.search(rest, 0, end.start()):
        return None
    return rest[: end.start()].rstrip(" \t")
