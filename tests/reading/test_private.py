from __future__ import annotations

from pathlib import Path

import pytest

from tests.support.department import tiny_school
from tests.support.sheets import codes
from trivet.reading.private import check_local, private_folder

REAL = tiny_school(demo=False).settings
DEMO = tiny_school(demo=True).settings


def folders(root: Path, *rosters: str) -> Path:
    """Make folders below `root`, each with a roster in it, and return `root`."""
    for name in rosters:
        (root / name).mkdir(parents=True, exist_ok=True)
        (root / name / "roster-p1.csv").touch()
    return root


def test_without_a_roster_there_is_no_private_folder(tmp_path: Path) -> None:
    """A fresh checkout has nothing private."""
    assert private_folder(tmp_path, REAL) is None
    (tmp_path / "private").mkdir()
    assert private_folder(tmp_path, REAL) is None


def test_private_counts_where_it_holds_a_roster(tmp_path: Path) -> None:
    """The folder inside the project, once a list is in it; also for a demo school."""
    root = folders(tmp_path, "private", "private/example")
    assert private_folder(root, REAL) == root / "private"
    assert private_folder(root, DEMO) == root / "private"


def test_the_example_counts_for_a_demo_school_alone(tmp_path: Path) -> None:
    """Invented lists never stand in for real ones."""
    root = folders(tmp_path, "private/example")
    assert private_folder(root, DEMO) == root / "private" / "example"
    assert private_folder(root, REAL) is None


def test_a_folder_that_is_named_comes_first(tmp_path: Path) -> None:
    """The district's drive, named in a file that git ignores, is used even where private/ holds a roster."""
    root = folders(tmp_path / "project", "private")
    drive = folders(tmp_path, "drive") / "drive"
    (root / "trivet.local.yml").write_text(f"folder: {drive}\n", encoding="utf-8")
    assert private_folder(root, REAL) == drive.resolve()
    (root / "trivet.local.yml").write_text("folder: ../drive  # beside the project\n", encoding="utf-8")
    assert private_folder(root, REAL) == drive.resolve()
    assert check_local(root) == ()


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("folder: no-such-folder\n", "no-such-folder"),
        ("folder: school\n", "private-in-shared"),
        ("folder: .\n", "private-in-shared"),
        ("folder:\n", "empty-value"),
        ("- a\n", "empty-value"),
        ("folder: a\nfolder: b\n", "duplicate-key"),
        ("", "file-empty"),
    ],
)
def test_a_local_file_that_can_not_be_followed_is_told_and_nothing_is_guessed(tmp_path: Path, text: str, code: str) -> None:
    """With a fault in it there is no private folder at all: falling back to another one could draw from the wrong lists."""
    root = folders(tmp_path, "private", "school")
    (root / "trivet.local.yml").write_text(text, encoding="utf-8")
    assert codes(check_local(root)) == [code]
    assert private_folder(root, DEMO) is None


def test_a_folder_inside_private_may_be_named(tmp_path: Path) -> None:
    """What lies under private/ is ignored by git."""
    root = folders(tmp_path, "private/2026")
    (root / "trivet.local.yml").write_text("folder: private/2026\n", encoding="utf-8")
    assert private_folder(root, REAL) == (root / "private" / "2026").resolve()
