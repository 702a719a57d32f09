"""`trivet materials`: text, data, one week, and what it does when something can't be read."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.command.small_project import CANARIES, run, small_project
from trivet.command.materials import materials


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """The small project: p1 and p9 meet in one period, in one room with two cylinders, in the week of 2026-11-16 only p9 runs plates."""
    project = small_project(tmp_path / "project")
    runs = project / "school" / "runs.yml"
    runs.write_text(runs.read_text(encoding="utf-8").replace("2026-11-09", "2026-11-16"), encoding="utf-8")
    rooms = project / "school" / "rooms.yml"
    rooms.write_text(rooms.read_text(encoding="utf-8") + "    store: north prep room\n", encoding="utf-8")
    inventory = project / "school" / "inventory.yml"
    inventory.write_text(inventory.read_text(encoding="utf-8").replace("have: 2", "have: 1\n    price: 6.50"), encoding="utf-8")
    return project


def test_one_week_as_text(project: Path) -> None:
    """One week names what is short, who clashes, cures with line and place, kit, shopping, paper and tasks."""
    done = run(materials, project, ["--week", "2026-11-18"])
    assert done.exit_code == 0
    for part in (
        "Week of Monday, November 16: Moving plates in p1, p9",
        "  Short of 1 × graduated cylinder 25 mL on Monday, Tuesday and Wednesday, P1",
        "    p1 and p9 need 1 each at the same time. North prep room has 1.",
        "    1. Borrow 1 × graduated cylinder 25 mL for Monday, Tuesday and Wednesday: need 2, have 2; nothing to change in the files",
        "write `starts: 2026-11-19` at school/runs.yml:7:13",
        "  2 × graduated cylinder 25 mL (north prep room), have 1, short 1: p1 and p9 at once, Mon, Tue and Wed, P1",
        "  1 × graduated cylinder 25 mL (north prep room): $6.50 (or borrow)",
        "  21 write-ups (21 pages)",
        "  Room 12, Monday, Tuesday and Wednesday",
        "    before 08:05: Set out Moving plates for p1: 1 × graduated cylinder 25 mL",
    ):
        assert part in done.output


def test_the_line_to_write_does_cure(project: Path) -> None:
    """The line that a cure gives, written at its place, leaves nothing short in that week."""
    runs = project / "school" / "runs.yml"
    lines = runs.read_text(encoding="utf-8").splitlines()
    assert lines[6][12:] == "2026-11-16"
    lines[6] = "    starts: 2026-11-19"
    runs.write_text("\n".join(lines) + "\n", encoding="utf-8")
    assert "Short" not in run(materials, project, ["--week", "2026-11-18"]).output


def test_all_weeks_as_text(project: Path) -> None:
    """Without --week the year stands first, then which weeks are short of what."""
    done = run(materials, project, [])
    assert done.exit_code == 0
    assert done.output.startswith("The whole year: ")
    assert "  2026-10-05: Float or sink? in p1; nothing short" in done.output
    assert "  2026-11-16: Moving plates in p1, p9; short of 1 × graduated cylinder 25 mL" in done.output


def test_data(project: Path) -> None:
    """With --json everything, or one week, is one document."""
    everything = json.loads(run(materials, project, ["--json"]).output)
    assert [week["first"] for week in everything["weeks"]] == ["2026-10-05", "2026-11-16", "2027-01-11"]
    week = json.loads(run(materials, project, ["--json", "--week", "2026-11-22"]).output)
    assert week == {"materials": 1, "week": everything["weeks"][1]}
    assert json.loads(run(materials, project, ["--json", "--week", "2026-12-25"]).output) == {"materials": 1, "week": None}


def test_an_empty_week_names_the_others(project: Path) -> None:
    """A week without a lesson says so, and which weeks have one."""
    done = run(materials, project, ["--week", "2026-12-25"])
    assert done.exit_code == 0
    assert "Nothing is planned in the week of Friday, December 25" in done.output
    assert "2026-11-16" in done.output


def test_no_date_is_misuse(project: Path) -> None:
    """A word that is no date exits with 2 and says what to write."""
    done = run(materials, project, ["--week", "next"])
    assert done.exit_code == 2
    assert "next is no date; write --week with any day of the week, such as 2026-11-30" in done.output


def test_a_unit_that_cannot_be_read_stops_it(project: Path) -> None:
    """Totals without one unit would be wrong: exit 1, with the unit's name."""
    unit = project / "units" / "plates" / "index.md"
    unit.write_text(unit.read_text(encoding="utf-8").replace("grades: 6-8", "grades: many"), encoding="utf-8")
    done = run(materials, project, [])
    assert done.exit_code == 1
    assert "plates can't be read, so the totals would be wrong" in done.output + done.stderr


def test_a_school_that_cannot_be_read_is_reported(project: Path) -> None:
    """Where the school has errors the report stands in place of totals, and the exit is 1."""
    bells = project / "school" / "bells.yml"
    bells.write_text(bells.read_text(encoding="utf-8").replace("8:05-8:57", "8:57-8:05"), encoding="utf-8")
    done = run(materials, project, [])
    assert done.exit_code == 1
    assert "school/bells.yml" in done.output + done.stderr


def test_names_stay_private(project: Path) -> None:
    """Nothing of the private list comes out."""
    for more in ([], ["--json"], ["--week", "2026-11-18"]):
        assert not any(canary in run(materials, project, more).output for canary in CANARIES)
