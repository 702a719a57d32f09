"""Which stock serves which classes: one pool for each thing of a store, one for the devices of each room."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from trivet.model.school import Room, School, StockItem
from trivet.planning.materials import DEVICE, Tally, item_key
from trivet.planning.measures import factor
from trivet.planning.stores.uses import Use

NOTHING = Fraction(0)
Kind = tuple[str, bool, str]
"""An item's key, whether it is used up, and the unit in which it is added up ("" = counted)."""
Key = tuple[str, bool, str, str]
"""A kind and the place whose stock serves it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pool:
    """What a set of classes shares of one item.

    `place` is the store's name, or the room's for devices; "" where the item is not tied to one store, so that all share it.
    `have` is in `unit`, None where the inventory does not know the item; `own` is the part of it that only the rooms of one store
    reach, by store.
    """

    item: str
    unit: str
    used_up: bool
    place: str
    device: bool = False
    have: Fraction | None = None
    own: Mapping[str, Fraction] = field(default_factory=dict)
    stock: tuple[StockItem, ...] = ()

    @property
    def key(self) -> Key:
        """What tells it from all other pools of the department."""
        return (DEVICE if self.device else item_key(self.item), self.used_up, DEVICE if self.device else self.unit, self.place)

    def short(self, need: Mapping[str, Fraction]) -> Fraction:
        """Return how much is missing where `need` gives each store's rooms ("" = rooms of no store) what they use at once.

        Hall's condition: the rooms of a store reach its own stock and what has no store; rooms of no store reach everything.
        """
        if self.have is None:
            return NOTHING
        over = sum(need.values(), start=NOTHING) - self.have
        if len(need) == 1 and self.own.keys() <= need.keys():  # one store, and nothing elsewhere: by far the usual case
            return max(NOTHING, over)
        common = self.have - sum(self.own.values(), start=NOTHING)
        beyond = sum((max(NOTHING, many - self.own.get(store, NOTHING)) for store, many in need.items() if store), start=NOTHING)
        return max(NOTHING, over, beyond - common)


@dataclass(frozen=True, slots=True)
class Share:
    """What one meeting takes of a pool, in the pool's unit."""

    use: Use
    tally: Tally


@dataclass(frozen=True, slots=True)
class Pools:
    """The pools of a department by key, in the order in which its classes first need them."""

    by_key: Mapping[Key, Pool]
    units: Mapping[tuple[str, bool], tuple[str, ...]]

    def shares(self, uses: Iterable[Use]) -> Iterator[tuple[Pool, Share]]:
        """Yield what each use takes of which pool. Only items and stores that the department needs may occur."""
        for use in uses:
            for each in use.tallies:
                kind = _kind(each, self.units)
                pool = self.by_key.get((*kind, use.store)) or self.by_key[*kind, ""]
                yield pool, Share(use, each if each.unit == pool.unit else Tally(pool.item, pool.unit, pool.used_up).plus(each) or each)
            if use.devices:
                pool = self.by_key[DEVICE, False, DEVICE, use.room]
                yield pool, Share(use, Tally(DEVICE, "", used_up=False, need=Fraction(use.devices)))

    def by_pool(self, uses: Iterable[Use]) -> dict[Key, list[Share]]:
        """Return the same by the key of the pool."""
        found: defaultdict[Key, list[Share]] = defaultdict(list)
        for pool, share in self.shares(uses):
            found[pool.key].append(share)
        return dict(found)


def make_pools(uses: Sequence[Use], school: School) -> Pools:
    """Return the pools that `uses` draw on. An item that has a line without a store, or goes to a room without one, has one pool."""
    units: dict[tuple[str, bool], tuple[str, ...]] = {}
    names: dict[Kind, str] = {}
    stores: dict[Kind, list[str]] = {}
    for use in uses:
        for each in use.tallies:
            item = (item_key(each.item), each.used_up)
            if all(factor(each.unit, unit) is None for unit in units.get(item, ())):
                units[item] = (*units.get(item, ()), each.unit)
            kind = _kind(each, units)
            names.setdefault(kind, each.item)
            if use.store not in stores.setdefault(kind, []):
                stores[kind].append(use.store)
    storeless = {kind[0] for kind, places in stores.items() if "" in places}
    pools = []
    for kind, places in stores.items():
        lines = [line for line in school.inventory if item_key(line.item) == kind[0] and factor(line.unit, kind[2]) is not None]
        shared = kind[0] in storeless or any(line.store == "" for line in lines)
        pools += [_pool(kind, names[kind], place, lines) for place in ([""] if shared else places)]
    pools += [_devices(school.rooms.get(room), room) for room in dict.fromkeys(use.room for use in uses if use.devices)]
    return Pools({pool.key: pool for pool in pools}, units)


def _kind(tally: Tally, units: Mapping[tuple[str, bool], tuple[str, ...]]) -> Kind:
    key = item_key(tally.item)
    unit = next(unit for unit in units[key, tally.used_up] if factor(tally.unit, unit) is not None)
    return (key, tally.used_up, unit)


def _pool(kind: Kind, name: str, place: str, lines: Sequence[StockItem]) -> Pool:
    _, used_up, unit = kind
    here = tuple(line for line in lines if place in ("", line.store))
    held: defaultdict[str, Fraction] = defaultdict(Fraction)
    for line in here:
        held[line.store] += Fraction(line.have) * (factor(line.unit, unit) or 0)
    own = {store: many for store, many in held.items() if store}
    return Pool(
        item=name,
        unit=unit,
        used_up=used_up,
        place=place,
        have=sum(held.values(), start=NOTHING) if lines else None,
        own=own,
        stock=here,
    )


def _devices(room: Room | None, room_id: str) -> Pool:
    """`place` is the room's id: two rooms may have one name."""
    have = None if room is None or room.devices is None else Fraction(room.devices)
    return Pool(item=DEVICE, unit="", used_up=False, place=room_id, device=True, have=have)
