"""Plans of a department: the worked days, what must hold for any class and period, and how runs follow each other."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Mapping
from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.conftest import ROOT
from tests.support.department import (
    STARTS,
    period,
    tiny_bells,
    tiny_calendar,
    tiny_class,
    tiny_department,
    tiny_room,
    tiny_unit,
    words,
)
from tests.support.lock import tiny_lock
from trivet.model.department import Department
from trivet.model.plan import Day, Plan, Plans
from trivet.model.school import DayType, LateSeat, Run
from trivet.model.station import CheckItem, Kind, Step
from trivet.model.unit import Unit, WriteUp
from trivet.model.wish import Wish
from trivet.planning.department import plan_department, plan_privately


def scene_unit(slug: str = "float-or-sink") -> Unit:
    """A unit that needs 21 min and whose longest card takes two minutes to read."""
    unit = tiny_unit(slug)
    return replace(unit, online=replace(unit.online, goal=words(160)))


def scene(**changes: Any) -> Department:
    """Class p1 of 31 in its third unit, four days from Monday 2026-11-30, 52-minute periods."""
    runs = (
        Run(class_id="p1", unit="moving-plates", starts=date(2026, 9, 14)),
        Run(class_id="p1", unit="circuits", starts=date(2026, 10, 12)),
        Run(class_id="p1", unit="float-or-sink", starts=STARTS),
    )
    units = (scene_unit("moving-plates"), scene_unit("circuits"))
    return tiny_department(unit=scene_unit(), units=units, runs=runs, **changes)


def spoken(day: Day) -> str:
    return " + ".join(f"{block.minutes:g}" for block in day.blocks) + f" = {sum(block.minutes for block in day.blocks):g}"


def of(plans: Plans, unit: str = "float-or-sink", class_id: str = "p1") -> Plan:
    plan = plans.of(class_id, unit)
    assert plan is not None, plans.not_planned
    return plan


def test_the_four_days() -> None:
    """The scene of the mock-ups: Monday, Tuesday and Wednesday, Thursday with 23 minutes left (the design's worked value)."""
    plan = of(plan_department(scene()))
    assert [(day.date.isoformat(), spoken(day), day.surplus_minutes) for day in plan.days] == [
        ("2026-11-30", "4 + 1 + 2 + 7 + 23 + 1 + 2 + 10 + 2 = 52", 0),
        ("2026-12-01", "4 + 2 + 7 + 23 + 1 + 2 + 10 + 3 = 52", 0),
        ("2026-12-02", "4 + 2 + 7 + 23 + 1 + 2 + 10 + 3 = 52", 0),
        ("2026-12-03", "4 + 12 + 10 + 3 = 29", 23),
    ]
    assert [block.kind for block in plan.days[3].blocks] == ["settle_in", "write_up", "reflection", "pack_up"]
    assert [(r.round, r.date.isoformat(), r.minutes) for r in plan.rounds] == [
        (1, "2026-11-30", 23), (2, "2026-12-01", 23), (3, "2026-12-02", 23),
    ]  # fmt: skip


def test_first_two_runs_have_full_expectations() -> None:
    """Expectations take three minutes in a class's first two runs and one from the third on, on the first day only."""
    plans = plan_department(scene()).plans
    minutes = [[block.minutes for day in plan.days for block in day.blocks if block.kind == "expectations"] for plan in plans]
    assert minutes == [[3], [3], [1]]


def check_plan(plan: Plan, students: int) -> None:
    """What holds for every plan."""
    assert [day.date for day in plan.days] == sorted({day.date for day in plan.days})
    stations = [(day.date, block) for day in plan.days for block in day.blocks if block.kind == "station"]
    assert [block.round for _, block in stations] == [1, 2, 3]
    assert {block.minutes for _, block in stations} == {plan.rounds[0].minutes}
    assert [(r.round, r.date) for r in plan.rounds] == [(block.round, day) for day, block in stations]
    assert 20 <= plan.rounds[0].minutes <= 30
    for place, day in enumerate(plan.days):
        at = 0.0
        for block in day.blocks:
            assert block.at == at
            assert block.minutes > 0
            clock = day.start.hour * 60 + day.start.minute + int(at)
            assert (block.start.hour, block.start.minute) == divmod(clock, 60)
            at += block.minutes
        assert at + day.surplus_minutes == day.minutes
        assert day.surplus_minutes >= 0
        kinds = [block.kind for block in day.blocks]
        minutes = {block.kind: block.minutes for block in day.blocks}
        rounds = kinds.count("station")
        assert kinds.count("reflection") == 1
        assert 5 <= minutes["reflection"] <= 10 or students > 60
        assert kinds.count("launch") == kinds.count("clean_up") == rounds <= 2
        assert kinds.count("move") == max(0, rounds - 1)
        assert kinds.count("evidence") <= (1 if rounds else 0)
        assert ("expectations" in kinds) == (place == 0)
        assert kinds[-1] == "pack_up"
        assert rounds or "write_up" in kinds
        assert day.surplus_minutes == 0 or minutes["pack_up"] == 3
    held = [day for day in plan.days if any(block.kind == "write_up" for block in day.blocks)]
    assert held == [plan.days[-1]]
    lines = all(any(b.kind == "evidence" for b in d.blocks) for d in plan.days if any(b.kind == "station" for b in d.blocks))
    assert [b.minutes for b in plan.days[-1].blocks if b.kind == "write_up"] == [12 if lines else 20]


@settings(max_examples=120, deadline=None)
@given(
    students=st.integers(1, 60),
    lengths=st.lists(st.integers(30, 100), min_size=1, max_size=5),
    needs=st.integers(5, 30),
    card=st.integers(20, 400),
    drawn=st.booleans(),
    whole_class=st.booleans(),
)
def test_any_class_and_any_period(*, students: int, lengths: list[int], needs: int, card: int, drawn: bool, whole_class: bool) -> None:
    """For 1 to 60 students and periods of 30 to 100 minutes, days fill their periods and rounds are equal."""
    unit = tiny_unit(
        online={"goal": words(card), "steps": (Step("Try.", 3),)},
        hands_on={"steps": (Step("Weigh.", needs),), "set_up_minutes": 0.0, "clean_up_minutes": 0.0},
    )
    bells = {f"day{i}": DayType(f"day{i}", {"P1": period("P1", length)}) for i, length in enumerate(lengths)}
    calendar = tiny_calendar(weekly={weekday: f"day{weekday % len(lengths)}" for weekday in range(5)})
    locks = [tiny_lock(tiny_class(size=students))] if drawn else []
    way = "whole_class" if whole_class else "rotate"
    plans = plan_department(
        tiny_department(size=students, unit=unit, bells=bells, calendar=calendar, locks=locks, way=way, second_adult=Kind.HANDS_ON)
    )
    if not plans.plans:
        assert plans.not_planned[0].reason.startswith("No day is long enough")
        assert [p.code for p in plans.problems if p.severity == "error"] == ["no-day-fits"]
        assert max(lengths) < 62
        return
    plan = plans.plans[0]
    check_plan(plan, students)
    if whole_class:
        assert [set(r.stations.values()) for r in plan.rounds if r.stations] == [{kind} for kind in Kind]
    elif drawn:
        for letter in "ABC":
            assert {r.stations[letter] for r in plan.rounds if r.stations} == set(Kind)
    else:
        assert all(r.stations is None for r in plan.rounds)


@pytest.mark.parametrize("way", ["rotate", "whole_class"])
def test_not_public_is_not_public(way: str) -> None:
    """A leveled unit gives the same plan as one not drawn yet, and neither names groups, students or a draw."""
    leveled = replace(tiny_lock(tiny_class()), leveled=True)
    undrawn, hidden = (of(plan_department(tiny_department(locks=locks, way=way))) for locks in ((), (leveled,)))
    assert hidden == undrawn
    assert (hidden.groups, hidden.quality, hidden.drawn_on, hidden.engine, hidden.spot_checks) == (None, None, None, None, ())
    assert all((r.stations is None) == (way == "rotate") for r in hidden.rounds)


def test_private_groups_keep_the_published_days() -> None:
    """With groups from the private folder, days, rounds and materials stay as published; places and spot checks come on top."""
    department = tiny_department()
    wishes = (Wish(Kind.TEACHER_LED, "C"), Wish(Kind.ONLINE, before=Kind.HANDS_ON))
    lock = replace(tiny_lock(tiny_class()), leveled=True, order=wishes)
    public = of(plan_department(department))
    private = plan_privately(department, lock)
    assert private is not None
    assert (private.days, private.materials) == (public.days, public.materials)
    assert private.groups == lock.groups
    assert private.spot_checks
    assert private.rounds[0].stations is not None
    assert private.rounds[0].stations["C"] is Kind.TEACHER_LED
    assert [note.text.partition(":")[0] for note in private.notes if note.code == "order_wish"] == [
        "Group B can't be at the online station before the hands-on one"
    ]
    assert plan_privately(department, replace(lock, unit="other")) is None


def test_order_of_runs_and_history() -> None:
    """Plans stand in the order of runs.yml, while a class's earlier units, by date, decide who begins where and who is asked."""
    own = tiny_class()
    locks = [tiny_lock(own, unit) for unit in ("float-or-sink", "circuits")]
    runs = (
        Run(class_id="p1", unit="circuits", starts=date(2027, 1, 11)),
        Run(class_id="p1", unit="float-or-sink", starts=STARTS),
    )
    plans = plan_department(tiny_department(units=(tiny_unit("circuits"),), runs=runs, locks=locks))
    assert [plan.unit for plan in plans.plans] == ["circuits", "float-or-sink"]
    first, later = of(plans), of(plans, "circuits")
    begin: list[Mapping[str, Kind]] = [plan.rounds[0].stations for plan in (first, later) if plan.rounds[0].stations]
    assert begin[0] == {"A": Kind.ONLINE, "B": Kind.HANDS_ON, "C": Kind.TEACHER_LED}
    assert all(begin[0][letter] is not begin[1][letter] for letter in "ABC")
    seats = [[check.seat for check in plan.spot_checks if check.team == "A1"] for plan in (first, later)]
    assert seats == [["p1-01", "p1-02"], ["p1-03", "p1-04"]]
    assert first == of(plan_department(tiny_department(locks=locks[:1])))


def test_a_run_waits_for_the_one_before_it() -> None:
    """A run that begins before the class's earlier one has ended starts on the next meeting, with a warning that says the date."""
    runs = (Run(class_id="p1", unit="float-or-sink", starts=STARTS), Run(class_id="p1", unit="circuits", starts=date(2026, 12, 2)))
    plans = plan_department(tiny_department(units=(tiny_unit("circuits"),), runs=runs))
    assert of(plans).days[-1].date == date(2026, 12, 3)
    assert of(plans, "circuits").days[0].date == date(2026, 12, 4)
    problem = next(p for p in plans.problems if p.code == "runs-overlap")
    assert (problem.severity, problem.remedy) == ("warning", "write `starts: 2026-12-04`")


def test_lost_and_short_days_are_passed_over() -> None:
    """A lost day holds nothing, and a day too short for a round is passed over; both are told."""
    calendar = tiny_calendar(weekly={0: "regular", 1: "early_release", 2: "regular", 3: "regular", 4: "regular"})
    department = tiny_department(bells=tiny_bells(52, early_release=32), calendar=calendar, lost=(date(2026, 12, 2),))
    plan = of(plan_department(department))
    assert [day.date.day for day in plan.days] == [30, 3, 4, 7]
    told = {note.code: note.text for note in plan.notes}
    assert told["lost"] == "Wednesday, December 2: lost, so nothing is planned."
    assert told["passed_over"] == "Tuesday, December 1: the period is too short for a round of 23 min, so nothing is planned."


def test_at_home_takes_no_day() -> None:
    """A write-up at home needs no minutes, so the unit ends with its last round."""
    unit = replace(tiny_unit(), write_up=WriteUp(claim_starts="An object floats ...", at_home=True))
    plan = of(plan_department(tiny_department(unit=unit)))
    assert len(plan.days) == 3
    assert not any(block.kind == "write_up" for day in plan.days for block in day.blocks)


def test_late_students_count_from_their_day() -> None:
    """Before groups are drawn the class is counted by the seats in use on the run's date."""
    late = (LateSeat(37, STARTS + timedelta(days=1)),)
    school_class = tiny_class(size=37, late=late)
    before, after = (
        of(plan_department(tiny_department(classes=[school_class], starts=day))) for day in (STARTS, STARTS + timedelta(days=1))
    )
    devices = [next(total.need for total in plan.materials if total.item == "device") for plan in (before, after)]
    assert devices == [6, 6]
    reflection = [plan.days[0].blocks[-2].minutes for plan in (before, after)]
    launches = [next(block.minutes for block in plan.days[0].blocks if block.kind == "launch") for plan in (before, after)]
    assert launches == [6, 6.5]
    assert min(reflection) >= 5


def pre_checked(**changes: Any) -> Plan:
    unit = tiny_unit(pre_check=(CheckItem("Which floats?", "the lighter for its size"),))
    return of(plan_department(tiny_department(unit=unit, **changes)))


def test_pre_check_stands_two_school_days_before() -> None:
    """Round 1 on Monday: the pre-check ends Thursday's meeting, five minutes before its end; without items there is none."""
    taken = pre_checked().pre_check
    assert taken is not None
    assert (taken.date, taken.start.isoformat("minutes"), taken.minutes) == (date(2026, 11, 26), "08:52", 5)
    assert of(plan_department(tiny_department())).pre_check is None


def test_pre_check_counts_school_days_and_not_meetings() -> None:
    """For a class that meets every other day its very last meeting is two school days before round 1, and holds the pre-check."""
    calendar = tiny_calendar(rotation=("A", "B"))
    taken = pre_checked(calendar=calendar, classes=[tiny_class(meets=("A",))]).pre_check
    assert taken is not None
    assert taken.date == date(2026, 11, 26)


def test_no_meeting_for_the_pre_check() -> None:
    """In the first days of the year there is no meeting before, and the plan says so."""
    plan = pre_checked(starts=date(2026, 8, 25))
    assert plan.pre_check is None
    assert "left out" in next(note.text for note in plan.notes if note.code == "pre_check")


def test_pre_check_uses_what_an_earlier_unit_leaves() -> None:
    """On a day of an earlier unit the pre-check stands only where that day has five minutes left."""
    second = tiny_unit("circuits", pre_check=(CheckItem("a", "b"),))
    runs = (Run(class_id="p1", unit="float-or-sink", starts=STARTS), Run(class_id="p1", unit="circuits", starts=date(2026, 12, 7)))
    taken = of(plan_department(tiny_department(units=(second,), runs=runs)), "circuits").pre_check
    assert taken is not None
    assert (taken.date, taken.start.isoformat("minutes")) == (date(2026, 12, 3), "08:52")
    sooner = (runs[0], replace(runs[1], starts=date(2026, 12, 4)))
    taken = of(plan_department(tiny_department(units=(second,), runs=sooner)), "circuits").pre_check
    assert taken is not None
    assert taken.date == date(2026, 11, 27)


@pytest.mark.parametrize(
    ("changes", "reason"),
    [
        (
            {"minutes": 38},
            (
                "No day is long enough for a first round: it needs 43 min (4 settle in + 3 expectations + 2 places + 6 launch + 21 station "
                "+ 1 clean up + 5 reflection + 1 pack up); the longest period of p1 from 2026-11-30 on is 38; cut 5 min: the hands-on "
                "station needs 21; shorter cards make a shorter launch; or choose longer days."
            ),
        ),
        ({"starts": date(2027, 6, 3)}, "2 of 3 rounds fit between 2027-06-03 and the last day of the year; write an earlier date."),
        (
            {"starts": date(2027, 6, 2)},
            "All rounds fit, but not the write-up, between 2027-06-02 and the last day of the year; write an earlier date.",
        ),
        (
            {"classes": [tiny_class(period="P9")]},
            "Class p1 meets on no day of the year; look at the class's period and rotation days in school/classes.yml.",
        ),
        ({"runs": [Run(class_id="p9", unit="float-or-sink", starts=STARTS)]}, "There is no class p9; write a class of classes.yml."),
        (
            {"runs": [Run(class_id="p1", unit="no-such", starts=STARTS)]},
            "There is no unit no-such without errors; mend the unit, or write another one.",
        ),
        (
            {"unit": tiny_unit(hands_on={"steps": (Step("Weigh.", 31),)})},
            "The hands-on station needs 35 min, more than the longest round of 30; cut 5 min from it.",
        ),
    ],
)
def test_not_planned(changes: dict[str, Any], reason: str) -> None:
    """A run without dates is named with its reason and what would help."""
    plans = plan_department(tiny_department(**changes))
    assert plans.plans == ()
    assert [each.reason for each in plans.not_planned] == [reason]


def test_shorter_rounds_are_offered_where_the_unit_allows() -> None:
    """Where the unit needs less than its shortest round, the remedy is a lower bound that would fit."""
    unit = tiny_unit(hands_on={"steps": (Step("Weigh.", 10),)})
    plans = plan_department(tiny_department(unit=unit, minutes=40))
    assert "it needs 42 min" in plans.not_planned[0].reason
    assert "write `round: 18-30 min` in the unit (its longest station needs 17)" in plans.not_planned[0].reason
    again = replace(unit, round_minutes=(18, 30))
    assert of(plan_department(tiny_department(unit=again, minutes=40))).rounds[0].minutes == 18


def test_other_rooms_do_not_matter() -> None:
    """A class whose room is not known is planned without a store and devices."""
    plan = of(plan_department(tiny_department(rooms=[tiny_room("r99")])))
    assert plan.materials[-1].have is None


def test_same_plans_whatever_the_hash_seed() -> None:
    """Two interpreters with different hash seeds make the same plans and problems, byte for byte."""
    code = (
        "from trivet.planning.department import plan_department; from trivet.planning.plan_data import plan_json; import json;"
        "from tests.support.department import tiny_class, tiny_department; from tests.support.lock import tiny_lock;"
        "plans = plan_department(tiny_department(size=37, locks=[tiny_lock(tiny_class(size=37))]));"
        "print(json.dumps([plan_json(p) for p in plans.plans]), plans.problems)"
    )
    printed = {
        subprocess.run(
            [sys.executable, "-c", code],
            cwd=ROOT, env={**os.environ, "PYTHONHASHSEED": seed}, capture_output=True, text=True, check=True, timeout=60,
        ).stdout
        for seed in ("1", "2")
    }  # fmt: skip
    assert len(printed) == 1
    assert "spot_checks" in printed.pop()
