"""A department with one thing changed: what would then be needed is what planning it anew needs."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction

import pytest

from tests.support.department import STARTS, period, tiny_calendar, tiny_class, tiny_department, tiny_room, tiny_unit
from trivet.model.department import Department
from trivet.model.school import Closure, DayType, Done, Run, StockItem
from trivet.model.station import Material, Per
from trivet.planning.department import plan_department
from trivet.planning.materials import item_key
from trivet.planning.stores.moments import moments
from trivet.planning.stores.pools import Key, make_pools
from trivet.planning.stores.tried import Lack, Tried
from trivet.planning.stores.uses import uses

CYLINDER = "graduated cylinder 25 mL"
LATER = date(2027, 1, 11)
CLOSED = Closure(date(2026, 12, 2), date(2026, 12, 2))


def two_classes(*, have: int = 4, runs: tuple[Run, ...] = ()) -> Department:
    """p2 and r2 run `float` at the same time with 3 cylinders each in one store, and `plates`, which needs none, in January."""
    given = [Run(class_id=name, unit=unit, starts=day) for name in ("p2", "r2") for unit, day in (("float", STARTS), ("plates", LATER))]
    return tiny_department(
        unit=tiny_unit("float", hands_on={"materials": (Material(Decimal(1), CYLINDER, Per.TEAM),)}),
        units=[tiny_unit("plates", hands_on={"materials": ()})],
        runs=runs or given,
        bells={"regular": DayType("regular", {"P2": period("P2", 52, 9, 1)})},
        calendar=tiny_calendar(closures=(CLOSED,)),
        classes=[tiny_class("p2", 36, period="P2"), tiny_class("r2", 28, period="P2", room="r14")],
        rooms=[tiny_room("r12"), tiny_room("r14")],
        inventory=[StockItem(item=CYLINDER, have=Decimal(have), store="north prep room")],
    )


def tried(department: Department) -> Tried:
    plans = [plan for plan in plan_department(department).plans if plan.days]
    everything = uses(department, plans)
    pools = make_pools(everything, department.school)
    shares = pools.by_pool(everything)
    now = {key: moments(pools.by_key[key], own) for key, own in shares.items() if not pools.by_key[key].used_up}
    return Tried(department, plans, pools, shares, now)


def with_start(department: Department, place: int, day: date) -> Department:
    runs = tuple(replace(run, starts=day) if run.index == place else run for run in department.school.runs)
    return replace(department, school=replace(department.school, runs=runs))


def cylinders(found: Tried) -> Key:
    return next(key for key in found.now if key[0] == item_key(CYLINDER))


def days(lacking: set[Lack] | frozenset[Lack]) -> set[date]:
    return {day for _, day, _ in lacking}


def test_what_is_short_now() -> None:
    """With four of six the first three meetings are short, with both classes named; with six nothing is."""
    found = tried(two_classes())
    assert days(set(found.lacking_now)) == {STARTS, STARTS + timedelta(1), STARTS + timedelta(3)}
    assert {(key, classes) for key, _, classes in found.lacking_now} == {(cylinders(found), ("p2", "r2"))}
    assert tried(two_classes(have=6)).lacking_now == set()


@pytest.mark.parametrize("most", [0, 1, 2, 5])
def test_meetings_after(most: int) -> None:
    """The next meetings leave out the day itself, the closed day and the weekend, and are at most so many."""
    expected = [date(2026, 12, 1), date(2026, 12, 3), date(2026, 12, 4), date(2026, 12, 7), date(2026, 12, 8)]
    assert tried(two_classes()).meetings_after("p2", STARTS, most) == tuple(expected[:most])
    assert tried(two_classes()).meetings_after("p2", date(2027, 6, 4), 5) == ()


def test_runs_keep_their_place() -> None:
    """A class's runs come with their place in runs.yml, by which another start is named."""
    assert [(place, run.unit) for place, run in tried(two_classes()).runs_of("r2")] == [(2, "float"), (3, "plates")]
    assert tried(two_classes()).runs_of("p9") == []


@pytest.mark.parametrize("later", [1, 3, 4, 7, 14])
def test_a_start_that_was_tried_is_what_planning_it_gives(later: int) -> None:
    """The plans that a later start changes, and what is short then, are those of the department written that way."""
    found, day = tried(two_classes()), STARTS + timedelta(later)
    made = found.moved("p2", {0: day})
    assert made is not None
    (plan,), after = made
    anew = tried(with_start(two_classes(), 0, day))
    written = next(each for each in anew.plans if (each.class_id, each.unit) == ("p2", "float"))
    assert plan.days == written.days
    assert [(each.round, each.date, each.stations) for each in plan.rounds] == [(r.round, r.date, r.stations) for r in written.rounds]
    assert after.short == {lack for lack in anew.lacking_now if lack[1] in after.days}
    assert {STARTS, day} <= set(after.days)


@pytest.mark.parametrize(
    ("place", "day"),
    [(0, CLOSED.first), (0, date(2026, 12, 5)), (0, date(2027, 6, 4)), (0, LATER), (0, LATER - timedelta(3))],
    ids=["a closed day", "a Saturday", "the last day of school", "where the next run begins", "so that it pushes the next run"],
)
def test_a_start_that_cannot_be_is_none(place: int, day: date) -> None:
    """A start on which the run can't begin, can't end, or moves another run is answered with None."""
    assert tried(two_classes()).moved("p2", {place: day}) is None


def test_what_is_recorded_does_not_move() -> None:
    """A run of which a group missed a round, so that rounds are made up, is not moved to dates that know nothing of it."""
    run = Run(class_id="p2", unit="float", starts=STARTS, done=(Done(date=STARTS, rounds=(1,), without=("A",)),))
    other = Run(class_id="r2", unit="float", starts=STARTS)
    assert tried(two_classes(runs=(run, other))).moved("p2", {0: STARTS + timedelta(7)}) is None
    plain = replace(run, done=())
    assert tried(two_classes(runs=(plain, other))).moved("p2", {0: STARTS + timedelta(7)}) is not None


def test_a_change_is_worked_out_once() -> None:
    """The same starts, in whatever order, are worked out once: several shortages ask for them."""
    found = tried(two_classes())
    one = found.moved("p2", {0: LATER, 1: STARTS})
    assert one is not None
    assert found.moved("p2", {1: STARTS, 0: LATER}) is one


@pytest.mark.parametrize(("teams", "need", "short"), [(1, 6, True), (2, 4, False), (3, 2, False)])
def test_thinner_materials(teams: int, need: int, *, short: bool) -> None:
    """Two of three teams to a cylinder need 2 + 2 and one for all three 1 + 1: worked by hand for three teams of each class."""
    found = tried(two_classes())
    after = found.thinned("float", 0, teams)
    assert after.most == {cylinders(found): Fraction(need)}
    assert bool(after.short) == short


def test_nothing_changed_changes_nothing() -> None:
    """The uses of a run in their own place leave what is short as it is."""
    found = tried(two_classes())
    assert found.thinned("float", 0, 1).short == found.lacking_now


def test_an_item_on_two_lines_is_thinned_on_one() -> None:
    """Where a unit asks for an item on two lines, both count and only the line that was named is thinned: 3 + 3 a class, then 2 + 3."""
    line = Material(Decimal(1), CYLINDER, Per.TEAM)
    given = two_classes(have=20)
    double = replace(given.units["float"], hands_on=replace(given.units["float"].hands_on, materials=(line, replace(line))))
    found = tried(replace(given, units={**given.units, "float": double}))
    assert found.now[cylinders(found)][0].need == 12
    assert found.thinned("float", 1, 2).most == {cylinders(found): Fraction(10)}


def test_a_run_that_is_taken_out_leaves_the_others() -> None:
    """Without p2 its three meetings need what r2 alone has out, three of four, and nothing is short on them."""
    found = tried(two_classes())
    after = found.after([("p2", "float")], [])
    assert after.most == {cylinders(found): Fraction(3)}
    assert after.short == set()
    assert after.days == days(set(found.lacking_now))
    nobody = found.after([("p2", "float"), ("r2", "float")], [])
    assert (nobody.most, nobody.short) == ({}, set())
