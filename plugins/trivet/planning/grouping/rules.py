"""The rules between students, made ready for counting and search."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import combinations

from trivet.model.roster import PairRule, RuleKind

Edges = tuple[frozenset[int], ...]


@dataclass(frozen=True, slots=True)
class Tables:
    """Empty places: the size of each team and which station group it belongs to, in the same order."""

    sizes: tuple[int, ...]
    group_of: tuple[int, ...]

    @property
    def group_sizes(self) -> tuple[int, ...]:
        """The size of each station group that has a team."""
        groups = range(max(self.group_of, default=-1) + 1)
        return tuple(sum(size for size, g in zip(self.sizes, self.group_of, strict=True) if g == group) for group in groups)


def tables_of(shape: Iterable[Iterable[int]]) -> Tables:
    """Return the places of station groups given as lists of team sizes."""
    places = [(size, group) for group, sizes in enumerate(shape) for size in sizes]
    return Tables(tuple(size for size, _ in places), tuple(group for _, group in places))


@dataclass(frozen=True, slots=True)
class Ties:
    """Rules as blocks and bundles.

    A block is a set of seats that must share a team; only seats that a rule names stand in one. A bundle is a set of blocks
    that must share a station group. `apart_team` and `apart_group` say which blocks, and which bundles, must be apart; one that
    must be apart from itself stands in `torn`.
    """

    blocks: tuple[tuple[int, ...], ...]
    bundle_of: tuple[int, ...]
    bundles: tuple[tuple[int, ...], ...]
    apart_team: Edges
    apart_group: Edges
    torn: bool

    def weight(self, bundle: int) -> int:
        """How many students a bundle holds."""
        return sum(len(self.blocks[block]) for block in self.bundles[bundle])


def joined(things: Iterable[int], twos: Iterable[tuple[int, int]]) -> list[tuple[int, ...]]:
    """Return the sets into which `twos` join the things, each ascending, in order of their lowest (union and find)."""
    parent = {thing: thing for thing in sorted(things)}

    def top(thing: int) -> int:
        while parent[thing] != thing:
            parent[thing] = thing = parent[parent[thing]]
        return thing

    for one, other in twos:
        low, high = sorted((top(one), top(other)))
        parent[high] = low
    sets: dict[int, list[int]] = {}
    for thing in parent:
        sets.setdefault(top(thing), []).append(thing)
    return [tuple(members) for members in sets.values()]


def ties_of(rules: Sequence[PairRule]) -> Ties:
    """Return the rules as blocks and bundles."""
    twos = {kind: [(rule.low, rule.high) for rule in rules if rule.kind.asks is kind] for kind in RuleKind}
    seats = {seat for rule in rules for seat in (rule.low, rule.high)}
    blocks = joined(seats, twos[RuleKind.SAME_TEAM])
    block_of = {seat: place for place, block in enumerate(blocks) for seat in block}
    bundles = joined(range(len(blocks)), [(block_of[a], block_of[b]) for a, b in twos[RuleKind.SAME_GROUP]])
    bundle_of = {block: place for place, bundle in enumerate(bundles) for block in bundle}
    apart_team, torn_team = _edges(len(blocks), [(block_of[a], block_of[b]) for a, b in twos[RuleKind.NOT_ONE_TEAM]])
    group_twos = [(bundle_of[block_of[a]], bundle_of[block_of[b]]) for a, b in twos[RuleKind.NOT_ONE_GROUP]]
    apart_group, torn_group = _edges(len(bundles), group_twos)
    return Ties(
        blocks=tuple(blocks),
        bundle_of=tuple(bundle_of[block] for block in range(len(blocks))),
        bundles=tuple(bundles),
        apart_team=apart_team,
        apart_group=apart_group,
        torn=torn_team or torn_group,
    )


def _edges(count: int, twos: Iterable[tuple[int, int]]) -> tuple[Edges, bool]:
    sets: list[set[int]] = [set() for _ in range(count)]
    torn = False
    for one, other in twos:
        torn = torn or one == other
        sets[one].add(other)
        sets[other].add(one)
    return tuple(frozenset(each) for each in sets), torn


def can_never_hold(ties: Ties, tables: Tables) -> bool:
    """Say whether counting alone shows that the rules can't all hold. True is a proof; False says nothing.

    Too many for a team or a group, more blocks of some size than there is room for, or more students who must all be apart than
    there are teams or groups (pigeonhole).
    """
    groups = [size for size in tables.group_sizes if size]
    weights = [ties.weight(bundle) for bundle in range(len(ties.bundles))]
    if ties.torn or max((len(block) for block in ties.blocks), default=0) > max(tables.sizes, default=0):
        return True
    if max(weights, default=0) > max(groups, default=0):
        return True
    if too_many([len(block) for block in ties.blocks], tables.sizes) or too_many(weights, groups):
        return True
    if largest_clique(ties.apart_group) > len(groups):
        return True
    return largest_clique(_apart_in_team(ties)) > len(tables.sizes)


def too_many(weights: Sequence[int], rooms: Sequence[int]) -> bool:
    """Say whether, for some least weight, there are more things that heavy than the rooms can hold."""
    return any(
        sum(weight >= least for weight in weights) > sum(room // least for room in rooms) for least in sorted({w for w in weights if w > 0})
    )


def _apart_in_team(ties: Ties) -> Edges:
    """Return which blocks may not share a team, for either reason."""
    sets = [set(each) for each in ties.apart_team]
    for bundle, others in enumerate(ties.apart_group):
        for other in others:
            for block in ties.bundles[bundle]:
                sets[block].update(ties.bundles[other])
    return tuple(frozenset(each) for each in sets)


def largest_clique(edges: Edges, nodes: int = 2_000) -> int:
    """Return the size of the largest set of things that are all joined; a lower bound once `nodes` steps are spent.

    Bron and Kerbosch 1973 with a bound by the number of candidates; a class has at most a few dozen things.
    """
    best = 0
    left = nodes

    def grow(size: int, candidates: list[int]) -> None:
        nonlocal best, left
        best = max(best, size)
        left -= 1
        for place, thing in enumerate(candidates):
            if size + len(candidates) - place <= best or left <= 0:
                return
            grow(size + 1, [other for other in candidates[place + 1 :] if other in edges[thing]])

    grow(0, sorted((t for t in range(len(edges))), key=lambda t: (-len(edges[t]), t)))
    return best


def broken(rules: Iterable[PairRule], team_of: dict[int, int], group_of: dict[int, int]) -> list[PairRule]:
    """Return the rules that an arrangement (team and group by seat) does not keep."""
    bad = []
    for rule in rules:
        one_team = team_of[rule.low] == team_of[rule.high]
        one_group = group_of[rule.low] == group_of[rule.high]
        kept = {
            RuleKind.NOT_ONE_TEAM: not one_team,
            RuleKind.SAME_TEAM: one_team,
            RuleKind.NOT_ONE_GROUP: not one_group,
            RuleKind.SAME_GROUP: one_group,
        }[rule.kind.asks]
        if not kept:
            bad.append(rule)
    return bad


def rules_among(seats: Sequence[int], rules: Iterable[PairRule]) -> tuple[PairRule, ...]:
    """Return the rules both of whose seats are in class, in order and once each."""
    here = set(seats)
    return tuple(sorted({rule for rule in rules if rule.low in here and rule.high in here}))


def all_twos(seats: Sequence[int]) -> list[tuple[int, int]]:
    """Return every two seats, the lower first."""
    return list(combinations(sorted(seats), 2))
