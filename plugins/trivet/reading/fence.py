"""Split a unit file at its two fences into what is computed from and what is prose."""

from __future__ import annotations

import re
from dataclasses import dataclass

from trivet.model.problem import Place, Problem, Severity

_FENCE = re.compile(r"---[ \t]*")
_NEAR_FENCE = re.compile(r"[ \t]*(?:-{2,}|[–—]{1,3}|[–—]-|-[–—]|\+{3}|={3,}|_{3,}|- - -)[ \t]*")


@dataclass(frozen=True, slots=True)
class Split:
    """`front` begins at `front_line` of the file and `body` at `body_line`. `readable` is False where no front matter was found."""

    front: str
    front_line: int
    body: str
    body_line: int
    problems: tuple[Problem, ...] = ()
    readable: bool = True


def split(text: str, file: str) -> Split:
    """Split `text` at the line `---` on top and the next line `---` (blanks may follow it). Problems stand at 1:1."""
    lines = text.split("\n")
    problems: list[Problem] = []
    top = next((index for index, line in enumerate(lines) if line.strip()), 0)
    if not _FENCE.fullmatch(lines[top]):
        if not _NEAR_FENCE.fullmatch(lines[top]):
            remedy = "write --- as the first line, then the keys, then --- again"
            return Split("", 1, text, 1, (_problem(file, "fence-missing", "the unit does not begin with ---", remedy),), readable=False)
        problems.append(_problem(file, "fence-missing", f"line {top + 1} has {lines[top].strip()} where three hyphens belong", "write ---"))
    elif top > 0:
        problems.append(_problem(file, "fence-missing", "the line --- is not the first line", f"delete what stands above line {top + 1}"))
    end = _first(_FENCE, lines, top + 1)
    if end is None:
        end = _first(_NEAR_FENCE, lines, top + 1)
        if end is None:
            what = "the line --- that ends the keys is missing"
            problems.append(_problem(file, "fence-not-closed", what, "write --- on a line of its own below the last key"))
            return Split("", top + 2, "", len(lines), tuple(problems), readable=False)
        what = f"line {end + 1} has {lines[end].strip()} where the three hyphens belong that end the keys"
        problems.append(_problem(file, "fence-not-closed", what, f"write --- on line {end + 1}"))
    return Split("\n".join(lines[top + 1 : end]), top + 2, "\n".join(lines[end + 1 :]), end + 2, tuple(problems))


def _first(form: re.Pattern[str], lines: list[str], start: int) -> int | None:
    return next((index for index in range(start, len(lines)) if form.fullmatch(lines[index])), None)


def _problem(file: str, code: str, what: str, remedy: str) -> Problem:
    return Problem(code, Severity.ERROR, Place(file), what, remedy)
