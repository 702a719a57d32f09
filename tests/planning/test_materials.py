"""Totals of one run against things counted one by one."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support.department import tiny_class, tiny_room, tiny_unit
from tests.support.lock import tiny_lock
from trivet.model.lock import Groups
from trivet.model.plan import MaterialTotal
from trivet.model.school import StockItem
from trivet.model.station import Material, Per
from trivet.planning.headcount import by_groups, by_size
from trivet.planning.materials import DEVICE, materials
from trivet.planning.measures import in_packs


def groups_of(size: int) -> Groups:
    return tiny_lock(tiny_class(size=size)).groups


def handed_out(line: Material, groups: Groups) -> list[int]:
    """Hand a line's things out in each round of a rotating run, one receiver after the other: how often it is handed out."""
    rounds = []
    for group in groups.values():
        if not group.students:
            continue
        receivers: list[object] = {
            Per.TEAM: list(group.teams),
            Per.PAIR: list(group.pairs),
            Per.STUDENT: list(group.students),
            Per.STATION: ["station"],
            Per.CLASS: [],
        }[line.per]
        times = 0
        while receivers:
            receivers = receivers[line.per_count :]
            times += 1
        rounds.append(times)
    return [1] if line.per is Per.CLASS else rounds


lines = st.builds(
    Material,
    quantity=st.integers(1, 12).map(Decimal),
    item=st.sampled_from(("cup", "magnet")),
    per=st.sampled_from(Per),
    per_count=st.integers(1, 3),
    used_up=st.booleans(),
    spare=st.one_of(st.none(), st.integers(0, 3).map(Decimal)),
)


@settings(max_examples=120, deadline=None)
@given(st.lists(lines, min_size=1, max_size=4), st.integers(1, 60))
def test_against_a_count_by_hand(given_lines: list[Material], size: int) -> None:
    """Reusable things are counted at the busiest round, used-up ones over all rounds, lines about one item added, spare on top."""
    groups = groups_of(size)
    totals = materials(tiny_unit(hands_on={"materials": tuple(given_lines)}), by_groups(groups), None, (), spare_percent=10)
    for item in ("cup", "magnet"):
        for used_up in (False, True):
            own = [line for line in given_lines if line.item == item and line.used_up == used_up]
            found = [total for total in totals if total.item == item and (total.use == "used up") == used_up]
            assert len(found) == bool(own)
            if not own:
                continue
            need, spared = 0, Fraction(0)
            for line in own:
                times = handed_out(line, groups)
                amount = int(line.quantity) * (sum(times) if used_up else max(times))
                need += amount
                if line.spare is not None:
                    need += int(line.spare)
                elif used_up:
                    spared += Fraction(amount, 10)
            assert found[0].need == need + -(-spared.numerator // spared.denominator)
            assert (found[0].unit, found[0].have, found[0].short) == ("each", None, 0)


def one(line: Material, *stock: StockItem, size: int = 36, whole_class: bool = False, room: str = "north prep room") -> MaterialTotal:
    unit = tiny_unit(hands_on={"materials": (line,)})
    headcount = by_size(size, 4)
    return materials(unit, headcount, tiny_room(store=room), stock, spare_percent=10, whole_class=whole_class)[0]


def test_measures_add_up_and_are_said_briefly() -> None:
    """250 mL for each of nine teams, none spare, are 2.25 L (the design's worked value)."""
    line = Material(Decimal(250), "water", Per.TEAM, unit="mL", used_up=True, spare=Decimal(0))
    total = one(line)
    assert (total.need, total.unit) == (Decimal("2.25"), "L")


def test_spare_share_of_measures_is_exact() -> None:
    """Ten percent of 540 mL are 54 mL; counted things round up to a whole one."""
    assert one(Material(Decimal(60), "water", Per.TEAM, unit="mL", used_up=True)).need == Decimal(594)
    assert one(Material(Decimal("2.5"), "salt", Per.TEAM, unit="g", used_up=True)).need == Decimal("24.75")
    assert one(Material(Decimal(1), "balloon", Per.TEAM, used_up=True)).need == 10


def test_kits_of_one_group_or_of_the_class() -> None:
    """A rotating run needs reusable things for one group's teams, a whole-class run for all; used-up things are the same."""
    cylinder = Material(Decimal(1), "graduated cylinder 25 mL", Per.TEAM)
    shared = Material(Decimal(1), "balance 0.1 g", Per.TEAM, per_count=2)
    cup = Material(Decimal(1), "cup", Per.STUDENT, used_up=True, spare=Decimal(0))
    assert [one(line).need for line in (cylinder, shared, cup)] == [3, 2, 36]
    assert [one(line, whole_class=True).need for line in (cylinder, shared, cup)] == [9, 5, 36]


def test_have_and_short() -> None:
    """Only the room's store counts; what the inventory does not know stays unknown; units are compared."""
    line = Material(Decimal(3), "balance 0.1 g", Per.STATION)
    here = StockItem(item="Balance  0.1 g", have=Decimal(2), store="north prep room")
    elsewhere = StockItem(item="balance 0.1 g", have=Decimal(9), store="south prep room")
    anywhere = StockItem(item="balance 0.1 g", have=Decimal(1))
    assert (one(line).have, one(line).short) == (None, 0)
    assert (one(line, here, elsewhere).have, one(line, here, elsewhere).short) == (2, 1)
    assert (one(line, elsewhere).have, one(line, elsewhere).short) == (0, 3)
    assert (one(line, here, anywhere).have, one(line, here, anywhere).short) == (3, 0)
    assert one(line, here, elsewhere, room="").have == 11
    vinegar = Material(Decimal(100), "vinegar", Per.TEAM, unit="mL", used_up=True, spare=Decimal(0))
    assert one(vinegar, StockItem(item="vinegar", have=Decimal("0.5"), unit="L")).short == Decimal(400)
    assert one(vinegar, StockItem(item="vinegar", have=Decimal(3))).have is None


def test_customary_units_are_compared() -> None:
    """Two quarts in the store cover nine half cups: a US quart is four cups (pint's definitions, NIST Handbook 44)."""
    flour = Material(Decimal("0.5"), "flour", Per.TEAM, unit="cup", used_up=True, spare=Decimal(0))
    total = one(flour, StockItem(item="flour", have=Decimal(1), unit="quart"))
    assert (total.need, total.unit, total.have, total.short) == (Decimal("4.5"), "cup", Decimal(4), Decimal("0.5"))


def test_same_item_in_two_units() -> None:
    """Lines about one item in units that compare are added in the first one's unit, others stand apart."""
    unit = tiny_unit(
        hands_on={
            "materials": (
                Material(Decimal(500), "water", Per.STATION, unit="mL", used_up=True, spare=Decimal(0)),
                Material(Decimal(1), "Water", Per.CLASS, unit="L", used_up=True, spare=Decimal(0)),
                Material(Decimal(2), "water", Per.CLASS, used_up=True, spare=Decimal(0)),
            )
        }
    )
    totals = materials(unit, by_size(36, 4), None, (), spare_percent=10)
    assert [(t.item, t.need, t.unit) for t in totals[:-1]] == [("water", Decimal("2.5"), "L"), ("water", Decimal(2), "each")]


@pytest.mark.parametrize(
    ("size", "work_in", "whole_class", "need"),
    [(36, "", False, 6), (31, "", False, 5), (31, "pairs", True, 15), (36, "alone", False, 12), (36, "team", False, 3), (1, "", False, 1)],
)
def test_devices(size: int, work_in: str, whole_class: bool, need: int) -> None:
    """Devices are the pairs online at once, a leftover joining a pair: floor(n/2) of the largest group, six for 36."""
    unit = tiny_unit(online={"work_in": work_in})
    total = materials(unit, by_size(size, 4), tiny_room(devices=4), (), spare_percent=10, whole_class=whole_class)[-1]
    assert (total.item, total.need, total.have, total.short) == (DEVICE, need, 4, max(0, need - 4))


def test_packs() -> None:
    """What is bought rounds up to whole packs."""
    assert in_packs(Decimal(10), Decimal(4)) == 12
    assert in_packs(Decimal(8), Decimal(4)) == 8
    assert in_packs(Decimal("0.3"), Decimal("0.25")) == Decimal("0.50")
    assert in_packs(Decimal(7), None) == 7
