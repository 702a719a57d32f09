"""Reports for programs are JSON with every field."""

from __future__ import annotations

import json

from tests.reading.report.problems import ALL, STEP
from trivet.reading import report


def test_json_carries_every_field() -> None:
    """The JSON report is numbered and holds all that a problem holds."""
    said = json.loads(report.json(ALL, advice=True))
    assert said["report"] == 1
    assert said["counts"] == {"error": 1, "warning": 1, "advice": 1}
    assert said["problems"][1] == {
        "code": "step-unreadable",
        "severity": "error",
        "file": "units/a/index.md",
        "line": 2,
        "column": 31,
        "length": 9,
        "where": "hands-on, step 1",
        "what": STEP.what,
        "remedy": STEP.remedy,
    }
