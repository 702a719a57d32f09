"""Indentation is made of spaces: find tabs and look-alike spaces before YAML stumbles over them."""

from __future__ import annotations

import re

from trivet.model.problem import Place, Problem, Severity
from trivet.reading.characters import ODD_SPACES, name_of

_LEAD = re.compile(f"[ \t{ODD_SPACES}]+")
_ODD = re.compile(f"[\t{ODD_SPACES}]")
_DASH = re.compile(f"( *-)([\t{ODD_SPACES}]+)")


def mend_indentation(text: str, file: str, first_line: int = 1) -> tuple[str, list[Problem]]:
    """Return `text` indented with spaces alone, line for line, and a problem for each line that was not.

    A tab counts as two spaces, a look-alike space as one. The space after a list's dash is looked at too.
    """
    lines = text.split("\n")
    problems: list[Problem] = []
    for index, line in enumerate(lines):
        if line.isascii() and "\t" not in line:
            continue
        mended = _mended(line)
        if mended == line:
            continue
        lines[index] = mended
        if mended.strip():
            problems.append(_problem(line, mended, Place(file, first_line + index)))
    return "\n".join(lines), problems


def _mended(line: str) -> str:
    lead = _LEAD.match(line)
    if lead:
        if lead.end() == len(line):
            return ""
        line = _ODD.sub(lambda m: "  " if m[0] == "\t" else " ", lead[0]) + line[lead.end() :]
    return _DASH.sub(lambda m: m[1] + " ", line, count=1) if _DASH.match(line) else line


def _problem(line: str, mended: str, start: Place) -> Problem:
    odd = _ODD.search(line)
    assert odd is not None  # only lines with one are mended
    place = Place(start.file, start.line, odd.start() + 1)
    spaces = len(mended) - len(mended.lstrip(" "))
    count = {0: "no space", 1: "one space"}.get(spaces, f"{spaces} spaces")
    code = "tab-indent" if odd[0] == "\t" else "odd-space"
    return Problem(
        code,
        Severity.ERROR,
        place,
        f"{name_of(odd[0])} stands where only spaces may",
        f"write {mended.strip()} after {count}" if spaces else f"write {mended.strip()}",
    )
