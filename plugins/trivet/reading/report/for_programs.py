"""Problems as JSON, for editors and other programs."""

from __future__ import annotations

import json as plain_json
from collections.abc import Iterable

from trivet.model.problem import Problem
from trivet.reading.report.counts import printable, shown, tally


def json(problems: Iterable[Problem], *, advice: bool = False) -> str:
    """Return `{"report": 1, "problems": [...], "counts": {...}}`; adding a field keeps the number, renaming one raises it."""
    chosen = shown(problems, advice=advice)
    said = {
        "report": 1,
        "problems": [_fields(problem) for problem in chosen],
        "counts": {str(severity): number for severity, number in tally(chosen).items()},
    }
    return plain_json.dumps(said, ensure_ascii=False, indent=2) + "\n"


def _fields(problem: Problem) -> dict[str, str | int]:
    return {
        "code": problem.code,
        "severity": str(problem.severity),
        "file": printable(problem.place.file),
        "line": problem.place.line,
        "column": problem.place.column,
        "length": problem.place.length,
        "where": printable(problem.where),
        "what": printable(problem.what),
        "remedy": printable(problem.remedy),
    }
