"""Tables in prose hold no names of students."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.reading.unit_files import codes, read


@pytest.mark.parametrize("title", ["Name", "student name", "**Last name**", "Nombre", "Student_Name"])
def test_names_in_a_table_are_refused(tmp_path: Path, title: str) -> None:
    """A column of names in prose is an error, whatever it is called."""
    found = read(tmp_path, ("See also", f"| {title} | n |\n| --- | --- |\n| A. B. | 1 |\n\nSee also"))
    assert codes(found) == ["student-names"]


def test_counts_of_students_are_no_names(tmp_path: Path) -> None:
    """A column of numbers called students counts them and passes."""
    assert codes(read(tmp_path, ("See also", "| students | teams |\n| --- | --- |\n| 24 | 6 |\n| 31 | 8 |\n\nSee also"))) == []


def test_names_in_code_are_words(tmp_path: Path) -> None:
    """A table inside code is shown, not kept."""
    assert codes(read(tmp_path, ("See also", "```\n| Name | n |\n| --- | --- |\n| A | 1 |\n```\n\nSee also"))) == []
