"""`trivet new unit` writes a unit that passes, and overwrites nothing."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from tests.reading.unit_files import PLAIN
from trivet.command.check import problems_of
from trivet.command.main import main
from trivet.model.problem import Severity


@pytest.fixture
def plain(tmp_path: Path) -> Path:
    """A copy of the plain department."""
    shutil.copytree(PLAIN, tmp_path / "project")
    return tmp_path / "project"


def run(root: Path, *words: str) -> Result:
    return CliRunner().invoke(main, ["--root", str(root), "new", *words])


def test_new_unit_passes_as_it_is(plain: Path) -> None:
    """The files are named, the unit has neither error nor warning, and its title comes from its name."""
    done = run(plain, "unit", "heat-it-up")
    assert done.exit_code == 0
    assert "units/heat-it-up/index.md" in done.output
    checked = problems_of(plain)
    assert [problem for problem in checked.problems if problem.severity is not Severity.ADVICE] == []
    assert checked.department is not None
    assert checked.department.units["heat-it-up"].title == "Heat it up"


def test_new_unit_is_explained_line_by_line(plain: Path) -> None:
    """Notes stand above the keys, and every key that is required is there."""
    run(plain, "unit", "heat-it-up")
    text = (plain / "units" / "heat-it-up" / "index.md").read_text(encoding="utf-8")
    assert sum(line.lstrip().startswith("# ") for line in text.splitlines()) >= 8
    for key in ("title:", "question:", "grades:", "hazards:", "claim starts:"):
        assert key in text


@pytest.mark.parametrize("slug", ["guide", "prep", "year", "Heat", "1x", "a", "../out", "x" * 41, "float-or-sink"])
def test_bad_or_taken_names_exit_2(plain: Path, slug: str) -> None:
    """A name that can't be an address, a name that a page has and a unit that is there are refused, and nothing is written."""
    before = sorted(str(path) for path in plain.rglob("*"))
    texts = (plain / "units" / "float-or-sink" / "index.md").read_bytes()
    assert run(plain, "unit", slug).exit_code == 2
    assert sorted(str(path) for path in plain.rglob("*")) == before
    assert (plain / "units" / "float-or-sink" / "index.md").read_bytes() == texts


def test_link_is_not_written_through(plain: Path, tmp_path: Path) -> None:
    """A link where the unit would stand is refused, even one to nowhere."""
    (plain / "units" / "heat-it-up").symlink_to(tmp_path / "elsewhere")
    assert run(plain, "unit", "heat-it-up").exit_code == 2
    assert not (tmp_path / "elsewhere").exists()
