"""Problems as workflow command lines, which CI hosts turn into marks beside the changed lines."""

from __future__ import annotations

from collections.abc import Iterable

from trivet.model.problem import Problem, Severity
from trivet.reading.report.counts import counted, printable, shown

LEVELS = {Severity.ERROR: "error", Severity.WARNING: "warning", Severity.ADVICE: "notice"}


def ci_lines(problems: Iterable[Problem], *, advice: bool = False) -> str:
    """Return one `::error file=...,line=...,col=...::sentence` line for each problem, then the line that counts."""
    problems = tuple(problems)
    lines = [_line(problem) for problem in shown(problems, advice=advice)]
    return "\n".join([*lines, counted(problems, advice=advice)]) + "\n"


def _line(problem: Problem) -> str:
    place = problem.place
    where = f"file={_property(printable(place.file))},line={place.line},col={place.column},endColumn={place.column + place.length}"
    return f"::{LEVELS[problem.severity]} {where},title={_property(problem.code)}::{_message(printable(problem.sentence))}"


def _message(said: str) -> str:
    return said.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def _property(said: str) -> str:
    return _message(said).replace(":", "%3A").replace(",", "%2C")
