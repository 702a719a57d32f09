"""The materials of a whole department against a count by hand, minute by minute, and the figures of one worked week."""

from __future__ import annotations

import random
from collections.abc import Iterable
from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction

import pytest

from tests.planning.count_materials import most_at_one_minute, used_in_all
from tests.support.department import (
    STARTS,
    period,
    tiny_bells,
    tiny_calendar,
    tiny_class,
    tiny_department,
    tiny_room,
    tiny_unit,
)
from tests.support.lock import tiny_lock
from trivet.model.department import Department
from trivet.model.plan import Plans
from trivet.model.school import DayType, LateSeat, Run, StockItem, Term
from trivet.model.station import Material, Per
from trivet.model.unit import Unit
from trivet.planning.department import plan_department
from trivet.planning.department_materials import DepartmentMaterials, Span, department_materials
from trivet.planning.measures import factor
from trivet.planning.stores.needs import Reusable, UsedUp

ITEMS = ("cup", "lamp", "magnet", "rope", "scale")
MEASURED = ("salt", "water")


def random_line(dice: random.Random) -> Material:
    used_up = dice.random() < 0.4
    measured = used_up and dice.random() < 0.5
    return Material(
        quantity=Decimal(dice.randint(1, 9)),
        item=dice.choice(MEASURED if measured else ITEMS),
        per=dice.choice(list(Per)),
        per_count=dice.choice((1, 1, 2, 3)),
        unit="mL" if measured else "",
        used_up=used_up,
        spare=dice.choice((None, None, Decimal(0), Decimal(2))),
    )


def random_unit(dice: random.Random, slug: str) -> Unit:
    lines = tuple(random_line(dice) for _ in range(dice.randint(1, 6)))
    return tiny_unit(slug, hands_on={"materials": lines}, online={"work_in": dice.choice(("", "pairs", "alone", "team"))})


def random_bells() -> dict[str, DayType]:
    """Two kinds of days; period P2 overlaps both others, as a lunch that splits a period does."""
    regular = {"P1": period("P1", 60, 8, 0), "P2": period("P2", 60, 8, 30), "P3": period("P3", 60, 9, 0), "P4": period("P4", 60, 12, 0)}
    block = {"P1": period("P1", 100, 8, 0), "P2": period("P2", 100, 9, 0), "P4": period("P4", 100, 10, 40)}
    return {"regular": DayType("regular", regular), "block": DayType("block", block)}


def random_department(seed: int) -> Department:
    """Two to five classes that run one to three units, in rooms of two stores, on days that clash or do not."""
    dice = random.Random(seed)
    units = [random_unit(dice, slug) for slug in ("alpha", "beta", "gamma")]
    rooms = [
        tiny_room(f"r{number}", store=dice.choice(("north", "south", "north", "")), devices=dice.choice((4, 8, None)))
        for number in range(3)
    ]
    classes, runs, locks = [], [], []
    for number in range(dice.randint(2, 5)):
        own = tiny_class(f"c{number}", dice.randint(1, 40), period=dice.choice(("P1", "P2", "P3", "P4")), room=dice.choice(rooms).id)
        if own.size > 3 and dice.random() < 0.3:
            own = replace(own, late=(LateSeat(own.seats[-1], STARTS + timedelta(days=9)),))
        classes.append(own)
        for unit in dice.sample(units, dice.randint(1, 3)):
            way = dice.choice(("rotate", "rotate", "whole_class"))
            runs.append(Run(class_id=own.id, unit=unit.slug, starts=STARTS + timedelta(days=dice.randint(0, 12)), way=way))
            if not own.late and dice.random() < 0.5:
                locks.append(tiny_lock(own, unit.slug))
    stock = [
        StockItem(item=item, have=Decimal(dice.randint(0, 60)), store=dice.choice(("north", "south", "north", "south", "")))
        for item in dice.sample(ITEMS, 4)
        for _ in range(dice.choice((1, 1, 2)))
    ]
    weekly = {day: dice.choice(("regular", "regular", "block")) for day in range(5)}
    return tiny_department(
        unit=units[0],
        units=units[1:],
        runs=runs,
        locks=locks,
        classes=classes,
        rooms=rooms,
        bells=random_bells(),
        calendar=tiny_calendar(weekly=weekly),
        inventory=stock,
    )


def planned(department: Department) -> tuple[Plans, DepartmentMaterials]:
    plans = plan_department(department)
    return plans, department_materials(department, plans)


def at_once(needs: Iterable[Reusable]) -> dict[tuple[str, str], int]:
    return {(need.pool.item, need.pool.place): int(need.need) for need in needs}


def in_all(needs: Iterable[UsedUp]) -> dict[tuple[str, str], Fraction]:
    found = {}
    for need in needs:
        many = factor(need.unit, "mL") if need.unit != "each" else Fraction(1)
        assert many is not None
        found[need.pool.item, need.pool.place] = Fraction(need.need) * many
    return found


@pytest.mark.parametrize("tens", range(10))
def test_totals_equal_a_count_minute_by_minute(tens: int) -> None:
    """On a hundred random departments each week's and the year's totals are those counted every minute, thing by thing."""
    clashes = 0
    for seed in range(10 * tens, 10 * tens + 10):
        department = random_department(seed)
        plans, found = planned(department)
        assert found.year is not None, seed
        for span in (*found.weeks, found.year):
            counted = most_at_one_minute(department, plans.plans, span.first, span.last)
            assert at_once((*span.reusable, *span.devices)) == counted, (seed, span.first)
            assert in_all(span.used_up) == used_in_all(department, plans.plans, span.first, span.last), (seed, span.first)
        clashes += sum(len(need.peak.uses) > 1 for need in found.year.reusable)
    assert clashes  # the ten departments are not all without classes that meet


def scene(**changes: object) -> Department:
    """Classes p2 (36) and r2 (28) meet at the same time in two rooms of one store; p2 begins on Monday, r2 on Tuesday."""
    runs = [
        Run(class_id="p1", unit="float-or-sink", starts=STARTS),
        Run(class_id="p2", unit="float-or-sink", starts=STARTS),
        Run(class_id="r2", unit="float-or-sink", starts=date(2026, 12, 1)),
    ]
    bells = {"regular": DayType("regular", {"P1": period("P1", 52), "P2": period("P2", 52, 9, 1)})}
    given: dict[str, object] = {
        "runs": runs,
        "bells": bells,
        "rooms": [tiny_room("r12"), tiny_room("r14", name="Room 14")],
        "classes": [tiny_class("p1", 31), tiny_class("p2", 36, period="P2"), tiny_class("r2", 28, period="P2", room="r14")],
        "inventory": [
            StockItem(item="graduated cylinder 25 mL", have=Decimal(4), store="north prep room", price=Decimal("6.50")),
            StockItem(item="balance 0.1 g", have=Decimal(5), store="north prep room"),
            StockItem(item="water", have=Decimal(1), unit="L", store="north prep room", price=Decimal("0.40"), pack=Decimal(5)),
        ],
    }
    return tiny_department(**(given | changes))  # type: ignore[arg-type]


def week_of(department: Department, day: date = STARTS) -> Span:
    week = planned(department)[1].week_of(day)
    assert week is not None
    return week


def test_the_worked_week() -> None:
    """27 teams in three classes: cylinders 3 + 3 at once against 4, water 27 × 60 mL and 10 % spare, 95 write-ups."""
    week = week_of(scene())
    cylinder, balance = week.reusable
    assert (cylinder.need, cylinder.have, cylinder.short) == (6, 4, 2)
    assert [(moment.date.isoformat(), moment.classes) for moment in cylinder.lacking] == [
        ("2026-12-01", ("p2", "r2")),
        ("2026-12-02", ("p2", "r2")),
    ]
    assert [(moment.date.day, moment.classes, moment.need) for moment in cylinder.moments][:3] == [
        (30, ("p1",), 3),
        (30, ("p2",), 3),
        (1, ("p1",), 3),
    ]
    assert (balance.need, balance.have, balance.short) == (4, 5, 0)
    (water,) = week.used_up
    assert (water.need, water.unit, water.spare) == (Decimal(1782), "mL", Decimal(162))
    assert water.parts == (
        ("p1", "float-or-sink", Decimal(540)),
        ("p2", "float-or-sink", Decimal(540)),
        ("r2", "float-or-sink", Decimal(540)),
    )
    assert [run.teams for run in week.runs] == [9, 9, 9]
    assert {each.kind: (each.count, each.pages) for each in week.prints}["write_ups"] == (95, 95)


def test_shopping_is_in_whole_packs_and_exact_money() -> None:
    """2 cylinders at 6.50 are 13.00; 0.782 L of water come in a pack of 5 L at 0.40 a liter: 2.00."""
    week = week_of(scene())
    bought = [(each.item, each.amount, each.unit, each.packs, each.cost) for each in week.purchases]
    assert bought == [
        ("graduated cylinder 25 mL", Decimal(2), "each", None, Decimal("13.00")),
        ("water", Decimal(5), "L", 1, Decimal("2.00")),
    ]


def test_another_store_is_another_count() -> None:
    """Rooms of two stores do not share: 3 and 3 against 4 and nothing known elsewhere."""
    rooms = [tiny_room("r12"), tiny_room("r14", store="south prep room")]
    week = week_of(scene(rooms=rooms))
    cylinders = [each for each in week.reusable if each.pool.item.startswith("graduated")]
    assert [(each.pool.place, each.need, each.have, each.short) for each in cylinders] == [
        ("north prep room", 3, 4, 0),
        ("south prep room", 3, 0, 3),
    ]


def test_devices_are_counted_by_room() -> None:
    """Pairs at the online station against the devices of their own room, classes in two rooms apart."""
    rooms = [tiny_room("r12", devices=4), tiny_room("r14", name="Room 14", devices=None)]
    week = week_of(scene(rooms=rooms))
    assert [(each.pool.place, each.need, each.have, each.short) for each in week.devices] == [("r12", 6, 4, 2), ("r14", 5, None, 0)]


def test_terms_and_year_hold_all_weeks() -> None:
    """A term holds what lies in it, the year everything: totals of used-up things add up, peaks are the largest of the weeks."""
    terms = (Term("Fall", date(2026, 8, 24), date(2026, 12, 1)), Term("Winter", date(2026, 12, 2), date(2027, 3, 1)))
    bare = tiny_unit(
        hands_on={
            "materials": (Material(Decimal(1), "straw", Per.TEAM, used_up=True, spare=Decimal(0)), Material(Decimal(1), "lamp", Per.TEAM))
        }
    )
    department = scene(unit=bare, calendar=tiny_calendar(terms=terms))
    _, found = planned(department)
    assert [term.name for term in found.terms] == ["Fall", "Winter"]
    assert found.year is not None
    straws = [[each.need for each in span.used_up] for span in (*found.terms, found.year)]
    assert [sum(each) for each in straws] == [15, 12, 27]
    assert max(need.need for week in found.weeks for need in week.reusable) == found.year.reusable[0].need == 6
    assert found.week_of(date(2026, 12, 4)) is found.weeks[0]
    assert found.week_of(date(2027, 5, 3)) is None


def test_paper_is_printed_for_the_week_of_the_first_round() -> None:
    """A run from Thursday to Tuesday has its paper in its first week alone."""
    _, found = planned(tiny_department(starts=date(2026, 12, 3)))
    assert [[each.count for each in week.prints] for week in found.weeks] == [[33, 18, 31], []]
    assert [bool(week.reusable) for week in found.weeks] == [True, True]


def test_nothing_planned() -> None:
    """A department without a planned run has neither weeks nor a year."""
    assert planned(tiny_department(runs=[]))[1] == DepartmentMaterials((), (), None)


def test_hidden_groups_look_like_none() -> None:
    """A leveled unit's materials are those of one not drawn yet: nothing of its groups shows."""
    own = tiny_class(size=31)
    hidden = tiny_department(locks=[tiny_lock(own, leveled=True)])
    assert planned(hidden)[1] == planned(tiny_department())[1]


def test_half_the_bells_shared_is_at_the_same_time() -> None:
    """Periods that overlap by one minute count together; periods that touch do not (half-open)."""
    for start, together in ((56, True), (57, False)):
        bells = {"regular": DayType("regular", {"P1": period("P1", 52), "P2": period("P2", 52, 8, start)})}
        runs = [Run(class_id=name, unit="float-or-sink", starts=STARTS) for name in ("p1", "p2")]
        department = scene(bells=bells, runs=runs)
        assert week_of(department).reusable[0].need == (6 if together else 3)


def test_days_without_a_round_take_nothing() -> None:
    """On the day of the write-up nothing stands on the benches."""
    department = tiny_department(size=36, bells=tiny_bells(52))
    plans, found = planned(department)
    dates = {moment.date for week in found.weeks for need in week.reusable for moment in need.moments}
    assert dates == {each.date for each in plans.plans[0].rounds}
    assert len(plans.plans[0].days) == 4
