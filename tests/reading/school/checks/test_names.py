from __future__ import annotations

from pathlib import Path

import pytest

from tests.support.sheets import codes
from trivet.model.places import Places
from trivet.reading.school.checks.names import NAME_WORDS, check_keys, check_tables, is_name_word


@pytest.mark.parametrize("word", ["name", "Name", "FIRST NAME", "last_name", "student-name", " Students ", "Apellidos"])
def test_words_for_names_are_known_in_any_dress(word: str) -> None:
    """Capitals, underscores and hyphens do not hide a column of names."""
    assert is_name_word(word)


@pytest.mark.parametrize("word", ["seat", "mass (g)", "planet", "file name of the picture", "named", ""])
def test_other_words_are_let_be(word: str) -> None:
    """Columns of measurements and numbers pass."""
    assert not is_name_word(word)


@pytest.mark.parametrize(
    ("path", "text", "column"),
    [
        ("units/float-or-sink/data/class.csv", "seat,Name,mass (g)\n1,x,2\n", 6),
        ("units/guide/list.tsv", "seat\tfirst name\n", 6),
        ("school/groups/p1/list.csv", '"Student";"team"\n', 1),
        ("units/x/UPPER.CSV", "\ufeffname,mass\r\n", 1),
    ],
)
def test_a_table_with_a_column_for_names_is_an_error_at_that_column(tmp_path: Path, path: str, text: str, column: int) -> None:
    """Commas, semicolons, tabs, quotes, capitals and a byte-order mark are all seen through."""
    (tmp_path / path).parent.mkdir(parents=True)
    (tmp_path / path).write_text(text, encoding="utf-8")
    (problem,) = check_tables(tmp_path)
    assert (problem.code, problem.place.file, problem.place.line, problem.place.column) == ("student-names", path, 1, column)


def test_tables_of_data_and_other_files_pass(tmp_path: Path) -> None:
    """Only tables are looked into, and only their first line; private/ is none of this check's business."""
    (tmp_path / "units" / "x").mkdir(parents=True)
    (tmp_path / "private").mkdir()
    (tmp_path / "units" / "x" / "data.csv").write_text("solid,mass (g)\nname,3\n", encoding="utf-8")
    (tmp_path / "units" / "x" / "bytes.csv").write_bytes(b"\xff\xfe\x00\x01")
    (tmp_path / "units" / "x" / "empty.csv").touch()
    (tmp_path / "units" / "x" / "text.md").write_text("name,level\n", encoding="utf-8")
    (tmp_path / "private" / "roster-p1.csv").write_text("seat,name\n", encoding="utf-8")
    assert list(check_tables(tmp_path)) == []


def test_a_key_for_names_is_found_however_deep() -> None:
    """A name for each student inside teams is an error, whatever stands around it."""
    value = {"groups": {"A": {"teams": {"A1": {"p1-01": {"name": "x"}}}}, "B": [{"Student Name": "y"}]}}
    assert codes(check_keys(value, Places("school/groups/p1/x.yml"))) == ["student-names", "student-names"]


def test_keys_that_name_other_things_are_let_be() -> None:
    """A class and a room have a name; their students do not."""
    value = {"classes": {"p1": {"name": "Science", "students": ["a", "b"]}}}
    (problem,) = check_keys(value, Places("school/classes.yml"), but=("name",))
    assert problem.what == 'a key is called "students"'


def test_ids_that_a_department_chose_are_let_be() -> None:
    """A teacher called Child and a class for kids are no lists of students; what stands under them still is looked at."""
    value = {"teachers": {"child": "Ms. Child"}, "classes": {"kids": {"pupils": ["a"]}}}
    assert [problem.what for problem in check_keys(value, Places("school/x.yml"))] == ['a key is called "pupils"']


def test_words_for_names_are_written_plainly() -> None:
    """The list holds each word as it is compared: small, single-spaced."""
    assert all(is_name_word(word) for word in NAME_WORDS)
