"""One page of each kind, word for word.

After a change that is meant: TRIVET_GOLDEN=write .venv/bin/python -m pytest tests/pages/test_golden.py, then read the difference.
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tests.pages.scenario import pages

GOLDEN = Path(__file__).parent / "golden"
KINDS = {
    "home": "",
    "units": "units/",
    "unit": "units/float-or-sink/",
    "unit-without-run": "units/moving-plates/",
    "student": "units/float-or-sink/student/",
    "student-es": "units/float-or-sink/student/es/",
    "lesson": "lesson/p1/float-or-sink/",
    "lesson-not-drawn": "lesson/p2/float-or-sink/",
    "lesson-whole-class": "lesson/n1/float-or-sink/",
    "whom": "whom/p1/",
    "prep": "prep/",
    "year": "year/",
    "problem": "units/broken/",
}


@pytest.mark.parametrize("kind", KINDS)
def test_a_page_is_as_it_was(kind: str) -> None:
    """The body of a page of this kind is the one under golden/, to the letter."""
    body = pages()[KINDS[kind]].body + "\n"
    path = GOLDEN / f"{kind}.html"
    if os.environ.get("TRIVET_GOLDEN") == "write":
        path.write_text(body, encoding="utf-8")
    assert path.read_text(encoding="utf-8") == body


def test_nothing_else_is_golden() -> None:
    """Every file under golden/ belongs to a kind of page."""
    assert {p.stem for p in GOLDEN.iterdir()} == set(KINDS)
