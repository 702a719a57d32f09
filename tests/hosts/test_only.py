"""The option `only`: one unit's pages, with the dates and minutes of the whole department, and no complaint about the rest."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.conftest import mkdocs_build
from tests.hosts.test_preview import Preview
from tests.support.project import copy_project
from trivet.hosts.build import build_site

ONLY = "float-or-sink"


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """A copy of the demo whose mkdocs.yml asks for one unit."""
    return asked_for(copy_project(tmp_path / "project"), ONLY)


def asked_for(project: Path, unit: str) -> Path:
    settings = project / "mkdocs.yml"
    text = settings.read_text(encoding="utf-8")
    assert "  - trivet\n" in text
    settings.write_text(text.replace("  - trivet\n", f"  - trivet:\n      only: {unit}\n"), encoding="utf-8")
    return project


def change(path: Path, old: str, new: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def test_other_units_are_not_built(root: Path) -> None:
    """Of all pages and files in folders of units and classes, those of this unit alone are made, and what its sheets lead to."""
    site = build_site(root, ONLY).site
    paths = [page.path for page in site.pages] + [asset.path for asset in site.assets if asset.path.startswith(("units/", "data/"))]
    assert {"", "units/", f"units/{ONLY}/", f"units/{ONLY}/student/", f"lesson/p1/{ONLY}/", f"data/p1/{ONLY}.json"} <= set(paths)
    assert [path for path in paths if path.count("/") > 1 and ONLY not in path and not path.startswith("whom/")] == []


@pytest.mark.parametrize("unit", [ONLY, "warm-metal-cool-water"])
def test_its_own_pages_are_those_of_the_whole_site(root: Path, unit: str) -> None:
    """Lesson sheets, cards and plans are the same bytes as in a whole build: the dates of a class's other units still count."""
    whole, one = build_site(root).site, build_site(root, unit).site
    bodies = {page.path: page.body for page in whole.pages}
    sheets = [page for page in one.pages if page.path.startswith("lesson/") or "/student/" in page.path]
    assert len(sheets) >= 4
    assert [page.path for page in sheets if page.body != bodies[page.path]] == []
    data = {asset.path: asset.content for asset in whole.assets if asset.path.startswith("data/")}
    assert all(asset.content == data[asset.path] for asset in one.assets if asset.path.startswith("data/"))


def test_a_strict_build_of_one_unit_passes(project: Path) -> None:
    """Links and entries of the navigation that lead to pages left out are no fault, in the guide, in the unit's prose or anywhere."""
    change(project / "mkdocs.yml", "  - Units: units.md\n", "  - Units: units.md\n  - Plates: moving-plates/index.md\n")
    guide = project / "units" / "guide" / "launching.md"
    guide.write_text(guide.read_text(encoding="utf-8") + "\nSee [Moving plates](../moving-plates/index.md).\n", encoding="utf-8")
    unit = project / "units" / ONLY / "index.md"
    unit.write_text(unit.read_text(encoding="utf-8") + "\nAfter [Moving plates](../moving-plates/).\n", encoding="utf-8")
    done = mkdocs_build(project, project / "site")
    assert done.returncode == 0, done.stderr
    assert "WARNING" not in done.stderr
    assert (project / "site" / "units" / ONLY / "index.html").is_file()
    assert not (project / "site" / "units" / "moving-plates").exists()
    assert not (project / "site" / "lesson" / "p1" / "moving-plates").exists()


def test_a_fault_in_another_unit_does_not_stop_it(project: Path) -> None:
    """A broken unit that is left out is not reported; the same fault in the unit itself, or in school/, stops a build."""
    change(project / "units" / "moving-plates" / "index.md", "title:", "titel:")
    assert build_site(project, ONLY).errors == ()
    assert build_site(project).errors != ()
    change(project / "units" / ONLY / "index.md", "title:", "titel:")
    assert {problem.place.file for problem in build_site(project, ONLY).errors} == {f"units/{ONLY}/index.md"}
    change(project / "school" / "rooms.yml", "devices:", "device:")
    assert "school/rooms.yml" in {problem.place.file for problem in build_site(project, ONLY).errors}


@pytest.mark.parametrize(("asked", "remedy"), [("flot-or-sink", "write only: float-or-sink"), ("zzzzzz", "take the line out")])
def test_a_unit_that_is_not_there(root: Path, asked: str, remedy: str) -> None:
    """A name that no unit has is an error of mkdocs.yml, answered with the nearest one."""
    (error,) = build_site(root, asked).errors
    assert (error.place.file, error.where, error.what) == ("mkdocs.yml", "plugins, trivet, only", f"there is no unit {asked}")
    assert remedy in error.remedy


def test_an_edit_of_the_unit_is_served(project: Path) -> None:
    """In a live preview of one unit its page follows an edit, and no other unit is there."""
    running = Preview(project)
    try:
        running.wait(f"/units/{ONLY}/", lambda page: "lump of clay" in page)
        change(project / "units" / ONLY / "index.md", "lump of clay", "ball of clay")
        running.wait(f"/units/{ONLY}/", lambda page: "ball of clay" in page)
        with pytest.raises(OSError, match="404"):
            running.page("/units/moving-plates/")
    finally:
        running.stop()
