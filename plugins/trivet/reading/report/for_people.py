"""Problems as lines of text, each with the line of the file it is about."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from trivet.model.problem import Place, Problem, Severity
from trivet.reading.report.counts import counted, printable, shown

WIDTH = 120
"""How many characters of a line are shown around a mark."""


def text(problems: Iterable[Problem], sources: Mapping[str, str], *, advice: bool = False) -> str:
    """Return the report, ending in a line that counts. `sources` are the texts of files by name, to quote from."""
    problems = tuple(problems)
    split = {file: source.split("\n") for file, source in sources.items()}
    lines = [line for problem in shown(problems, advice=advice) for line in _lines(problem, split)]
    return "\n".join([*lines, counted(problems, advice=advice)]) + "\n"


def one_line(problem: Problem) -> str:
    """Return a problem as `file:line:column: where: what; remedy`; a warning or advice says so before it."""
    place = problem.place
    kind = "" if problem.severity is Severity.ERROR else f"{problem.severity}: "
    return f"{printable(place.file)}:{place.line}:{place.column}: {kind}{printable(problem.sentence)}"


def _lines(problem: Problem, sources: Mapping[str, list[str]]) -> list[str]:
    return [one_line(problem), *_quoted(problem.place, sources.get(problem.place.file, [""]))]


def _quoted(place: Place, lines: list[str]) -> list[str]:
    # A problem of the whole file stands at 1:1, and its first line would say nothing.
    if (place.line, place.column, place.length) == (1, 1, 1) or place.line > len(lines):
        return []
    line = printable(lines[place.line - 1].replace("\t", " "))
    start = max(0, min(place.column - 1 - WIDTH // 3, len(line) - WIDTH))
    part = line[start : start + WIDTH].rstrip()
    if not part:
        return []
    before = "... " if start else ""
    after = " ..." if len(line.rstrip()) > start + WIDTH else ""
    at = place.column - 1 - start
    marks = "^" * max(1, min(place.length, len(part) - at))
    number = f"{place.line:>6} | "
    return [f"{number}{before}{part}{after}", f"{'| ':>9}{' ' * (len(before) + at)}{marks}"]
