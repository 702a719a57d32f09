"""What is said of a shortage and of a need."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from tests.planning.test_department_materials import scene, week_of
from tests.support.department import tiny_room, tiny_unit
from trivet.model.school import StockItem
from trivet.model.station import Material, Per
from trivet.planning.stores.sentences import clash, headline, why, why_used_up


def test_a_clash_names_day_period_and_classes() -> None:
    """The shortage names the things, the days, the period, the classes and the store (the design's worked value)."""
    department = scene()
    (shortage, water) = week_of(department).shortages
    rooms = department.school.rooms
    assert headline(shortage.lack, rooms) == "Short of 2 × graduated cylinder 25 mL on Tuesday and Wednesday, P2"
    assert clash(shortage.lack, rooms) == "p2 and r2 need 3 each at the same time. North prep room has 4."
    assert headline(water.lack, rooms) == "Short of 782 mL water"
    assert clash(water.lack, rooms) == "1,782 mL are needed in all (p1 540 + p2 540 + r2 540, and 162 spare). North prep room has 1,000 mL."


def test_needs_that_differ_are_told_one_by_one() -> None:
    """Where classes need different numbers each has its own."""
    each = tiny_unit(hands_on={"materials": (Material(Decimal(1), "cup", Per.STUDENT),)})
    department = scene(unit=each, inventory=[StockItem(item="cup", have=Decimal(20))])
    (shortage,) = week_of(department).shortages
    assert clash(shortage.lack, department.school.rooms) == "p2 needs 12 and r2 needs 10 at the same time. The stores have 20."


def test_devices_name_their_room() -> None:
    """A shortage of devices is one of a room, of one class at a time."""
    department = scene(rooms=[tiny_room("r12", devices=4), tiny_room("r14")])
    (shortage, *_) = [each for each in week_of(department).shortages if each.lack.pool.device]
    assert headline(shortage.lack, department.school.rooms) == "Short of 2 devices in Room 12 on Monday, Tuesday and Wednesday, P1 and P2"
    assert clash(shortage.lack, department.school.rooms) == "p2 needs 6 at one time. Room 12 has 4."


def test_why() -> None:
    """A need says who has it out at once; a total says what it is made of."""
    week = week_of(scene())
    assert why(week.reusable[0]) == "p2 and r2 at once, Tue and Wed, P2"
    assert why_used_up(week.used_up[0]) == "p1 540 + p2 540 + r2 540, and 162 spare"
    alone = scene()
    alone = replace(alone, school=replace(alone.school, runs=alone.school.runs[:2]))
    assert why(week_of(alone).reusable[0]) == "at once in p1 and p2"
