"""A department is read from committed files alone; faults stay where they are, and nothing stops the reader."""

from __future__ import annotations

import builtins
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.reading.unit_files import PLAIN
from trivet.model.problem import Severity
from trivet.reading.department import read_department


@pytest.fixture
def plain(tmp_path: Path) -> Path:
    """A copy of the plain department."""
    shutil.copytree(PLAIN, tmp_path / "project")
    return tmp_path / "project"


def test_plain_department_is_read_whole(plain: Path) -> None:
    """Both units and the school are there, without a problem, and the texts to quote from."""
    read = read_department(plain)
    assert read.problems == ()
    assert read.department is not None
    assert list(read.department.units) == ["float-or-sink", "rolling-carts"]
    assert read.units_with_problems == ()
    assert {"school/bells.yml", "units/float-or-sink/index.md", "units/float-or-sink/story.md"} <= set(read.sources)


def test_unit_with_an_error_is_left_out_alone(plain: Path) -> None:
    """A fault in one unit leaves the other and the school."""
    index = plain / "units" / "rolling-carts" / "index.md"
    index.write_text(index.read_text().replace("title:", "titel:"))
    read = read_department(plain)
    assert read.department is not None
    assert list(read.department.units) == ["float-or-sink"]
    assert read.units_with_problems == ("rolling-carts",)


def test_school_that_can_t_be_read_leaves_units_checked(plain: Path) -> None:
    """Without a school there is no department, units are still checked, and no unit is blamed for code that may be listed."""
    (plain / "school" / "school.yml").write_text("name: [\n")
    index = plain / "units" / "rolling-carts" / "index.md"
    index.write_text(index.read_text().replace("title:", "titel:"))
    read = read_department(plain)
    assert read.department is None
    codes = {problem.code for problem in read.problems}
    assert "unknown-key" in codes
    assert "code-not-listed" not in codes


def test_private_folder_is_never_opened(plain: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Reading opens no file and lists no folder under private/."""
    (plain / "private").mkdir()
    (plain / "private" / "roster-p1.csv").write_text("seat,name\n1,secret\n")
    touched: list[str] = []
    for place, name in ((builtins, "open"), (os, "scandir"), (os, "listdir"), (os, "open")):
        original = getattr(place, name)

        def spy(path: object = ".", *rest: object, _original: object = original, **more: object) -> object:
            touched.append(str(path))
            return _original(path, *rest, **more)  # type: ignore[operator]

        monkeypatch.setattr(place, name, spy)
    read_department(plain)
    assert any("units" in path for path in touched)
    assert [path for path in touched if "private" in Path(path).parts] == []


def test_same_files_give_the_same_answer_in_any_order(plain: Path, tmp_path: Path) -> None:
    """The answer does not hang on the order in which the disk lists files."""
    other = tmp_path / "other"
    for path in sorted(plain.rglob("*"), reverse=True):
        target = other / path.relative_to(plain)
        target.parent.mkdir(parents=True, exist_ok=True)
        if path.is_file():
            shutil.copy(path, target)
    assert read_department(plain) == read_department(other)


def test_good_department_loads_no_schema_library(root: Path) -> None:
    """A department without a fault is read without importing jsonschema or pint, which take longer than all the rest."""
    code = (
        "import sys, pathlib; from trivet.command.check import problems_of;"
        f"found = problems_of(pathlib.Path({str(PLAIN)!r}));"
        "print(len(found.problems), 'jsonschema' in sys.modules, 'pint' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=root)
    assert done.stdout.split() == ["0", "False", "False"]


def test_folder_of_drafts_is_answered(plain: Path) -> None:
    """Pages in a folder without index.md would be published by nobody, and are answered; pictures alone are not."""
    (plain / "units" / "drafts").mkdir()
    (plain / "units" / "drafts" / "notes.md").write_text("Later.")
    (plain / "units" / "pictures").mkdir()
    (plain / "units" / "pictures" / "a.png").write_bytes(b"x")
    assert [problem.code for problem in read_department(plain).problems] == ["index-missing"]


def test_links_out_of_the_folder_are_never_followed(plain: Path, tmp_path: Path) -> None:
    """A link in a unit, a linked unit and a linked school file are answered, and what they point at is not read."""
    (tmp_path / "secret").mkdir()
    (tmp_path / "secret" / "index.md").write_text("secret")
    (plain / "units" / "borrowed").symlink_to(tmp_path / "secret")
    (plain / "units" / "rolling-carts" / "x.md").symlink_to(tmp_path / "secret" / "index.md")
    (plain / "school" / "runs.yml").unlink()
    (plain / "school" / "runs.yml").symlink_to(tmp_path / "secret" / "index.md")
    read = read_department(plain)
    linked = {problem.place.file for problem in read.problems if problem.code in ("symbolic-link", "file-is-link")}
    assert linked == {"units/borrowed", "units/rolling-carts/x.md", "school/runs.yml"}
    assert "secret" not in "".join(read.sources.values())


def test_empty_project_is_answered(tmp_path: Path) -> None:
    """A folder with nothing in it is a school that is missing, and no crash."""
    read = read_department(tmp_path)
    assert read.department is None
    assert all(problem.severity is Severity.ERROR for problem in read.problems)
    assert read.problems
