"""School files from text, for tests of single parts."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from textwrap import dedent

from trivet.model.problem import Problem
from trivet.reading.school.sentences import form_answer
from trivet.reading.school.sheet import Sheet
from trivet.reading.strict import load
from trivet.reading.validate import validate

SCHOOL = {
    "school.yml": """
        name: Marsh Lane Middle School
        time zone: America/Chicago
        site: https://trivet.example/
        teachers:
          rowan: Ms. Rowan
        """,
    "bells.yml": """
        day types:
          regular:
            P1: 8:05-8:57
            P2: 9:01-9:53
          early release:
            P2: 8:05-8:43
        """,
    "calendar.yml": """
        first day: 2026-08-24
        last day: 2027-06-04
        week:
          Monday: regular
          Tuesday: regular
          Wednesday: regular
          Thursday: regular
          Friday: early release
        """,
    "classes.yml": """
        classes:
          p1:
            name: Science 7, period 1
            teacher: rowan
            grade: 7
            period: P1
            room: r12
            numbers: 1-6
        """,
    "rooms.yml": """
        rooms:
          r12:
            name: Room 12
            online: tables by the window
            hands-on: benches with sinks
            teacher-led: half-round table by the board
            teacher sees: hands-on, online
        """,
    "runs.yml": """
        runs:
          - class: p1
            unit: float-or-sink
            starts: 2026-11-30
        """,
}
"""A small school without a fault."""


def sheet(kind: str, text: str) -> Sheet:
    """Return a file under school/ that fits its schema, from indented text; fails where it does not fit."""
    file = f"school/{kind}.yml"
    loaded = load(dedent(text).lstrip("\n"), file)
    assert loaded.problems == ()
    assert validate(loaded.value, kind, loaded.places, file) == ()
    return Sheet(file, loaded.value, loaded.places)


def schema_problems(kind: str, text: str) -> list[str]:
    """Return what the schema says about a file under school/, as `line: sentence`."""
    file = f"school/{kind}.yml"
    loaded = load(dedent(text).lstrip("\n"), file)
    return said([*loaded.problems, *validate(loaded.value, kind, loaded.places, file, form_answer(loaded.places))])


def said(problems: Iterable[Problem]) -> list[str]:
    """Return problems as `line: sentence`."""
    return [f"{problem.place.line}: {problem.sentence}" for problem in problems]


def codes(problems: Iterable[Problem]) -> list[str]:
    """Return the codes of problems, in order."""
    return [problem.code for problem in problems]


def write_school(root: Path, *, units: Iterable[str] = ("float-or-sink",), **changed: str | None) -> Path:
    """Write the small school below `root`, with files changed by keyword (`bells="..."`; None leaves the file out), and return `root`."""
    files = {**SCHOOL, **{f"{kind}.yml": text for kind, text in changed.items()}}
    (root / "school").mkdir(parents=True, exist_ok=True)
    for name, text in files.items():
        if text is not None:
            (root / "school" / name).write_text(dedent(text).lstrip("\n"), encoding="utf-8")
    for slug in units:
        (root / "units" / slug).mkdir(parents=True, exist_ok=True)
        (root / "units" / slug / "index.md").write_text("---\ntitle: A unit\n---\n", encoding="utf-8")
    return root
