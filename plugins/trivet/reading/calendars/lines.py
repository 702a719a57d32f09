"""Content lines of a calendar file: unfolded, with name, parameters and value (RFC 5545 3.1)."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

MOST_CHARACTERS = 20_000
"""A longer line is cut: nothing that school days are read from is that long."""

_NAME = r"[A-Za-z0-9-]+"
_VALUE = r'(?:"[^"]*"|[^";:,]*)'
_VALUES = rf"{_VALUE}(?:,{_VALUE})*"
_LINE = re.compile(rf"({_NAME})((?:;{_NAME}={_VALUES})*):(.*)", re.DOTALL)
_PARAMETER = re.compile(rf";({_NAME})=({_VALUES})")
_ESCAPED = re.compile(r"\\(.)", re.DOTALL)


@dataclass(frozen=True, slots=True)
class Line:
    """One content line. `name` and the names of parameters are upper case; `number` is its first line in the file."""

    name: str
    value: str
    number: int
    parameters: Mapping[str, str] = field(default_factory=dict)


def content_lines(text: str) -> Iterator[Line]:
    """Yield the content lines of a text; what is none has no name and the whole line as its value."""
    for number, line in _unfolded(text):
        found = _LINE.fullmatch(line)
        if found is None:
            yield Line("", line, number)
            continue
        parameters = {key.upper(): value.strip('"') for key, value in _PARAMETER.findall(found[2])}
        yield Line(found[1].upper(), found[3], number, parameters)


def plain_text(value: str) -> str:
    """Return a value of type TEXT as it reads: escapes undone, blanks made single (RFC 5545 3.3.11)."""
    return " ".join(_ESCAPED.sub(lambda found: " " if found[1] in "nN" else found[1], value).split())


def _unfolded(text: str) -> Iterator[tuple[int, str]]:
    """Yield each line that says something with its number; a line that begins with a blank goes on with the one before."""
    first, length = 0, 0
    parts: list[str] = []
    for number, line in enumerate(text.split("\n"), 1):
        if line[:1] in (" ", "\t") and parts:
            if length < MOST_CHARACTERS:
                parts.append(line[1:])
                length += len(line)
            continue
        if any(parts):
            yield first, "".join(parts)[:MOST_CHARACTERS]
        first, parts, length = number, [line], len(line)
    if any(parts):
        yield first, "".join(parts)[:MOST_CHARACTERS]
