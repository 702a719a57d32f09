"""What one run needs of each item: at once where it is reusable, in all where it is used up, with spare, against the store."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction

from trivet.model.plan import MaterialTotal
from trivet.model.school import Room, StockItem
from trivet.model.station import Material, Per
from trivet.model.unit import Unit
from trivet.planning.headcount import GroupCount, Headcount
from trivet.planning.measures import as_decimal, briefly, factor

DEVICE = "device"
"""The item under which the devices of the online station are counted."""


@dataclass(slots=True)
class _Item:
    """Lines about one item that can be added up."""

    name: str
    unit: str
    used_up: bool
    need: Fraction = Fraction(0)
    shared: Fraction = Fraction(0)
    """The part of the need that the default spare share is taken of."""
    spare: Fraction = field(default_factory=Fraction)


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


def devices(unit: Unit, headcount: Headcount, *, whole_class: bool) -> int:
    """Return how many devices are in use at once at the online station: one a pair, unless students work alone or as a team."""
    rounds = at_station(headcount, whole_class=whole_class)
    match unit.online.work_in:
        case "alone":
            return max((group.students for group in rounds), default=0)
        case "team":
            return max((group.teams for group in rounds), default=0)
        case _:
            return max((group.pairs for group in rounds), default=0)


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
    totals = [_total(item, room, inventory, spare_percent) for item in _items(unit.hands_on.materials, rounds)]
    need = Decimal(devices(unit, headcount, whole_class=whole_class))
    have = None if room is None or room.devices is None else Decimal(room.devices)
    short = Decimal(0) if have is None else max(Decimal(0), need - have)
    return (*totals, MaterialTotal(item=DEVICE, need=need, unit="each", use="reusable", have=have, short=short))


def same_item(one: str, other: str) -> bool:
    """Whether two names mean one item: capitals and spaces don't count."""
    return _key(one) == _key(other)


def stock_of(item: str, room: Room | None, inventory: Sequence[StockItem]) -> tuple[StockItem, ...]:
    """Return the lines of the inventory about an item that the room can use: those of its store, and those without one."""
    known = (line for line in inventory if _key(line.item) == _key(item))
    return tuple(line for line in known if room is None or not room.store or line.store in ("", room.store))


def _key(item: str) -> str:
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


def _items(lines: Sequence[Material], rounds: Sequence[GroupCount]) -> Iterator[_Item]:
    """Add up the lines about the same item, in the unit of the first."""
    items: list[_Item] = []
    for line in lines:
        found = None
        for item in items:
            if _key(item.name) == _key(line.item) and item.used_up == line.used_up:
                many = factor(line.unit, item.unit)
                if many is not None:
                    found = (item, many)
                    break
        if found is None:
            found = (_Item(line.item, line.unit, line.used_up), Fraction(1))
            items.append(found[0])
        item, many = found
        need = amount(line, rounds) * many
        item.need += need
        if line.spare is not None:
            item.spare += Fraction(line.spare) * many
        elif line.used_up:
            item.shared += need
    yield from items


def _total(item: _Item, room: Room | None, inventory: Sequence[StockItem], spare_percent: int) -> MaterialTotal:
    spare = item.spare + item.shared * spare_percent / 100
    if not item.unit:
        spare = Fraction(-(-spare.numerator // spare.denominator))
    have = _have(item, room, inventory)
    need, unit = briefly(item.need + spare, item.unit)
    in_unit = Fraction(1) if have is None else factor(item.unit, unit)
    stock = None if have is None or in_unit is None else have * in_unit
    return MaterialTotal(
        item=item.name,
        need=as_decimal(need),
        unit=unit or "each",
        use="used up" if item.used_up else "reusable",
        have=None if stock is None else as_decimal(stock, up=False),
        short=Decimal(0) if stock is None else as_decimal(max(Fraction(0), need - stock)),
    )


def _have(item: _Item, room: Room | None, inventory: Sequence[StockItem]) -> Fraction | None:
    """What the room's store holds, in the item's unit; None where the inventory does not know the item in such a unit."""
    known = [line for line in inventory if _key(line.item) == _key(item.name)]
    factors = [factor(line.unit, item.unit) for line in known]
    if all(many is None for many in factors):
        return None
    here = stock_of(item.name, room, inventory)
    return sum(
        (Fraction(line.have) * many for line, many in zip(known, factors, strict=True) if many is not None and line in here),
        start=Fraction(0),
    )
