"""Every example is reported on exactly as its `expected.txt` says, and every problem code has an example."""

from __future__ import annotations

import ast
import re
from pathlib import Path

import pytest

from tests.examples.harness import PLAIN, cases, command_of, department_of, report_on
from trivet.command.check import problems_of
from trivet.model.problem import Severity

PACKAGE = Path(__file__).resolve().parents[2] / "plugins" / "trivet"
JARGON = re.compile(r"\binvalid\b|traceback|exception|schema|NoneType|\bregex\b|mapping|scalar", re.IGNORECASE)
KEBAB = re.compile(r"[a-z]+(?:-[a-z0-9]+)+")

MAKERS = ("Problem", "problem", "error", "warning", "advice", "stop", "drop", "Trap", "Slip", "Finding", "Fault", "note")
"""Names of what makes a problem, without underscores: their first word is a code even where it has no hyphen."""

PRIVATE_SIDE = ("roster.py", "roster_titles.py", "pair_rules.py", "private.py", "absences.py", "pre_check.py")
"""Modules that read the private folder: `trivet check` never opens it, so their codes are tested beside them."""

NO_EXAMPLE = ("file-unreadable",)
"""Codes of what a file in a folder can't show: a name that no disk takes, a file that may not be read. They have a test of their own."""

NOT_CODES = frozenset({
    "hands-on", "teacher-led", "write-up", "pre-check", "unit-translation", "utf-8", "utf-8-sig", "http-equiv", "x-code", "x-hint",
    "x-hint-keys", "x-instead", "x-form", "no-class", "no-unit",
})  # fmt: skip
"""Words with a hyphen in reading/ and planning/ that are no codes, and two reasons for having no plan that reading answers first."""


def codes_in(path: Path) -> set[str]:
    """The codes in a module: words with hyphens in calls and tables, and any word that a maker of problems takes first."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        words: list[ast.expr] = []
        if isinstance(node, ast.Call):
            words = [*node.args, *(keyword.value for keyword in node.keywords)]
            name = node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")
            if name.strip("_") in MAKERS and node.args and _text(node.args[0]).isalpha():
                found.add(_text(node.args[0]))
        elif isinstance(node, ast.Dict | ast.Tuple):
            words = [*(node.values if isinstance(node, ast.Dict) else node.elts)]
        found |= {_text(word) for word in words if KEBAB.fullmatch(_text(word))}
    return found


def _text(node: ast.expr) -> str:
    return node.value if isinstance(node, ast.Constant) and isinstance(node.value, str) else ""


def modules() -> list[Path]:
    return [path for folder in ("reading", "planning") for path in sorted((PACKAGE / folder).rglob("*.py"))]


@pytest.mark.parametrize("case", [*cases("bad"), *cases("good")], ids=lambda case: case.name)
def test_report_is_the_expected_one(case: Path, tmp_path: Path) -> None:
    """The text report of a case is exactly the one beside it."""
    assert report_on(case, tmp_path) == (case / "expected.txt").read_text(encoding="utf-8")


@pytest.mark.parametrize("case", [case for case in cases("bad") if not command_of(case)], ids=lambda case: case.name)
def test_bad_example_says_what_to_do(case: Path, tmp_path: Path) -> None:
    """A bad example has a problem, and each problem says where and what to do, in plain words."""
    problems = problems_of(department_of(case, tmp_path)).problems
    assert problems
    for problem in problems:
        assert problem.remedy or problem.code in ("class-size", "year-ends"), problem
        assert not JARGON.search(problem.sentence), problem


@pytest.mark.parametrize("case", [case for case in cases("bad") if command_of(case)], ids=lambda case: case.name)
def test_what_another_command_says_names_the_line_and_the_remedy(case: Path, tmp_path: Path) -> None:
    """Each problem of a list in the private folder stands with its line, what is wrong and what to do, in plain words."""
    *lines, _, code = report_on(case, tmp_path).splitlines()
    assert lines
    for line in lines:
        assert re.match(r"private/\S+:\d+:\d+: (warning: )?[^;]+; \S", line), line
        assert not JARGON.search(line), line
    assert code == ("exit 1" if any(": warning: " not in line for line in lines) else "exit 0")


@pytest.mark.parametrize("case", cases("good"), ids=lambda case: case.name)
def test_good_example_has_neither_error_nor_warning(case: Path, tmp_path: Path) -> None:
    """A good example passes, with advice at most."""
    problems = problems_of(department_of(case, tmp_path)).problems
    assert [problem for problem in problems if problem.severity is not Severity.ADVICE] == []


def test_designed_unit_is_read_whole(tmp_path: Path) -> None:
    """The forty-line unit of the design gives a unit with all that it says."""
    checked = problems_of(department_of(PLAIN.parent / "unit-as-designed", tmp_path))
    assert checked.department
    unit = checked.department.units["float-or-sink"]
    assert [step.total_minutes for step in unit.hands_on.steps] == [3, 9, 5]
    assert [str(material.quantity) + material.unit for material in unit.hands_on.materials] == ["1", "1", "60mL"]
    assert unit.hands_on.materials[1].per_count == 2
    assert unit.hands_on.hazards == ("glass", "spill")
    assert unit.online.open == "sim/"
    assert unit.grades == (6, 8)
    assert unit.teacher_led.read is not None
    assert unit.teacher_led.read.words > 40
    assert unit.write_up.claim_starts == "Whether an object floats depends on ..."
    assert unit.body.strip().startswith("Notes for the teacher")


def test_every_code_has_a_bad_example(tmp_path: Path) -> None:
    """Each problem code that stands anywhere in reading/ or planning/ is met by a bad example; there are many of them."""
    met = {problem.code for case in cases("bad") for problem in problems_of(department_of(case, tmp_path / case.name)).problems}
    written = {code: path.name for path in modules() if path.name not in PRIVATE_SIDE for code in codes_in(path)}
    missing = {code: name for code, name in written.items() if code not in met | NOT_CODES}
    assert missing == {code: written[code] for code in NO_EXAMPLE}
    assert len(met) >= 45


def test_codes_without_an_example_have_a_test() -> None:
    """Each problem code that no example can show, such as those of the private side, stands in a test of its own."""
    tests = "\n".join(path.read_text(encoding="utf-8") for path in (PACKAGE.parents[1] / "tests").rglob("test_*.py"))
    written = {code for path in modules() if path.name in PRIVATE_SIDE for code in codes_in(path)} | set(NO_EXAMPLE)
    assert {code for code in written if f'"{code}"' not in tests} - NOT_CODES == set()
