"""A run on any calendar: closed and special days, letters, lost days, 1 to 60 students, groups drawn or not."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date, timedelta
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from tests.conftest import ROOT
from tests.support.department import period, tiny_calendar, tiny_class, tiny_department, tiny_unit, words
from tests.support.lock import tiny_lock
from trivet.model.department import Department
from trivet.model.school import Calendar, Closure, DayType, SpecialDay
from trivet.model.station import Kind, Step
from trivet.planning.dates import meetings, school_days
from trivet.planning.department import plan_department
from trivet.planning.plan_data import plan_json

MONDAY = date(2026, 9, 7)
DAYS = 60
KINDS = ("regular", "early", "block", "assembly")
VALIDATOR = Draft202012Validator(json.loads((ROOT / "schema" / "plan.schema.json").read_text(encoding="utf-8")))

dates = st.integers(0, DAYS - 1).map(lambda ahead: MONDAY + timedelta(ahead))


@st.composite
def departments(draw: st.DrawFn) -> Department:
    """One class and one run in sixty days of some school."""
    lengths = [draw(st.integers(36, 95)) for _ in KINDS]
    bells = {kind: DayType(kind, {"P1": period("P1", length)}) for kind, length in zip(KINDS, lengths, strict=True)}
    rotation = draw(st.sampled_from([(), ("A", "B"), ("1", "2", "3", "4")]))
    closures = [Closure(first, first + timedelta(draw(st.integers(0, 6)))) for first in draw(st.lists(dates, max_size=4))]
    calendar = Calendar(
        first=MONDAY,
        last=MONDAY + timedelta(DAYS - 1),
        weekly={weekday: draw(st.sampled_from(KINDS)) for weekday in range(5)},
        rotation=rotation,
        slide=draw(st.booleans()),
        closures=tuple(closures),
        special={day: SpecialDay(day_type=draw(st.sampled_from(KINDS))) for day in draw(st.lists(dates, max_size=5, unique=True))},
    )
    size = draw(st.integers(1, 60))
    school_class = replace(tiny_class(size=size), meets=rotation[:: draw(st.integers(1, 2))])
    unit = tiny_unit(
        online={"goal": words(draw(st.integers(20, 400))), "steps": (Step("Try.", 3),)},
        hands_on={"steps": (Step("Weigh.", draw(st.integers(5, 26))),), "set_up_minutes": 0.0, "clean_up_minutes": 0.0},
        stretch=draw(st.booleans()),
    )
    return tiny_department(
        unit=unit,
        bells=bells,
        calendar=tiny_calendar(**{name: getattr(calendar, name) for name in Calendar.__slots__}),
        classes=(school_class,),
        starts=draw(dates),
        lost=tuple(sorted(draw(st.lists(dates, max_size=3, unique=True)))),
        way=draw(st.sampled_from(["rotate", "whole_class"])),
        locks=[tiny_lock(school_class)] if draw(st.booleans()) else [],
        second_adult=Kind.HANDS_ON,
    )


def lowest_and_target(department: Department) -> tuple[int, int]:
    """The bounds of the design's page (computations.md 1), from the needed minutes alone: 20 to 30, two more than needed where it can."""
    unit = department.units["float-or-sink"]
    hands_on = sum(step.minutes * step.times for step in unit.hands_on.steps)
    online = 2 + sum(step.minutes * step.times for step in unit.online.steps)
    need = max(hands_on, online, 15)  # the tiny unit's teacher-led station needs 15
    low = max(20, -(-int(2 * need) // 2))
    return low, 30 if unit.stretch else min(30, max(low, int(need + 2)))


def check_days(data: dict[str, Any]) -> None:
    """Blocks lie end to end from the bell and fill the period with what is left; reflection has five minutes."""
    for day in data["days"]:
        at = 0
        for block in day["blocks"]:
            assert block["at"] == at
            assert block["minutes"] > 0
            at += block["minutes"]
        assert at + day["surplus_minutes"] == day["minutes"]
        assert day["surplus_minutes"] >= 0
        assert [block["minutes"] >= 5 for block in day["blocks"] if block["kind"] == "reflection"] == [True]


@settings(max_examples=200)
@given(departments())
def test_a_plan_holds_on_any_calendar(department: Department) -> None:
    """Each plan fits the schema, its days are meetings that were not lost and are full to the minute, its rounds are equal and as long as
    the target allows; each group meets each station once, everyone has a team and a partner, and every duty is held once a team.
    """  # fmt: skip
    (run,) = department.school.runs
    plans = plan_department(department)
    assert len(plans.plans) + len(plans.not_planned) == 1
    for plan in plans.plans:
        data = json.loads(json.dumps(plan_json(plan)))
        assert [error.message for error in VALIDATOR.iter_errors(data)] == []
        met = {
            each.date: each
            for each in meetings(school_days(department.school.calendar), department.school.bells, tiny_class_of(department))
        }
        for day in plan.days:
            assert day.date >= run.starts and day.date not in run.lost
            assert (day.minutes, day.day_type) == (met[day.date].minutes, met[day.date].day_type)
        check_days(data)
        low, target = lowest_and_target(department)
        assert len({each.minutes for each in plan.rounds}) <= 1
        assert all(low <= each.minutes <= target for each in plan.rounds)
        check_places(data, whole_class=run.way == "whole_class", finished=len(plan.rounds) == 3)


def tiny_class_of(department: Department) -> Any:
    return department.school.classes["p1"]


def check_places(data: dict[str, Any], *, whole_class: bool, finished: bool) -> None:
    """Who is where, where the groups are public."""
    if data["groups"] is None:
        return
    if whole_class:
        assert all(len(set(each["stations"].values())) == 1 for each in data["rounds"])
    elif finished:
        for letter in data["groups"]:
            assert sorted(each["stations"][letter] for each in data["rounds"]) == ["hands_on", "online", "teacher_led"]
    for each in data["rounds"]:
        assert whole_class or len(set(each["stations"].values())) == len(each["stations"])
    for group in data["groups"].values():
        seats = sorted(seat for team in group["teams"].values() for seat in team)
        assert seats == sorted(seat for pair in group["pairs"] for seat in pair)
        assert len(set(seats)) == len(seats)
        assert all(len(pair) in (2, 3) for pair in group["pairs"]) or len(seats) == 1
        for team in group["teams"].values():
            duties = [duty for held in team.values() for duty in held]
            assert len(set(duties)) == len(duties)
