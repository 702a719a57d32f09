"""Which stock serves whom, and how much is missing where stores share some of it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, time
from decimal import Decimal
from fractions import Fraction
from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from tests.support.department import tiny_room, tiny_school
from trivet.model.school import StockItem
from trivet.planning.materials import Tally
from trivet.planning.stores.pools import Pool, make_pools
from trivet.planning.stores.uses import Use

USE = Use(
    class_id="p1",
    unit="float-or-sink",
    room="r12",
    store="north",
    period="P1",
    date=date(2026, 11, 30),
    start=time(8, 5),
    end=time(8, 57),
    tallies=(Tally("lamp", "", used_up=False, need=Fraction(3)),),
    set_out=(Tally("lamp", "", used_up=False, need=Fraction(3)),),
    devices=5,
)

counts = st.dictionaries(st.sampled_from(("north", "south", "")), st.integers(0, 6).map(Fraction), max_size=3)


@given(counts, counts)
def test_short_is_what_no_dealing_out_can_cover(held: dict[str, Fraction], need: dict[str, Fraction]) -> None:
    """What is missing is the largest that some set of stores asks for beyond all it can reach (Hall 1935; deficiency of Ore 1955)."""
    pool = Pool(
        item="lamp",
        unit="",
        used_up=False,
        place="",
        have=sum(held.values(), start=Fraction(0)),
        own={store: many for store, many in held.items() if store},
    )
    worst = Fraction(0)
    for size in range(len(need) + 1):
        for asking in combinations(need, size):
            reach = held if "" in asking else {store: many for store, many in held.items() if store in (*asking, "")}
            worst = max(worst, sum((need[each] for each in asking), start=Fraction(0)) - sum(reach.values()) if asking else Fraction(0))
    assert pool.short(need) == worst


def test_what_is_not_known_is_not_short() -> None:
    """Nothing is called short of which nobody says what there is."""
    assert Pool(item="lamp", unit="", used_up=False, place="").short({"north": Fraction(9)}) == 0


def test_each_store_has_its_own_pool() -> None:
    """Two rooms with stores of their own draw on two pools; devices belong to a room."""
    stock = [StockItem(item="Lamp", have=Decimal(4), store="north"), StockItem(item="lamp", have=Decimal(2), store="south")]
    uses = [USE, replace(USE, class_id="p2", room="r14", store="south")]
    pools = make_pools(uses, tiny_school(rooms=[tiny_room("r12", devices=4), tiny_room("r14", devices=None)], inventory=stock))
    assert [(pool.item, pool.place, pool.have) for pool in pools.by_key.values()] == [
        ("lamp", "north", 4),
        ("lamp", "south", 2),
        ("device", "r12", 4),
        ("device", "r14", None),
    ]


def test_a_line_without_a_store_serves_all() -> None:
    """One line of the inventory that names no store makes one pool for all rooms."""
    stock = [StockItem(item="lamp", have=Decimal(4), store="north"), StockItem(item="lamp", have=Decimal(2))]
    uses = [USE, replace(USE, class_id="p2", store="south")]
    pools = make_pools(uses, tiny_school(inventory=stock))
    assert [(pool.place, pool.have, pool.own) for pool in pools.by_key.values() if not pool.device] == [("", 6, {"north": Fraction(4)})]


def test_units_that_compare_are_one_pool() -> None:
    """Water in mL, in L and in the store in L is one pool in the first unit met; a count of water is another."""
    water = [Tally("water", unit, used_up=True, need=Fraction(2)) for unit in ("mL", "L", "")]
    uses = [replace(USE, tallies=(each,), devices=0) for each in water]
    pools = make_pools(uses, tiny_school(inventory=[StockItem(item="water", have=Decimal(3), unit="L", store="north")]))
    assert [(pool.unit, pool.have) for pool in pools.by_key.values()] == [("mL", 3000), ("", None)]
    assert [share.tally.need for _, share in pools.shares(uses)] == [2, 2000, 2]
