"""The project that a command works on."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from trivet.command.main import main
from trivet.command.root import find_root


def project(at: Path) -> Path:
    (at / "school").mkdir(parents=True)
    (at / "school" / "school.yml").touch()
    return at


def test_the_nearest_folder_above_is_the_project(tmp_path: Path) -> None:
    """Of two projects one in the other the inner one is found from below, the outer one from beside it, none from above."""
    outer, inner = project(tmp_path / "a"), project(tmp_path / "a" / "b")
    (inner / "units" / "x").mkdir(parents=True)
    (outer / "units").mkdir()
    assert find_root(inner / "units" / "x") == find_root(inner) == inner
    assert find_root(outer / "units") == outer
    assert find_root(tmp_path) is None


def test_outside_a_project_a_command_says_where_to_go(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Without a project, and with --root on a folder that is none, a command is misused (exit 2) and says what to write."""
    monkeypatch.chdir(tmp_path)
    for words in (["check"], ["write", "out"], ["--root", str(tmp_path), "check"], ["check", "--root", str(tmp_path)]):
        done = CliRunner().invoke(main, words)
        assert done.exit_code == 2
        assert "school/school.yml" in done.output and "--root" in done.output
    assert list(tmp_path.iterdir()) == []


def test_a_folder_of_that_name_is_no_project(tmp_path: Path) -> None:
    """A folder called school.yml is not the file."""
    (tmp_path / "school" / "school.yml").mkdir(parents=True)
    assert find_root(tmp_path) is None
