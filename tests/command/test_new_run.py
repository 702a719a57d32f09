"""`trivet new run`: proposes a run, prints its lines, and writes them only when asked and only where nothing breaks."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from tests.command.test_what_if import digest
from tests.support.project import copy_project
from trivet.command import new_run
from trivet.command.check import problems_of
from trivet.command.main import main
from trivet.model.problem import Severity

TODAY = ["--today", "2026-11-25"]


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """A copy of the demo."""
    return copy_project(tmp_path / "project")


def run(root: Path, *words: str) -> Result:
    return CliRunner().invoke(main, ["--root", str(root), "new", "run", *words])


def runs_of(root: Path) -> Path:
    return root / "school" / "runs.yml"


def test_the_first_fitting_date(project: Path) -> None:
    """Without a date the first one fits on which nothing is to be decided; the lines stand there, and nothing is written."""
    before = digest(project)
    done = run(project, "warm-metal-cool-water", "--class", "p2", *TODAY)
    assert done.exit_code == 0, done.output
    assert "Warm metal, cool water in p2: rotating rounds\n" in done.output
    pre_check, first = done.output.splitlines()[1:3]
    assert first.startswith("  Monday, January 4: round 1 of 3")
    assert re.fullmatch(r"  \w+, December \d+: pre-check, 5 min at the end of the lesson", pre_check)
    assert "There is no meeting for the pre-check" in run(project, "float-or-sink", "--class", "k3", "--starts", "2026-08-25").output
    assert "  - class: p2\n    unit: warm-metal-cool-water\n    starts: 2027-01-04\n" in done.output
    assert "To decide" not in done.output
    assert digest(project) == before


def test_written_lines_keep_the_file_and_pass(project: Path) -> None:
    """--write adds the lines that were printed behind all others; every older line, comments too, stays, and `trivet check` is quiet."""
    runs = runs_of(project)
    old = runs.read_text(encoding="utf-8") + "\n# what comes next year\n"
    runs.write_text(old, encoding="utf-8")
    said = run(project, "float-or-sink", "--class", "r2", *TODAY).output
    done = run(project, "float-or-sink", "--class", "r2", *TODAY, "--write")
    assert done.exit_code == 0, done.output
    new = runs.read_text(encoding="utf-8")
    added = "  - class: r2\n    unit: float-or-sink\n    starts: 2026-11-30\n"
    assert added in said and new == old.replace("\n\n# what comes", f"\n{added}\n# what comes")
    assert f"Added to school/runs.yml, line {new[: new.index(added)].count(chr(10)) + 1}." in done.output
    assert [problem.sentence for problem in problems_of(project).problems if problem.severity is not Severity.ADVICE] == []
    again = run(project, "float-or-sink", "--class", "r2", *TODAY)
    assert again.exit_code == 2
    assert "r2 already runs float-or-sink (school/runs.yml:" in again.output


def test_after_with_a_gap(project: Path) -> None:
    """--after and --gap write the keys of the same names, and what is to be decided is said before."""
    done = run(project, "warm-metal-cool-water", "--class", "k3", "--after", "moving-plates", "--gap", "2 weeks", "--write")
    assert done.exit_code == 0
    assert "To decide:\n  warning: k3, warm-metal-cool-water: it begins in Quarter 1 and ends on Wednesday, October 28" in done.output
    text = runs_of(project).read_text(encoding="utf-8")
    assert text.endswith("  - class: k3\n    unit: warm-metal-cool-water\n    after: moving-plates\n    gap: 2 weeks\n")


def test_by_a_date(project: Path) -> None:
    """--by alone writes no first day: the unit begins as late as it can."""
    done = run(project, "warm-metal-cool-water", "--class", "p2", "--by", "2027-02-05")
    assert "  - class: p2\n    unit: warm-metal-cool-water\n    by: 2027-02-05\n" in done.output
    assert "Thursday, February 4: write-up" in done.output or "Friday, February 5" in done.output


def test_a_first_unit_is_a_whole_class_one(project: Path) -> None:
    """A class without a run gets `way: whole class`, unless another way is asked; a file that is not there is made."""
    runs_of(project).unlink()
    for folder in (project / "school" / "groups").iterdir():
        for lock in folder.iterdir():
            lock.unlink()
    done = run(project, "moving-plates", "--class", "r2", *TODAY, "--write")
    assert "Moving plates in r2: whole-class rounds, its first unit of the year" in done.output
    added = "  - class: r2\n    unit: moving-plates\n    starts: 2026-11-30\n    way: whole class\n"
    assert runs_of(project).read_text(encoding="utf-8") == f"runs:\n{added}"
    assert "way: whole class" not in run(project, "moving-plates", "--class", "p1", *TODAY, "--way", "rotate").output
    second = run(project, "float-or-sink", "--class", "r2", *TODAY)
    assert "Float or sink? in r2: rotating rounds\n  Friday, December 4" in second.output or "Monday, December 7" in second.output


def test_a_unit_that_would_come_first_by_its_date(project: Path) -> None:
    """A unit that is to end before the class's first one takes its place as the whole-class one; with another way asked it does not."""
    done = run(project, "beaks-and-seeds", "--class", "k6a", "--by", "2026-11-24").output
    assert "Beaks and seeds in k6a: whole-class rounds, its first unit of the year" in done
    assert "    by: 2026-11-24\n    way: whole class\n" in done
    assert "way:" not in run(project, "beaks-and-seeds", "--class", "k6a", "--by", "2026-11-24", "--way", "rotate").output


def test_a_year_that_is_over_is_said_once(project: Path) -> None:
    """Where no day is left the reason stands there once, and nothing is offered."""
    done = run(project, "float-or-sink", "--class", "r2", "--today", "2027-06-02")
    assert done.exit_code == 1
    assert done.stdout.count("2 of 3 rounds fit between 2027-06-02 and the last day of the year") == 1
    assert "starts:" not in done.output


def test_what_would_be_an_error_is_never_written(project: Path) -> None:
    """A unit with a hazard that asks for an adult is posted one where the class has one, and refused where it has none."""
    unit = project / "units" / "float-or-sink" / "index.md"
    unit.write_text(
        unit.read_text(encoding="utf-8").replace("hazards: glass, spill", "hazards: open flame, glass, spill"), encoding="utf-8"
    )
    before = runs_of(project).read_bytes()
    done = run(project, "float-or-sink", "--class", "r2", *TODAY, "--write")
    assert done.exit_code == 1
    assert "open flame" in done.output + done.stderr and "Nothing was written" in done.output + done.stderr
    assert runs_of(project).read_bytes() == before


def test_what_check_finds_puts_the_file_back(project: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where `trivet check` finds an error after writing, the file is as it was, to the byte."""
    before = runs_of(project).read_bytes()
    monkeypatch.setattr(new_run, "with_run", lambda text, _lines: (text.replace("class: p1", "clas: p1"), 1))
    done = run(project, "float-or-sink", "--class", "r2", *TODAY, "--write")
    assert done.exit_code == 1
    assert "school/runs.yml is as it was" in done.output + done.stderr
    assert runs_of(project).read_bytes() == before


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["float-or-sinc", "--class", "r2"], "there is no unit float-or-sinc; did you mean float-or-sink?"),
        (["float-or-sink", "--class", "r3"], "there is no class r3; write one that stands in school/classes.yml: k3, k6a"),
        (["float-or-sink", "--class", "r2", "--starts", "2026-11-26"], "write --starts 2026-11-30, the next day on which it meets"),
        (["float-or-sink", "--class", "r2", "--starts", "2027-07-01"], "write --starts with a day from 2026-08-24 to 2027-06-04"),
        (["float-or-sink", "--class", "r2", "--starts", "soon"], "write --starts with a day such as 2026-11-30"),
        (["float-or-sink", "--class", "r2", "--after", "moving-plate"], "r2 does not run moving-plate; did you mean moving-plates?"),
        (["float-or-sink", "--class", "r2", "--gap", "2 weeks"], "write --after with the unit before it"),
        (["float-or-sink", "--class", "r2", "--after", "moving-plates", "--gap", "a while"], "write 1 week"),
        (["float-or-sink", "--class", "r2", "--after", "moving-plates", "--starts", "2026-11-30"], "leave out --starts, or --after"),
        (["float-or-sink", "--class", "r2", "--way", "circus"], 'write --way rotate, or --way "whole class"'),
    ],
)
def test_misuse(project: Path, words: list[str], said: str) -> None:
    """What can't be so is misuse, with what to write."""
    done = run(project, *words)
    assert done.exit_code == 2
    assert said in done.output
