"""`trivet plan`: the plan as text and as data."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.command.small_project import CANARIES, run, small_project
from trivet.command.groups import groups
from trivet.command.plan import plan

P1 = ["--class", "p1"]


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """The small project with kept groups for one unit and leveled ones for another."""
    project = small_project(tmp_path / "project")
    assert run(groups, project, ["floating", *P1, "--write", "--today", "2026-10-01"]).exit_code == 0
    assert run(groups, project, ["seeds", *P1, "--leveled", "--write", "--today", "2026-10-01"]).exit_code == 0
    return project


def test_text(project: Path) -> None:
    """The text holds days with clock times, rounds with who is where, groups, spot checks and materials."""
    done = run(plan, project, ["floating", *P1])
    assert done.exit_code == 0
    for part in (
        "Float or sink? (floating), class p1, rotating rounds",
        "Monday, October 5: regular day, 08:05 to 08:57, 52 min",
        "  08:05  settle in, 4 min",
        "Round 1: Monday, October 5",
        "A online",
        "Station group A (4 students)",
        "Spot checks",
        "Listen for:",
        "  1 × graduated cylinder 25 mL\n",
        " devices\n",
        " of round 1, ",
        "round 1 at the stations, ",
        "  evidence line, ",
        "write-up, ",
    ):
        assert part in done.output


def test_json_is_the_published_plan(project: Path) -> None:
    """The data is a plan of version 1 for this run, blocks lying end to end from the bell."""
    data = json.loads(run(plan, project, ["floating", *P1, "--json"]).output)
    assert (data["plan"], data["unit"], data["class"], data["drawn_on"]) == (1, "floating", "p1", "2026-10-01")
    assert sorted(data["groups"]) == ["A", "B", "C"]
    for day in data["days"]:
        at = 0
        for block in day["blocks"]:
            assert block["at"] == at
            at += block["minutes"]
        assert at + day["surplus_minutes"] == day["minutes"]


def test_leveled_groups_are_shown_only_when_asked(project: Path) -> None:
    """A leveled unit looks like one not drawn yet; --private shows its groups."""
    shown, own = (json.loads(run(plan, project, ["seeds", *P1, "--json", *more]).output) for more in ([], ["--private"]))
    assert (shown["groups"], shown["quality"], shown["drawn_on"], shown["spot_checks"]) == (None, None, None, [])
    assert len(own["groups"]["A"]["teams"]) == 1 and own["drawn_on"] == "2026-10-01"
    assert "the groups are not drawn yet" in run(plan, project, ["seeds", *P1]).output


def test_no_plan_says_why(project: Path) -> None:
    """A run that fits no day has no plan, and the reason is given."""
    bells = project / "school" / "bells.yml"
    bells.write_text(bells.read_text(encoding="utf-8").replace("8:05-8:57", "8:05-8:25"), encoding="utf-8")
    done = run(plan, project, ["floating", *P1])
    assert done.exit_code == 1
    assert "floating in class p1 has no plan: " in done.output + done.stderr


def test_names_stay_private(project: Path) -> None:
    """No name, need or table of the private list comes out, with or without --private."""
    for unit in ("floating", "seeds"):
        for more in ([], ["--json"], ["--private"], ["--private", "--json"]):
            done = run(plan, project, [unit, *P1, *more])
            assert done.exit_code == 0
            assert not any(canary in done.output for canary in CANARIES)
