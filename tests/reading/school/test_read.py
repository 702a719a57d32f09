from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory
from textwrap import dedent
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support.sheets import SCHOOL, codes, said, write_school
from trivet.model.problem import Severity
from trivet.reading.school.builtin import EXPECTATIONS, ROLES
from trivet.reading.school.read import read_school

KINDS = ("school", "bells", "calendar", "classes", "rooms", "roles", "expectations", "inventory", "runs")


def test_a_small_school_is_read_without_a_word(tmp_path: Path) -> None:
    """Six files make a school, and what is left out has its default."""
    read = read_school(write_school(tmp_path))
    assert read.problems == ()
    assert read.school is not None
    assert (read.school.roles, read.school.expectations, read.school.inventory) == (ROLES, EXPECTATIONS, ())
    assert [run.unit for run in read.school.runs] == ["float-or-sink"]
    assert set(read.places) == set(read.sources) == {f"school/{name}" for name in SCHOOL}


@pytest.mark.parametrize("kind", ["school", "bells", "calendar", "classes", "rooms"])
def test_a_missing_file_is_answered_with_what_to_write(tmp_path: Path, kind: str) -> None:
    """Five files must be there; each is one error at its own path, and there is no school."""
    read = read_school(write_school(tmp_path, **dict[str, Any]({kind: None})))
    assert read.school is None
    missing = [problem for problem in read.problems if problem.code == "file-missing"]
    assert [problem.place.file for problem in missing] == [f"school/{kind}.yml"]
    assert missing[0].remedy.startswith("write `")


def test_without_runs_there_is_a_school_in_which_nothing_is_planned(tmp_path: Path) -> None:
    """A department may start with its rooms and classes."""
    read = read_school(write_school(tmp_path, runs=None))
    assert read.problems == ()
    assert read.school is not None
    assert read.school.runs == ()


def test_problems_of_all_files_come_at_once(tmp_path: Path) -> None:
    """A fault in one file hides none in another, and problems stand in the order of files and lines."""
    root = write_school(
        tmp_path, bells="day types:\n  regular:\n    P1: 9:00-8:00\n", rooms="rooms:\n  r12:\n    nam: x\n", runs="runs: 3\n"
    )
    read = read_school(root)
    files = [problem.place.file for problem in read.problems]
    assert sorted(files) == files
    assert {"school/bells.yml", "school/rooms.yml", "school/runs.yml"} <= set(files)


def test_what_names_nothing_is_left_out_and_the_rest_stays(tmp_path: Path) -> None:
    """A run of an unknown unit is an error, and the other runs are still there to be shown."""
    second = "  - class: p1\n    unit: no-such-unit\n    starts: 2026-12-07\n"
    read = read_school(write_school(tmp_path, runs=dedent(SCHOOL["runs.yml"]).lstrip() + second))
    assert codes(read.problems) == ["unknown-unit"]
    assert read.school is not None
    assert [run.unit for run in read.school.runs] == ["float-or-sink"]


def test_a_class_without_a_room_takes_its_runs_with_it_and_says_so_once(tmp_path: Path) -> None:
    """One slip is one problem: the runs of the class are not answered as well."""
    read = read_school(write_school(tmp_path, classes=SCHOOL["classes.yml"].replace("r12", "r21")))
    assert said(read.problems) == ['7: class p1, room: there is no room "r21"; write r12']
    assert read.school is not None
    assert (read.school.classes, read.school.runs) == ({}, ())


def test_an_empty_folder_gets_five_problems_and_no_exception(tmp_path: Path) -> None:
    """Where nothing is there, each file that must be is named."""
    read = read_school(tmp_path)
    assert read.school is None
    assert codes(read.problems) == ["file-missing"] * 5


def test_the_private_folder_is_never_opened(tmp_path: Path) -> None:
    """What is read is the same with a private folder, without it, and with one that can't be read."""
    root = write_school(tmp_path)
    before = read_school(root)
    (root / "private").mkdir()
    (root / "private" / "roster-p1.csv").write_bytes(b"seat,name\n1,\xff\xfe\n")
    assert read_school(root) == before


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(KINDS), st.text(max_size=60), st.booleans())
def test_no_text_raises(kind: str, text: str, nested: bool) -> None:
    """Whatever stands in a file, the answer is a value with problems."""
    with TemporaryDirectory() as folder:
        root = write_school(Path(folder))
        written = f"{kind}:\n  {text}\n" if nested else text
        (root / "school" / f"{kind}.yml").write_bytes(written.encode("utf-8", errors="replace"))
        read = read_school(root)
        assert read.school is not None or any(problem.severity is Severity.ERROR for problem in read.problems)


SCRAMBLED = st.sampled_from(
    ["2026-02-30", "P9", "9:00-8:00", "1-99", "0", "true", "x: y", "- a", "A, B", "''", "[]", "{}", "&a b", "12", "~"]
)


@settings(max_examples=120, deadline=None)
@given(st.sampled_from(sorted(SCHOOL)), st.integers(0, 12), SCRAMBLED)
def test_no_changed_line_raises(name: str, line: int, value: str) -> None:
    """A value of the small school is replaced by something else, and reading still ends with a value."""
    with TemporaryDirectory() as folder:
        root = write_school(Path(folder))
        path = root / "school" / name
        lines = path.read_text(encoding="utf-8").splitlines()
        at = line % len(lines)
        lines[at] = lines[at].partition(":")[0] + ": " + value
        path.write_text("\n".join(lines) + "\n", encoding="utf-8")
        read = read_school(root)
        assert read.school is not None or any(problem.severity is Severity.ERROR for problem in read.problems)
