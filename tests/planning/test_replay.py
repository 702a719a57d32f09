"""Changes in the middle of a unit: the past stays, only the rest is planned anew."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support.department import STARTS, tiny_bells, tiny_calendar, tiny_class, tiny_department
from tests.support.lock import tiny_lock
from trivet.model.department import Department
from trivet.model.plan import Plan, Plans
from trivet.model.school import DayType, Done, HalfDone, Run
from trivet.model.station import Kind
from trivet.planning.department import plan_department
from trivet.planning.team_sizes import LETTERS


def day(number: int) -> date:
    """The date so many days after the run's start, a Monday."""
    return STARTS + timedelta(days=number)


def recorded(*, drawn: bool = True, **record: Any) -> Department:
    school = {key: record.pop(key) for key in ("bells", "calendar", "minutes", "defaults") if key in record}
    run = Run(class_id="p1", unit="float-or-sink", starts=STARTS, **record)
    return tiny_department(runs=(run,), locks=[tiny_lock(tiny_class())] if drawn else [], **school)


def planned(department: Department) -> Plan:
    plans: Plans = plan_department(department)
    assert plans.plans, plans.not_planned
    return plans.plans[0]


def spoken(plan: Plan) -> list[str]:
    return [
        f"{each.date:%m-%d} " + " ".join(f"{b.kind}{b.round or ''}={b.minutes:g}" for b in each.blocks if b.kind in KINDS)
        for each in plan.days
    ]


KINDS = ("launch", "recap", "station", "write_up")


def check(plan: Plan) -> None:
    """What holds however a run went."""
    assert [each.date for each in plan.days] == sorted({each.date for each in plan.days})
    for each in plan.days:
        at = 0.0
        for block in each.blocks:
            assert block.at == at and block.minutes > 0
            at += block.minutes
        assert at + each.surplus_minutes == each.minutes and each.surplus_minutes >= 0
        assert next(block.minutes for block in each.blocks if block.kind == "reflection") >= 5
    stations = [(each.date, block.round, block.minutes) for each in plan.days for block in each.blocks if block.kind == "station"]
    assert stations == [(each.date, each.round, each.minutes) for each in plan.rounds]
    if plan.rounds and plan.rounds[0].stations is not None:
        met: dict[tuple[str, Kind], set[int]] = {}
        for held in plan.rounds:
            assert held.stations is not None and len(set(held.stations.values())) == len(held.stations)
            for letter, kind in held.stations.items():
                met.setdefault((letter, kind), set()).add(held.round)
        assert set(met) == {(letter, kind) for letter in LETTERS for kind in Kind}
        assert all(len(numbers) == 1 for numbers in met.values())


def test_a_lost_day_moves_only_what_comes_after() -> None:
    """Wednesday is lost: Monday and Tuesday stay to the minute, and round 3 and the write-up move on."""
    before, after = planned(recorded()), planned(recorded(lost=(day(2),)))
    assert after.days[:2] == before.days[:2]
    assert [each.date for each in after.days] == [day(0), day(1), day(3), day(4)]
    check(after)


def test_a_lost_day_never_shortens_rounds_that_were_held() -> None:
    """When what is left falls on a short day, the rounds already held keep their minutes (a plan from scratch would shorten all)."""
    calendar = tiny_calendar(weekly={0: "regular", 1: "regular", 2: "regular", 3: "short", 4: "regular"})
    bells = tiny_bells(52, short=41)
    before = planned(recorded(bells=bells, calendar=calendar))
    after = planned(recorded(bells=bells, calendar=calendar, lost=(day(2),)))
    assert [each.minutes for each in before.rounds] == [23, 23, 23]
    assert [each.minutes for each in after.rounds] == [23, 23, 22]
    assert after.days[:2] == before.days[:2]
    check(after)


def test_a_stopped_round_goes_on_with_a_recap() -> None:
    """Round 2 was stopped after 11 of 23 min: the next day opens at the same places with a recap of 1 min and holds the 12 left."""
    plan = planned(recorded(half=(HalfDone(day(1), 2, 11),)))
    assert spoken(plan) == [
        "11-30 launch1=6 station1=23", "12-01 launch2=6 station2=11", "12-02 recap2=1 station2=12", "12-03 launch3=6 station3=23",
        "12-04 write_up=12",
    ]  # fmt: skip
    assert [(each.round, each.minutes, each.half) for each in plan.rounds] == [
        (1, 23, False),
        (2, 11, True),
        (2, 12, False),
        (3, 23, False),
    ]
    assert plan.rounds[1].stations == plan.rounds[2].stations
    check(plan)


def test_a_round_stopped_twice() -> None:
    """A round may be stopped again; its minutes add up to those of the others."""
    plan = planned(recorded(half=(HalfDone(day(1), 2, 8), HalfDone(day(2), 2, 5))))
    assert [(each.round, each.minutes, each.half) for each in plan.rounds] == [
        (1, 23, False), (2, 8, True), (2, 5, True), (2, 10, False), (3, 23, False),
    ]  # fmt: skip
    check(plan)


def test_a_group_that_missed_a_round_goes_first() -> None:
    """Group B missed round 1: it is at that station in the next round, and the unit takes one round more."""
    usual = planned(recorded())
    plan = planned(recorded(done=(Done(date=day(0), rounds=(1,), without=("B",)),)))
    assert usual.rounds[0].stations is not None and plan.rounds[0].stations is not None and plan.rounds[1].stations is not None
    assert plan.rounds[0].stations == {letter: usual.rounds[0].stations[letter] for letter in "AC"}
    assert plan.rounds[1].stations["B"] is usual.rounds[0].stations["B"]
    assert plan.rounds[-1].round == 4
    assert plan.days[0] == usual.days[0]
    assert "Group B missed round 1 and goes to that station first" in " ".join(note.text for note in plan.notes)
    assert not [check for check in plan.spot_checks if check.round == 1 and check.team.startswith("B")]
    check(plan)


def test_dates_do_not_tell_whether_groups_are_drawn() -> None:
    """With one missed round, a run has the same days whether its groups are public or not."""
    done = (Done(date=day(0), rounds=(1,), without=("B",)),)
    assert planned(recorded(done=done)).days == planned(recorded(done=done, drawn=False)).days
    hidden = planned(recorded(done=done, drawn=False))
    assert all(each.stations is None for each in hidden.rounds)


def test_two_missed_rounds_take_no_round_too_many() -> None:
    """Where groups are drawn, two misses cost exactly as many rounds as König's theorem asks for (here one or two more)."""
    found = set()
    for second in "AC":
        done = (Done(date=day(0), rounds=(1,), without=("B",)), Done(date=day(1), rounds=(2,), without=(second,)))
        plan = planned(recorded(done=done))
        assert all(each.stations for each in plan.rounds)
        found.add(plan.rounds[-1].round)
        check(plan)
    assert found <= {4, 5}


def test_what_was_done_otherwise() -> None:
    """One round instead of none, fewer minutes, the write-up with a round: the record stands on its date, the rest follows it."""
    done = (Done(date=day(0), rounds=(1,), minutes=20), Done(date=day(4), rounds=(3,), write_up=True, minutes=20))
    plan = planned(recorded(done=done, lost=(day(2), day(3))))
    assert spoken(plan) == ["11-30 launch1=6 station1=20", "12-01 launch2=6 station2=21", "12-04 launch3=6 station3=20 write_up=12"]
    check(plan)


def test_a_record_without_minutes_has_those_of_the_plan() -> None:
    """Where the plan could not hold the target, a round recorded on the first day has the plan's minutes (22 of 23 in 44 min)."""
    usual = planned(recorded(minutes=44))
    plan = planned(recorded(minutes=44, done=(Done(date=day(0), rounds=(1,)),)))
    assert usual.rounds[0].minutes == 22
    assert plan.days == usual.days


def test_everything_is_done() -> None:
    """After the write-up nothing is planned any more."""
    done = (Done(date=day(3), write_up=True),)
    assert planned(recorded(done=done)).days == planned(recorded()).days


@pytest.mark.parametrize(
    ("record", "code"),
    [
        ({"done": (Done(date=day(0), rounds=(2,)),)}, "done-out-of-order"),
        ({"half": (HalfDone(day(0), 3, 5),)}, "done-out-of-order"),
        ({"done": (Done(date=day(0), rounds=(1, 2)),)}, "done-too-much"),
        ({"done": (Done(date=day(0), rounds=(1,), write_up=True, minutes=30),)}, "done-too-much"),
    ],
)
def test_records_that_cannot_be_so(record: dict[str, Any], code: str) -> None:
    """A record that contradicts itself or its period leaves the run without a plan, with the reason."""
    plans = plan_department(recorded(**record))
    assert [each.code for each in plans.problems if each.severity == "error"] == [code]
    assert not plans.plans


def test_the_year_ends_before_the_rest() -> None:
    """Where what is left finds no day, the days that were held stay, and the run is an error."""
    calendar = tiny_calendar(last=day(3))
    plans = plan_department(recorded(calendar=calendar, lost=(day(2),)))
    assert [each.date for each in plans.plans[0].days] == [day(0), day(1)]
    assert [each.code for each in plans.problems if each.severity == "error"] == ["year-ends"]


DAYS = st.integers(0, 14)


@settings(max_examples=120, deadline=None)
@given(
    lengths=st.lists(st.integers(44, 95), min_size=1, max_size=3),
    early=st.sets(DAYS, max_size=3),
    late=st.integers(1, 10),
    stopped=st.integers(1, 18),
    what=st.sampled_from(("lost", "half", "without")),
)
def test_what_is_written_later_changes_nothing_before(lengths: list[int], early: set[int], late: int, stopped: int, what: str) -> None:
    """Whatever is recorded for a date, every day before it stays as it was, to the minute and the place."""
    bells = {f"d{i}": DayType(f"d{i}", tiny_bells(length)["regular"].periods) for i, length in enumerate(lengths)}
    calendar = tiny_calendar(weekly={weekday: f"d{weekday % len(lengths)}" for weekday in range(5)})
    lost = tuple(day(number) for number in sorted(early))
    before = planned(recorded(bells=bells, calendar=calendar, lost=lost))
    coming = [each for each in before.days if each.date > max([*lost, day(0)]) and any(b.kind == "station" for b in each.blocks)]
    if not coming:
        return
    mark = coming[min(late, len(coming)) - 1]
    number = next(block.round or 0 for block in mark.blocks if block.kind == "station")
    record: dict[str, Any] = {"lost": lost}
    if what == "lost":
        record["lost"] = (*lost, mark.date)
    elif what == "half":
        record["half"] = (HalfDone(mark.date, number, stopped),)
    else:
        record["done"] = (Done(date=mark.date, rounds=(number,), without=("A",)),)
    after = planned(recorded(bells=bells, calendar=calendar, **record))
    assert [each for each in after.days if each.date < mark.date] == [each for each in before.days if each.date < mark.date]
    assert [each for each in after.rounds if each.date < mark.date] == [each for each in before.rounds if each.date < mark.date]
    check(after)


def test_equal_minutes_after_a_change() -> None:
    """What is left has the minutes of the rounds already held, though its days could hold more."""
    plan = planned(recorded(done=(Done(date=day(0), rounds=(1,), minutes=21),), calendar=replace(tiny_calendar())))
    assert [each.minutes for each in plan.rounds] == [21, 21, 21]
