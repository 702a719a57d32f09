from __future__ import annotations

import ast
from pathlib import Path

from tests.examples.harness import cases, department_of
from trivet.command.check import problems_of
from trivet.reading.school.sentences import FORMS

FORM_CODES = {code for code, _ in FORMS.values()}
READING = Path(__file__).resolve().parents[3] / "plugins" / "trivet" / "reading"
SOURCES = (*sorted((READING / "school").rglob("*.py")), READING / "lock.py")


def codes_in(path: Path) -> set[str]:
    """The problem codes that a module writes out: the first text handed to `error`, `warning` or `Problem`."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call):
            name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            first = node.args[0] if node.args else None
            if name in ("error", "warning", "Problem") and isinstance(first, ast.Constant):
                found.add(str(first.value))
            if name == "not_known":
                kind = node.args[2]
                assert isinstance(kind, ast.Constant), "the kind is written out, so that its code can be found"
                found.add(f"unknown-{str(kind.value).replace(' ', '-')}")
    return found


def test_every_code_of_the_school_side_has_an_example(tmp_path: Path) -> None:
    """Each code that school files and kept groups can be answered with is met in a folder of examples."""
    written = FORM_CODES.union(*(codes_in(path) for path in SOURCES))
    assert {"unknown-day-type", "lock-pairs", "file-missing", "student-names"} <= written
    met = set()
    for case in cases("bad"):
        if case.name.startswith("school-"):
            met |= {problem.code for problem in problems_of(department_of(case, tmp_path / case.name)).problems}
    assert written - met == set()
