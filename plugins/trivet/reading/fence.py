"""Split a unit file at its two fences into what is computed from and what is prose."""

from __future__ import annotations

import re
from dataclasses import dataclass

from trivet.model.problem import Place, Problem, Severity

_FENCE = re.compile(r"---[ \t]*")
_NEAR_FENCE = re.compile(r"[ \t]*(?:-{2,}|[–—]{1,3}|[–—]-|-[–—]|\+{3}|={3,}|_{3,}|\*{3,}|~{3,}|- - -)[ \t]*|`{3,}.*")
_KEY = re.compile(r"[a-z][a-z -]{0,24}:(?:[ \t]|$)")
_OF_KEYS = re.compile(r"[ \t#]|-(?:[ \t]|$)|[a-z][a-z -]{0,24}:(?:[ \t]|$)")
"""How a line begins that may stand among the keys."""


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
    start = _start(lines, file, problems)
    if start is None:
        return Split("", 1, text, 1, tuple(problems), readable=False)
    end = _first(_FENCE, lines, start)
    if end is None:
        end = next((at for at in range(start, len(lines)) if _ends_keys(lines[at])), None)
        problems.append(_not_closed(lines, end, file))
        if end is None or not _NEAR_FENCE.fullmatch(lines[end]):
            return Split("", start + 1, "", len(lines), tuple(problems), readable=False)
    return Split("\n".join(lines[start:end]), start + 1, "\n".join(lines[end + 1 :]), end + 2, tuple(problems))


def _start(lines: list[str], file: str, problems: list[Problem]) -> int | None:
    """Where the keys begin, as an index of lines; None where no fence and no key tells it."""
    top = next((index for index, line in enumerate(lines) if line.strip()), 0)
    if _FENCE.fullmatch(lines[top]):
        if top:
            problems.append(_problem(file, "fence-missing", "the line --- is not the first line", "delete the empty lines above it"))
        return top + 1
    fence = _first(_FENCE, lines, top)
    if _NEAR_FENCE.fullmatch(lines[top]) and fence != top + 1:
        problems.append(_problem(file, "fence-missing", f"line {top + 1} has {lines[top].strip()} where three hyphens belong", "write ---"))
        return top + 1
    if _KEY.match(lines[top]):
        remedy = f"write --- on a line of its own above line {top + 1}"
        problems.append(_problem(file, "fence-missing", "the line --- above the first key is missing", remedy))
        return top
    if fence is not None and _KEY.match(next((line for line in lines[fence + 1 :] if line.strip()), "")):
        remedy = f"delete what stands above line {fence + 1}, or move it below the second ---"
        problems.append(_problem(file, "fence-missing", f"the line --- stands on line {fence + 1}, and it must be the first", remedy))
        return fence + 1
    remedy = "write --- as the first line, then the keys, then --- again"
    problems.append(_problem(file, "fence-missing", "the unit does not begin with ---", remedy))
    return None


def _ends_keys(line: str) -> bool:
    return _NEAR_FENCE.fullmatch(line) is not None or (line.strip() != "" and not _OF_KEYS.match(line))


def _not_closed(lines: list[str], end: int | None, file: str) -> Problem:
    if end is not None and _NEAR_FENCE.fullmatch(lines[end]):
        what = f"line {end + 1} has {lines[end].strip()} where the three hyphens belong that end the keys"
        return _problem(file, "fence-not-closed", what, f"write --- on line {end + 1}")
    where = "at the end of the file" if end is None else f"below the last key (above line {end + 1}, it seems)"
    return _problem(file, "fence-not-closed", "the line --- that ends the keys is missing", f"write --- on a line of its own {where}")


def _first(form: re.Pattern[str], lines: list[str], start: int) -> int | None:
    return next((index for index in range(start, len(lines)) if form.fullmatch(lines[index])), None)


def _problem(file: str, code: str, what: str, remedy: str) -> Problem:
    return Problem(code, Severity.ERROR, Place(file), what, remedy)
