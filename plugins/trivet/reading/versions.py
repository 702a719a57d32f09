"""Lines that git leaves in a file when two people changed the same place: the first version is read on."""

from __future__ import annotations

import re

from trivet.model.problem import Place, Problem, Severity

_OPENING, _CLOSING = re.compile(r"<{7}(?: |$)"), re.compile(r">{7}(?: |$)")
_BETWEEN = re.compile(r"(?:={7}|\|{7})(?: |$)")


def settled(text: str, file: str, first_line: int = 1) -> tuple[str, list[Problem]]:
    """Return `text` with the first of two versions, line for line, and a problem for each place where two stand."""
    if "<<<<<<<" not in text:
        return text, []
    lines, problems = text.split("\n"), []
    at = 0
    while (start := _next(_OPENING, lines, at)) is not None:
        end = _next(_CLOSING, lines, start)
        middle = _next(_BETWEEN, lines, start)
        if end is None or middle is None:
            break
        at = end + 1
        if middle > end:
            continue
        place = Place(file, first_line + start, 1, len(lines[start].rstrip()))
        what = "two people changed this place, and both versions stand here"
        remedy = "keep one of them and delete the lines with <<<<<<<, ======= and >>>>>>>"
        problems.append(Problem("merge-conflict", Severity.ERROR, place, what, remedy))
        lines[start] = ""
        lines[middle : end + 1] = [""] * (end + 1 - middle)
    return "\n".join(lines), problems


def check(text: str, file: str) -> list[Problem]:
    """Return a problem for each place of a page where two versions stand."""
    return settled(text, file)[1]


def _next(form: re.Pattern[str], lines: list[str], at: int) -> int | None:
    return next((index for index in range(at, len(lines)) if form.match(lines[index])), None)
