"""`trivet write`: all pages as files, or none."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from tests.command.small_project import run, small_project
from trivet.command.main import main
from trivet.command.write import write


def test_what_is_said_is_what_was_written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The count is that of the files below the folder, which is made; a second time writes the same bytes over them."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1795564800")
    project, to = small_project(tmp_path / "project"), tmp_path / "a" / "b"
    done = run(write, project, [str(to)])
    files = {path: path.read_bytes() for path in to.rglob("*") if path.is_file()}
    assert (done.exit_code, done.output) == (0, f"{len(files)} files written below {to}\n")
    assert {"index.md", "units/floating/index.md", "lesson/p1/floating/index.md"} <= {path.relative_to(to).as_posix() for path in files}
    run(write, project, [str(to)])
    assert {path: path.read_bytes() for path in to.rglob("*") if path.is_file()} == files


def test_with_an_error_nothing_is_written(tmp_path: Path) -> None:
    """An error is reported as `trivet check` does, the command exits with 1, and the folder is not even made."""
    project = small_project(tmp_path / "project")
    unit = project / "units" / "floating" / "index.md"
    unit.write_text(unit.read_text(encoding="utf-8").replace("grades: 6-8", "grades: 8-6"), encoding="utf-8")
    done = run(write, project, [str(tmp_path / "out")])
    assert done.exit_code == 1
    assert "units/floating/index.md:4:" in done.output and "1 error in 1 file" in done.output
    assert not (tmp_path / "out").exists()


def test_a_file_in_the_way_is_misuse(tmp_path: Path) -> None:
    """A file where the folder should be is misuse (exit 2), and stays as it is."""
    project, taken = small_project(tmp_path / "project"), tmp_path / "taken"
    taken.write_text("mine", encoding="utf-8")
    assert CliRunner().invoke(main, ["--root", str(project), "write", str(taken)]).exit_code == 2
    assert taken.read_text(encoding="utf-8") == "mine"
