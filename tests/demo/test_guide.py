"""The guide says what holds: the danger exception, every key, a unit of forty lines that reads, the department's sentences."""

from __future__ import annotations

import json
import re
import shutil
from pathlib import Path

import pytest

from trivet.model.department import Department
from trivet.planning.hazards import HAZARDS
from trivet.reading.department import read_department

PAGES = (
    "index",
    "launching",
    "three-peers-first",
    "expectations",
    "writing-a-unit",
    "first-unit",
    "grouping",
    "privacy",
    "runs",
    "when-things-go-wrong",
)
MADE = ("every-key", "every-message", "how-long")
"""Pages made from the schemas, the examples and the draw; `tests/test_reference.py` and `test_how_long.py` look at them."""
STATIONS = ("online", "hands-on", "teacher-led")


@pytest.mark.parametrize("page", PAGES)
def test_the_danger_exception_stands_wherever_three_peers_first_stands(root: Path, page: str) -> None:
    """A page that tells students to ask classmates first tells them as well what goes to the nearest adult at once."""
    text = (root / "units/guide" / f"{page}.md").read_text(encoding="utf-8").lower()
    if re.search(r"three peers|three classmates", text):
        assert re.search(r"hurt.{0,40}broken.{0,40}spilled.{0,40}smoking.{0,40}frightening", text, re.DOTALL)
        assert "nearest adult" in text


def test_the_guide_has_its_pages_and_links_to_each(root: Path) -> None:
    """No page is missing, none stands alone, and no link leads nowhere."""
    folder = root / "units/guide"
    assert {path.stem for path in folder.glob("*.md")} == {*PAGES, *MADE}
    linked = set(re.findall(r"\]\(([a-z-]+)\.md\)", (folder / "index.md").read_text(encoding="utf-8")))
    assert linked == {*PAGES, *MADE} - {"index"}
    for name in PAGES:
        path = folder / f"{name}.md"
        for target in re.findall(r"\]\(([^)]+)\)", path.read_text(encoding="utf-8")):
            page, _, part = target.partition("#")
            assert (folder / page).is_file(), f"{path.name}: {target}"
            titles = re.findall(r"^#+ (.+)$", (folder / page).read_text(encoding="utf-8"), re.MULTILINE)
            assert not part or part in {title.lower().replace(" ", "-") for title in titles}, f"{path.name}: {target}"


def test_the_guide_is_plain_markdown(root: Path) -> None:
    """No page holds raw HTML, which would show as text."""
    for name in PAGES:
        path = root / "units/guide" / f"{name}.md"
        assert re.findall(r"<[A-Za-z/!]", path.read_text(encoding="utf-8")) == [], path.name


def test_every_key_of_a_unit_is_in_the_guide(root: Path) -> None:
    """The page about writing a unit names each key that the schema allows."""
    text = (root / "units/guide/writing-a-unit.md").read_text(encoding="utf-8")
    schema = json.loads((root / "schema/unit.schema.json").read_text(encoding="utf-8"))
    keys = set(schema["properties"])
    for station in STATIONS:
        keys |= set(schema["$defs"][station]["properties"])
    for nested in ("variables", "record"):
        keys |= set(schema["$defs"][nested]["properties"])
    assert [key for key in sorted(keys) if f"`{key}`" not in text] == []


def test_every_hazard_word_is_in_the_guide_with_who_must_be_near(root: Path) -> None:
    """The two lists name each hazard once, those for which an adult must stand at the station apart from the others."""
    text = (root / "units/guide/writing-a-unit.md").read_text(encoding="utf-8")
    said = [re.search(rf"- an adult \*\*{words}\*\* the station: (.+)", text) for words in ("stands at", "sees")]
    listed = [re.findall(r"`([a-z ]+)`", line[1]) for line in said if line]
    assert listed == [[tag for tag, hazard in HAZARDS.items() if hazard.at_hand is near] for near in (True, False)]


def test_the_forty_lines_are_a_unit_that_reads(root: Path, tmp_path: Path) -> None:
    """The short unit in the guide reads without a problem when its two files lie beside it."""
    text = (root / "units/guide/writing-a-unit.md").read_text(encoding="utf-8")
    found = re.search(r"```yaml\n(---\n.*?\n---\n.*?)```", text, re.DOTALL)
    assert found is not None
    assert found[1].count("\n") <= 50
    shutil.copytree(root / "school", tmp_path / "school")
    shutil.copytree(root / "units/float-or-sink", tmp_path / "units/float-or-sink", ignore=shutil.ignore_patterns("*.es.md"))
    (tmp_path / "units/float-or-sink/index.md").write_text(found[1], encoding="utf-8")
    read = read_department(tmp_path)
    assert [problem.sentence for problem in read.problems if problem.place.file.startswith("units/float-or-sink")] == []
    assert read.department is not None
    assert "float-or-sink" in read.department.units


def test_the_guide_shows_the_departments_own_sentences(demo: Department, root: Path) -> None:
    """The six sentences on the page are those of school/expectations.yml, in order."""
    text = (root / "units/guide/expectations.md").read_text(encoding="utf-8")
    assert tuple(re.findall(r"^\d\. (.+)$", text, re.MULTILINE)) == demo.school.expectations
