"""The demo's own lessons, as they are published: every run of the department, on real dates."""

from __future__ import annotations

import json
from datetime import time
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from tests.conftest import ROOT
from trivet.model.roster import RuleKind
from trivet.reading.department import read_department
from trivet.reading.roster import read_roster

DRAWN = ["p1", "p2"]
"""The classes of 31 and 36 students, whose groups for Float or sink? are kept."""

Plan = dict[str, Any]


def plan_files(site: Path) -> list[Path]:
    return sorted(p for p in (site / "data").glob("*/*.json"))


def load(path: Path) -> Plan:
    loaded: Plan = json.loads(path.read_text(encoding="utf-8"))
    return loaded


def minutes_between(start: str, end: str) -> int:
    first, last = time.fromisoformat(start), time.fromisoformat(end)
    return (last.hour - first.hour) * 60 + last.minute - first.minute


def test_every_run_has_its_plan(built_site: Path) -> None:
    """Each row of runs.yml is published as data, and its lesson sheet as a page."""
    rows = (ROOT / "school" / "runs.yml").read_text(encoding="utf-8").count("\n  - class:")
    plans = plan_files(built_site)
    assert len(plans) == rows >= 14
    for path in plans:
        assert (built_site / "lesson" / path.parent.name / path.stem / "index.html").is_file()


def test_every_plan_fits_its_schema(built_site: Path) -> None:
    """What is published about each run is valid against schema/plan.schema.json (JSON Schema 2020-12, read by another library)."""
    validator = Draft202012Validator(json.loads((ROOT / "schema" / "plan.schema.json").read_text(encoding="utf-8")))
    for path in plan_files(built_site):
        assert [error.message for error in validator.iter_errors(load(path))] == [], path


def test_everyone_stands_once_in_every_public_grouping(built_site: Path) -> None:
    """In each run with groups everyone is in one team and in one pair or trio, and every duty is held once in each team."""
    found = [load(path) for path in plan_files(built_site)]
    drawn = [plan for plan in found if plan["groups"]]
    assert len(drawn) > 5
    for plan in drawn:
        seats = [seat for group in plan["groups"].values() for team in group["teams"].values() for seat in team]
        paired = [seat for group in plan["groups"].values() for pair in group["pairs"] for seat in pair]
        assert len(set(seats)) == len(seats)
        assert sorted(seats) == sorted(paired)
        for group in plan["groups"].values():
            assert all(len(pair) in (2, 3) for pair in group["pairs"])
            for team in group["teams"].values():
                held = sorted(duty for duties in team.values() for duty in duties)
                assert held == ["leader", "materials", "recorder", "reporter", "timekeeper"]


def test_every_day_fills_its_period(built_site: Path) -> None:
    """Blocks lie end to end from the bell; with the surplus they are the period exactly; reflection has at least five minutes."""
    days = [day for path in plan_files(built_site) for day in load(path)["days"]]
    assert len(days) > 40
    for day in days:
        blocks = day["blocks"]
        assert blocks[0]["at"] == 0
        for one, two in pairwise(blocks):
            assert two["at"] == one["at"] + one["minutes"]
        assert sum(b["minutes"] for b in blocks) + day["surplus_minutes"] == day["minutes"] == minutes_between(day["start"], day["end"])
        assert [b["minutes"] >= 5 for b in blocks if b["kind"] == "reflection"] == [True]
        assert all(b["minutes"] * 2 == int(b["minutes"] * 2) for b in blocks)


def test_rounds_are_equal_and_groups_go_everywhere(built_site: Path) -> None:
    """Three rounds of one length on ascending dates; where the groups are public, each is at each station once."""
    for path in plan_files(built_site):
        plan = load(path)
        rounds = plan["rounds"]
        assert [r["round"] for r in rounds] == [1, 2, 3]
        assert len({r["minutes"] for r in rounds}) == 1
        assert [r["date"] for r in rounds] == sorted(r["date"] for r in rounds)
        if plan["groups"] and plan["way"] == "rotate":
            for letter in "ABC":
                assert sorted(r["stations"][letter] for r in rounds) == ["hands_on", "online", "teacher_led"]
            for each in rounds:
                assert len(set(each["stations"].values())) == 3


@pytest.mark.parametrize("class_id", DRAWN)
def test_everyone_has_a_team_a_duty_and_a_partner(built_site: Path, class_id: str) -> None:
    """Everyone is in one team and one pair or trio; every duty is held once in each team; pairs stay inside their group."""
    groups = load(built_site / "data" / class_id / "float-or-sink.json")["groups"]
    seats: list[str] = []
    for group in groups.values():
        members = [seat for team in group["teams"].values() for seat in team]
        paired = [seat for pair in group["pairs"] for seat in pair]
        assert sorted(members) == sorted(paired)
        assert all(len(pair) in (2, 3) for pair in group["pairs"])
        for team in group["teams"].values():
            duties = [duty for held in team.values() for duty in held]
            assert sorted(duties) == ["leader", "materials", "recorder", "reporter", "timekeeper"]
            assert len(team) in (3, 4)
        seats += members
    size = {"p1": 31, "p2": 36}[class_id]
    assert sorted(seats) == [f"{class_id}-{n:02d}" for n in range(1, size + 1)]


@pytest.mark.parametrize("class_id", DRAWN)
def test_each_team_that_the_teacher_leaves_is_asked_once(built_site: Path, class_id: str) -> None:
    """In each round every team at the two other stations has one open question, with what to listen for, put to one of its own."""
    plan = load(built_site / "data" / class_id / "float-or-sink.json")
    page = (built_site / "lesson" / class_id / "float-or-sink" / "index.html").read_text(encoding="utf-8")
    for each in plan["rounds"]:
        left = [letter for letter, kind in each["stations"].items() if kind != "teacher_led"]
        teams = {team: set(seats) for letter in left for team, seats in plan["groups"][letter]["teams"].items()}
        asked = [check for check in plan["spot_checks"] if check["round"] == each["round"]]
        assert sorted(check["team"] for check in asked) == sorted(teams)
        for check in asked:
            assert check["seat"] in teams[check["team"]]
            assert check["ask"]
            assert check["listen_for"]
            assert check["team"] in page


def test_p1_is_the_week_of_the_design(built_site: Path) -> None:
    """Class p1 does Float or sink? on four regular days of 52 minutes from Monday, November 30, 2026, with rounds of 23 minutes."""
    plan = load(built_site / "data" / "p1" / "float-or-sink.json")
    assert [day["date"] for day in plan["days"]] == ["2026-11-30", "2026-12-01", "2026-12-02", "2026-12-03"]
    assert {day["minutes"] for day in plan["days"]} == {52}
    assert {r["minutes"] for r in plan["rounds"]} == {23}


@pytest.mark.parametrize("class_id", DRAWN)
def test_the_rules_of_the_private_list_are_kept(class_id: str) -> None:
    """In every kept grouping of the class, rules for two students hold: not in one team, same team, not in one station group."""
    department = read_department(ROOT).department
    assert department
    school_class = department.school.classes[class_id]
    roster, problems = read_roster(ROOT / "private" / "example", school_class)
    assert roster
    assert not problems
    assert len(roster.rules) >= 3
    locks = [lock for (owner, _), lock in department.locks.items() if owner == class_id]
    assert len(locks) == 3
    for lock in locks:
        team_of = {s: code for g in lock.groups.values() for code, team in g.teams.items() for s in team}
        for rule in roster.rules:
            one, two = (team_of[school_class.number(seat)] for seat in (rule.low, rule.high))
            kept = {
                RuleKind.NOT_ONE_TEAM: one != two,
                RuleKind.SAME_TEAM: one == two,
                RuleKind.NOT_ONE_GROUP: one[0] != two[0],
                RuleKind.SAME_GROUP: one[0] == two[0],
            }
            assert kept[rule.kind], (lock.unit, rule)


def test_the_demo_shows_every_kind_of_run(built_site: Path) -> None:
    """Among the runs: whole class, undrawn, leveled (which looks undrawn), two rounds on a block day, A/B days, 5 and 37 students."""
    plans = [load(path) for path in plan_files(built_site)]
    assert {plan["way"] for plan in plans} == {"rotate", "whole_class"}
    assert sum(plan["groups"] is None for plan in plans) >= 3
    assert any(len([b for b in day["blocks"] if b["kind"] == "station"]) == 2 for plan in plans for day in plan["days"])
    assert {"k6a", "k6b", "r5"} <= {plan["class"] for plan in plans}
    assert (ROOT / "private" / "example" / "groups" / "r5" / "float-or-sink.yml").is_file()
    assert load(built_site / "data" / "r5" / "float-or-sink.json")["groups"] is None
