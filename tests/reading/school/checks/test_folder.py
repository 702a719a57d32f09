from __future__ import annotations

from pathlib import Path

import pytest

from trivet.reading.school.checks.folder import KINDS, check_folder


def remedies(tmp_path: Path, *names: str) -> list[str]:
    """Write empty files (a name with a slash at its end is a folder) and return the remedies for them."""
    for name in names:
        (tmp_path / name).mkdir() if name.endswith("/") else (tmp_path / name).touch()
    return [problem.remedy for problem in check_folder(tmp_path)]


def test_files_that_are_read_and_notes_pass(tmp_path: Path) -> None:
    """All kinds, the folder of kept groups, notes for colleagues and hidden files are let be."""
    assert remedies(tmp_path, *(f"{kind}.yml" for kind in KINDS), "groups/", "README.md", "notes.txt", ".keep") == []


@pytest.mark.parametrize(
    ("name", "remedy"),
    [
        ("bell.yml", "did you mean bells.yml?"),
        ("bells.yaml", "did you mean bells.yml?"),
        ("Classes.yml", "did you mean classes.yml?"),
        ("group/", "did you mean groups/?"),
        ("archive/", "move it out of school/"),
    ],
)
def test_a_misspelled_file_is_answered_with_the_one_that_is_read(tmp_path: Path, name: str, remedy: str) -> None:
    """A file that nothing reads would be missed without a word."""
    assert remedies(tmp_path, name) == [remedy]


def test_a_list_of_students_belongs_in_private(tmp_path: Path) -> None:
    """A table under school/ is shared with everyone who sees the repository."""
    assert remedies(tmp_path, "roster-p1.csv")[0].startswith("move a list of students to private/")
