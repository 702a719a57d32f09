"""What a class has out in each meeting."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from tests.support.department import STARTS, tiny_class, tiny_department, tiny_unit
from tests.support.lock import tiny_lock
from trivet.model.department import Department
from trivet.model.school import LateSeat, Run
from trivet.model.station import Material, Per
from trivet.planning.department import plan_department
from trivet.planning.materials import add_up, materials
from trivet.planning.stores.uses import Use, headcount_of, uses

LINES = (
    Material(Decimal(1), "lamp", Per.TEAM),
    Material(Decimal(1), "map", Per.CLASS, used_up=True, spare=Decimal(2)),
    Material(Decimal(3), "straw", Per.TEAM, used_up=True),
)


def found(department: Department) -> list[Use]:
    return list(uses(department, plan_department(department).plans))


def needs(use: Use) -> dict[str, tuple[int, int]]:
    return {each.item: (int(each.need), int(each.spare)) for each in use.tallies}


def test_what_is_per_class_and_its_spare_count_once() -> None:
    """A map for the class and its two spare ones are used on the first day; straws in each round."""
    days = found(tiny_department(size=36, unit=tiny_unit(hands_on={"materials": LINES})))
    assert [needs(use) for use in days] == [
        {"lamp": (3, 0), "map": (1, 2), "straw": (9, 0)},
        {"lamp": (3, 0), "map": (0, 0), "straw": (9, 0)},
        {"lamp": (3, 0), "map": (0, 0), "straw": (9, 0)},
    ]


def test_days_add_up_to_the_plan() -> None:
    """Over its days a run uses up what its own plan says, for any way and with kept groups or without."""
    own = tiny_class(size=37)
    for way in ("rotate", "whole_class"):
        for locks in ([], [tiny_lock(own)]):
            department = tiny_department(size=37, unit=tiny_unit(hands_on={"materials": LINES}), way=way, locks=locks)
            plan = plan_department(department).plans[0]
            for total in materials(
                department.units[plan.unit], headcount_of(department, plan), None, (), spare_percent=10, whole_class=way != "rotate"
            ):
                mine = [each for use in found(department) for each in use.tallies if each.item == total.item]
                if total.use == "used up":
                    assert add_up(mine)[0].with_spare(10) == total.need
                elif mine:
                    assert max(each.need for each in mine) == total.need


def test_kept_groups_are_counted_where_they_stand() -> None:
    """With kept groups of 13, 12 and 12 only the day of the group of 13 needs a fourth lamp."""
    own = tiny_class(size=37)
    days = found(tiny_department(size=37, unit=tiny_unit(hands_on={"materials": LINES}), locks=[tiny_lock(own)]))
    assert sorted(needs(use)["lamp"][0] for use in days) == [3, 3, 4]
    assert [needs(use)["lamp"][0] for use in found(tiny_department(size=37, unit=tiny_unit(hands_on={"materials": LINES})))] == [4, 4, 4]


def test_what_is_set_out_is_for_the_largest_group_that_may_come() -> None:
    """Where it is not known who comes, straws for the group of 13 are set out each day; with kept groups, for whoever comes."""
    own = tiny_class(size=37)
    for locks, wanted in (([], [12, 12, 12]), ([tiny_lock(own)], [9, 9, 12])):
        days = found(tiny_department(size=37, unit=tiny_unit(hands_on={"materials": LINES}), locks=locks))
        straws = [int(each.need) for use in days for each in use.set_out if each.item == "straw"]
        assert (straws if not locks else sorted(straws)) == wanted
        assert sum(int(each.need) for use in days for each in use.tallies if each.item == "straw") == 30


def test_a_whole_class_round_has_everything_out_on_its_own_day() -> None:
    """All nine teams are at the hands-on station on the second day, and all pairs online on the first."""
    days = found(tiny_department(size=36, unit=tiny_unit(hands_on={"materials": LINES}), way="whole_class"))
    assert [(needs(use).get("lamp"), use.devices) for use in days] == [(None, 18), ((9, 0), 0)]


def test_a_late_seat_counts_from_its_first_day() -> None:
    """A class of 36 whose last seat joins after the start is one of 35."""
    own = replace(tiny_class(size=37), late=(LateSeat(37, STARTS.replace(year=2027)),))
    department = tiny_department(classes=[own], runs=[Run(class_id="p1", unit="float-or-sink", starts=STARTS)])
    assert headcount_of(department, plan_department(department).plans[0]).students == 36


def test_a_class_of_nobody_has_nothing_out() -> None:
    """A class whose seats are all gone uses nothing."""
    empty = replace(tiny_class(size=1), seats=())
    assert found(tiny_department(classes=[empty])) == []
