"""What the published days keep of the rules of a day, worked out from the files and the published data alone."""

from __future__ import annotations

import json
from datetime import date, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
import yaml
from icalendar import Calendar

from tests.conftest import ROOT

Plan = dict[str, Any]
CLOCK = "%H:%M"


@pytest.fixture(scope="module")
def plans(built_site: Path) -> list[Plan]:
    """Every published plan."""
    return [json.loads(path.read_text(encoding="utf-8")) for path in sorted((built_site / "data").glob("*/*.json"))]


@pytest.fixture(scope="module")
def school_days() -> list[date]:
    """The days on which school is held, read from calendar.yml by another program, with no rotation in mind."""
    said = yaml.load((ROOT / "school" / "calendar.yml").read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
    names = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
    closed: set[date] = set()
    for line in said["closures"]:
        ends = [date.fromisoformat(each) for each in line.split(",")[0].split(" to ")]
        closed |= {ends[0] + timedelta(days=offset) for offset in range((ends[-1] - ends[0]).days + 1)}
    first, last = date.fromisoformat(said["first day"]), date.fromisoformat(said["last day"])
    every = (first + timedelta(days=offset) for offset in range((last - first).days + 1))
    return [day for day in every if names[day.weekday()] in said["week"] and day not in closed]


def minutes(day: dict[str, Any], kind: str) -> float:
    return float(sum(block["minutes"] for block in day["blocks"] if block["kind"] == kind))


def test_left_over_minutes_go_first_to_evidence_then_reflection_then_pack_up(plans: list[Plan]) -> None:
    """No day has minutes left over that its pack-up (to 3), its reflection (to 10) or its evidence line (2) could have used."""
    shapes = set()
    for plan in plans:
        for day in plan["days"]:
            rounds, evidence = minutes(day, "station") > 0, minutes(day, "evidence")
            left = (day["surplus_minutes"], minutes(day, "pack_up") - 1, minutes(day, "reflection"))
            assert evidence in ((0, 2) if rounds else (0,))
            assert len([block for block in day["blocks"] if block["kind"] == "evidence"]) <= 1
            assert 5 <= left[2] <= 10 and 0 <= left[1] <= 2
            if left[0]:
                assert left[1] == 2
            if left[1]:
                assert left[2] == 10
            if rounds and not evidence:
                assert left[:2] == (0, 0) and left[2] < 5 + 0.5 * 13 + 2
            shapes.add((bool(left[0]), bool(left[1]), left[2] == 10, bool(evidence)))
    assert len(shapes) >= 4


def test_a_short_write_up_asks_for_a_line_every_day(plans: list[Plan]) -> None:
    """The write-up takes 12 minutes where every day with a round has its line, else 20, after the last round."""
    for plan in plans:
        days = [day for day in plan["days"] if minutes(day, "station")]
        every = all(minutes(day, "evidence") for day in days)
        assert [minutes(day, "write_up") for day in plan["days"] if minutes(day, "write_up")] == [12 if every else 20]
        assert minutes(plan["days"][-1], "write_up")


def test_at_most_two_rounds_a_day(plans: list[Plan]) -> None:
    """However long the period, no day has more than two rounds, and some day has two."""
    counts = [sum(block["kind"] == "station" for block in day["blocks"]) for plan in plans for day in plan["days"]]
    assert set(counts) == {0, 1, 2}
    assert max(day["minutes"] for plan in plans for day in plan["days"]) >= 85


def test_the_pre_check_stands_two_school_days_ahead(plans: list[Plan], school_days: list[date], built_site: Path) -> None:
    """It ends with a meeting of the class at least two school days before round 1, on none of the unit's days, and has its entry."""
    found = [plan for plan in plans if plan["pre_check"]]
    assert len(found) >= 5
    for plan in found:
        check, first = plan["pre_check"], date.fromisoformat(plan["rounds"][0]["date"])
        day = date.fromisoformat(check["date"])
        assert school_days.index(first) - school_days.index(day) >= 2
        assert day.isoformat() not in {each["date"] for each in plan["days"]}
        begin = datetime.strptime(f"{check['date']} {check['start']}", f"%Y-%m-%d {CLOCK}")
        calendar = Calendar.from_ical((built_site / "calendar" / f"{plan['class']}.ics").read_bytes())
        entries = [event for event in calendar.walk("VEVENT") if event["DTSTART"].dt.replace(tzinfo=None) == begin]
        assert [("pre-check" in str(event["SUMMARY"]), event["DTEND"].dt - event["DTSTART"].dt) for event in entries] == [
            (True, timedelta(minutes=check["minutes"]))
        ]


def test_no_unit_of_the_demo_with_a_pre_check_goes_without(plans: list[Plan]) -> None:
    """Each run of a unit that has a pre-check has a day for it."""
    with_one = {path.parent.name for path in (ROOT / "units").glob("*/index.md") if "\npre-check:" in path.read_text(encoding="utf-8")}
    assert {plan["unit"] for plan in plans if plan["pre_check"]} == with_one
    assert all(plan["pre_check"] for plan in plans if plan["unit"] in with_one)


def test_a_first_unit_tells_what_to_watch_for_and_how_devices_are_shared(plans: list[Plan], built_site: Path) -> None:
    """A whole-class sheet lists each role with what to watch for on each day with a round, and says in words how to share devices."""
    roles = yaml.load((ROOT / "school" / "roles.yml").read_text(encoding="utf-8"), Loader=yaml.BaseLoader)["roles"]
    shared = 0
    for plan in plans:
        sheet = (built_site / "lesson" / plan["class"] / plan["unit"] / "index.html").read_text(encoding="utf-8")
        rounds = {each["date"] for each in plan["rounds"]}
        for role in roles.values():
            assert sheet.count(f'<p class="say">{role["watch for"]}</p>') == (len(rounds) if plan["way"] == "whole_class" else 0)
        device = next(each for each in plan["materials"] if each["item"] == "device")
        if plan["way"] == "whole_class":
            assert {len(set(each["stations"].values())) for each in plan["rounds"]} == {1}
        if device["short"]:
            shared += 1
            assert f"{device['need']} devices are in use at once and the room has {device['have']}: let them work as " in sheet
    assert shared >= 5
