"""What one run needs of each item: at once where it is reusable, in all where it is used up, with spare, against the store."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from functools import cache

from trivet.model.plan import MaterialTotal
from trivet.model.school import Room, StockItem
from trivet.model.station import Material, Per
from trivet.model.unit import Unit
from trivet.planning.headcount import GroupCount, Headcount
from trivet.planning.measures import as_decimal, briefly, factor

DEVICE = "device"
"""The item under which the devices of the online station are counted."""


@dataclass(frozen=True, slots=True)
class Tally:
    """What is needed of one item, without its spare: `shared` is the part that the default spare share is taken of."""

    item: str
    unit: str
    used_up: bool
    need: Fraction = Fraction(0)
    shared: Fraction = Fraction(0)
    spare: Fraction = Fraction(0)

    def plus(self, other: Tally) -> Tally | None:
        """Return the sum in this tally's unit, None where the two are not about the same item in units that compare."""
        if self.used_up != other.used_up or not same_item(self.item, other.item):
            return None
        many = factor(other.unit, self.unit)
        if many is None:
            return None
        return replace(
            self, need=self.need + other.need * many, shared=self.shared + other.shared * many, spare=self.spare + other.spare * many
        )

    def with_spare(self, spare_percent: int) -> Fraction:
        """Return the need with its spare, which is rounded up to a whole thing where things are counted."""
        if not self.spare and not self.shared:
            return self.need
        spare = self.spare + self.shared * spare_percent / 100
        return self.need + (spare if self.unit else Fraction(-(-spare.numerator // spare.denominator)))


def at_station(headcount: Headcount, *, whole_class: bool) -> tuple[GroupCount, ...]:
    """Return who is at a station in each round it is used: one group after the other, or everyone at once."""
    groups = [group for group in headcount.groups.values() if group.students]
    if not whole_class:
        return tuple(groups)
    return (GroupCount(headcount.students, headcount.teams, sum(group.pairs for group in groups)),)


def amount(line: Material, rounds: Sequence[GroupCount]) -> Fraction:
    """Return what one line needs over the rounds of its station, without spare: the peak where reusable, the sum where used up."""
    if line.per is Per.CLASS:
        return Fraction(line.quantity)
    counts = [-(-_counted(line.per, group) // line.per_count) for group in rounds]
    return Fraction(line.quantity) * (sum(counts) if line.used_up else max(counts, default=0))


def working_together(work_in: str, group: GroupCount) -> int:
    """Return how many pairs, teams or single students a group makes where it is said how they work; pairs where it is not."""
    match work_in:
        case "alone":
            return group.students
        case "team":
            return group.teams
        case _:
            return group.pairs


def devices(unit: Unit, rounds: Sequence[GroupCount]) -> int:
    """Return how many devices are in use at once at the online station: one a pair, unless students work alone or as a team."""
    return max((working_together(unit.online.work_in, group) for group in rounds), default=0)


def materials(
    unit: Unit,
    headcount: Headcount,
    room: Room | None,
    inventory: Sequence[StockItem],
    *,
    spare_percent: int,
    whole_class: bool = False,
) -> tuple[MaterialTotal, ...]:
    """Return the totals of one run, in the author's order, then the devices.

    Spare: what the line says, else `spare_percent` of what is used up, rounded up to a whole thing where things are counted.
    `have` is what the room's store holds, in the unit of the need.
    """
    rounds = at_station(headcount, whole_class=whole_class)
    lines = unit.hands_on.materials
    tallies = add_up(tally(line, amount(line, rounds)) for line in lines)
    totals = [_total(each, room, inventory, spare_percent) for each in tallies]
    need = Decimal(devices(unit, rounds))
    have = None if room is None or room.devices is None else Decimal(room.devices)
    short = Decimal(0) if have is None else max(Decimal(0), need - have)
    return (*totals, MaterialTotal(item=DEVICE, need=need, unit="each", use="reusable", have=have, short=short))


def tally(line: Material, need: Fraction, *, spare: bool = True) -> Tally:
    """Return one line with what it needs; its own spare counts once, so leave it out of later days."""
    own = Fraction(line.spare) if line.spare is not None and spare else Fraction(0)
    shared = need if line.used_up and line.spare is None else Fraction(0)
    return Tally(line.item, line.unit, line.used_up, need, shared, own)


def add_up(tallies: Iterable[Tally]) -> list[Tally]:
    """Add up what is about the same item, in the order and the unit of the first."""
    sums: list[Tally] = []
    for each in tallies:
        for place, so_far in enumerate(sums):
            both = so_far.plus(each)
            if both is not None:
                sums[place] = both
                break
        else:
            sums.append(each)
    return sums


def same_item(one: str, other: str) -> bool:
    """Whether two names mean one item: capitals and spaces don't count."""
    return item_key(one) == item_key(other)


def stock_of(item: str, room: Room | None, inventory: Sequence[StockItem]) -> tuple[StockItem, ...]:
    """Return the lines of the inventory about an item that the room can use: those of its store, and those without one."""
    key = item_key(item)
    known = (line for line in inventory if item_key(line.item) == key)
    return tuple(line for line in known if room is None or not room.store or line.store in ("", room.store))


@cache  # every line of the inventory is compared with every item of every unit, and both repeat the same few names
def item_key(item: str) -> str:
    """Return what two names of one item have in common."""
    return " ".join(item.casefold().split())


def _counted(per: Per, group: GroupCount) -> int:
    match per:
        case Per.TEAM:
            return group.teams
        case Per.PAIR:
            return group.pairs
        case Per.STUDENT:
            return group.students
        case Per.STATION | Per.CLASS:
            return 1


def _total(item: Tally, room: Room | None, inventory: Sequence[StockItem], spare_percent: int) -> MaterialTotal:
    have = _have(item, room, inventory)
    need, unit = briefly(item.with_spare(spare_percent), item.unit)
    in_unit = Fraction(1) if have is None else factor(item.unit, unit)
    stock = None if have is None or in_unit is None else have * in_unit
    return MaterialTotal(
        item=item.item,
        need=as_decimal(need),
        unit=unit or "each",
        use="used up" if item.used_up else "reusable",
        have=None if stock is None else as_decimal(stock, up=False),
        short=Decimal(0) if stock is None else as_decimal(max(Fraction(0), need - stock)),
    )


def _have(item: Tally, room: Room | None, inventory: Sequence[StockItem]) -> Fraction | None:
    """What the room's store holds, in the item's unit; None where the inventory does not know the item in such a unit."""
    key = item_key(item.item)
    known = [line for line in inventory if item_key(line.item) == key]
    factors = [factor(line.unit, item.unit) for line in known]
    if all(many is None for many in factors):
        return None
    here = stock_of(item.item, room, inventory)
    return sum(
        (Fraction(line.have) * many for line, many in zip(known, factors, strict=True) if many is not None and line in here),
        start=Fraction(0),
    )
