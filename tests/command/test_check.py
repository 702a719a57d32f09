"""`trivet check` reports, counts and exits as agreed."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from tests.reading.unit_files import PLAIN
from trivet.command.main import main


@pytest.fixture
def plain(tmp_path: Path) -> Path:
    """A copy of the plain department."""
    shutil.copytree(PLAIN, tmp_path / "project")
    return tmp_path / "project"


def run(root: Path, *words: str) -> Result:
    return CliRunner().invoke(main, ["--root", str(root), "check", *words])


def change(root: Path, old: str, new: str) -> None:
    index = root / "units" / "rolling-carts" / "index.md"
    text = index.read_text(encoding="utf-8")
    assert old in text
    index.write_text(text.replace(old, new, 1), encoding="utf-8")


def test_good_department_exits_0(plain: Path) -> None:
    """No problem, exit 0, and one line that says so."""
    done = run(plain)
    assert (done.exit_code, done.output) == (0, "no problems\n")


def test_error_exits_1_with_place_and_remedy(plain: Path) -> None:
    """An error is printed at its place, and the exit is 1."""
    change(plain, "title:", "titel:")
    done = run(plain)
    assert done.exit_code == 1
    assert 'units/rolling-carts/index.md:2:1: the key "titel" is not known here' in done.output
    assert done.output.splitlines()[-1] == "1 error in 1 file"


def test_warning_exits_1_only_when_strict(plain: Path) -> None:
    """A warning lets the build pass unless --strict asks otherwise."""
    change(plain, "MS-PS2-2", "TX.7.6A")
    assert run(plain).exit_code == 0
    assert run(plain, "--strict").exit_code == 1
    assert run(plain).output.splitlines()[-1] == "1 warning in 1 file"


def test_advice_never_stops(plain: Path) -> None:
    """Advice is hidden without --all and never fails, not even with --strict."""
    change(plain, "    hazards: none", "    hazards: none\n    watch: 60 s")
    assert run(plain, "--strict").exit_code == 0
    assert "(1 piece of advice with --all)" in run(plain).output
    assert "advice: hands-on, watch" in run(plain, "--all").output


def test_all_adds_the_level_of_each_card(plain: Path) -> None:
    """With --all each card and each text that is read has a line with its band."""
    lines = run(plain, "--all").output.splitlines()
    levels = [line for line in lines if line.startswith(("float-or-sink, ", "rolling-carts, "))]
    assert [line.partition(":")[0] for line in levels] == [
        "float-or-sink, online",
        "float-or-sink, hands-on",
        "float-or-sink, teacher-led",
        "float-or-sink, story.md",
        "rolling-carts, online",
        "rolling-carts, hands-on",
        "rolling-carts, teacher-led",
    ]
    assert "grades" in levels[1]
    assert lines[-1] == "no problems"


def test_json_is_json_and_nothing_else(plain: Path) -> None:
    """With --format json the output is one document, with --all too."""
    change(plain, "title:", "titel:")
    assert json.loads(run(plain, "--format", "json", "--all").output)["counts"]["error"] == 1


def test_annotations_name_file_and_line(plain: Path) -> None:
    """With --format annotations each problem is a workflow command."""
    change(plain, "title:", "titel:")
    assert "::error file=units/rolling-carts/index.md,line=2,col=1" in run(plain, "--format", "annotations").output


@pytest.mark.parametrize("words", [["--format", "jsn"], ["--nothing"], ["extra"]])
def test_misuse_exits_2(plain: Path, words: list[str]) -> None:
    """What can't be understood exits 2; a misspelled report names the near one."""
    done = run(plain, *words)
    assert done.exit_code == 2
    if "jsn" in words:
        assert "write json" in done.output


def test_computed_problems_are_told_too(plain: Path) -> None:
    """A station that needs more than the longest round is told among the rest."""
    change(plain, "(2 min, 5 times)", "(2 min, 30 times)")
    assert "more than the longest round" in run(plain).output


def test_a_unit_with_an_error_has_no_level_and_says_so(plain: Path) -> None:
    """With --all a unit that can't be read is named among the reading levels, so that nobody looks for it in vain."""
    change(plain, "hazards: none", "hazards: nothing")
    lines = run(plain, "--all").output.splitlines()
    assert "rolling-carts: left out until its errors are mended" in lines
    assert any(line.startswith("float-or-sink, online: ") for line in lines)
    assert "left out" not in run(plain).output


@pytest.mark.parametrize("words", [("rolling-carts",), ("units/rolling-carts", "--all")])
def test_check_takes_no_unit(plain: Path, words: tuple[str, ...]) -> None:
    """A unit's name after check is misuse, answered with what check does."""
    done = run(plain, *words)
    assert done.exit_code == 2
    assert f"trivet check looks at everything; leave out {words[0]}, and look for its lines in the report" in done.output
