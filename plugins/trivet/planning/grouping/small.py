"""The small draw: the part of the rules that a phone follows too, for a pasted list. No proof, no skeleton, no private file.

`DEVELOPERS.md` ("The small draw") writes it down step by step; `tests/shared/draws.json` holds what must come out, to the letter,
here and in any other language. Whole numbers only; the seed's product is taken modulo 2**32, all others stay below 2**53.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from trivet.planning.grouping.ledger import Ledger, Two, meetings
from trivet.planning.grouping.letters import Partition, in_seat_order, lettered
from trivet.planning.grouping.pairs import cheapest_pairs, pair_cost
from trivet.planning.grouping.roles import Card, deal
from trivet.planning.grouping.rules import joined
from trivet.planning.team_sizes import LETTERS, class_shape

STARTS, STEPS, REST = 4, 60, 7
"""Starts; exchanges from each; steps for which a student who was exchanged may not be exchanged again."""

BROKEN, LEVEL = 10**9, 10**4
"""What a broken rule costs, and a hundredth of a level outside the tolerance (or a point outside the cut); a repeat costs 1."""

TOLERANCE = 25
"""Hundredths of a level."""

PAIRS_EXACT = 14
"""Up to so many students in a station group the cheapest partners are found; in a larger one neighbors in order of seats are partners."""

WORD = 0xFFFFFFFF


class Dice32:
    """Marsaglia's xorshift with shifts 13, 17, 5 on 32 bits (Marsaglia 2003), seeded by FNV-1a over the UTF-8 bytes of a text."""

    def __init__(self, seed: str) -> None:
        """Hash the text (Fowler, Noll, Vo: offset 2166136261, prime 16777619); a state of 0 becomes 1."""
        state = 2166136261
        for byte in seed.encode():
            state = ((state ^ byte) * 16777619) & WORD
        self.state = state or 1

    def below(self, limit: int) -> int:
        """Return the next state modulo `limit`."""
        state = self.state
        state ^= (state << 13) & WORD
        state ^= state >> 17
        state ^= (state << 5) & WORD
        self.state = state
        return state % limit

    def shuffled(self, things: Sequence[int]) -> list[int]:
        """Return the things in a drawn order: from the last to the second, each changes places with one of those up to itself."""
        order = list(things)
        for last in range(len(order) - 1, 0, -1):
            other = self.below(last + 1)
            order[last], order[other] = order[other], order[last]
        return order


@dataclass(frozen=True, slots=True, kw_only=True)
class SmallRequest:
    """One draw. `seats` ascend; `how` is mixed, leveled or usual; `levels` and `tables` by seat; `apart` and `together` the two rules."""

    seats: tuple[int, ...]
    seed: str
    how: str = "mixed"
    team_size: int = 4
    levels: Mapping[int, int] = field(default_factory=dict, repr=False)
    tables: Mapping[int, str] = field(default_factory=dict, repr=False)
    apart: tuple[Two, ...] = ()
    together: tuple[Two, ...] = ()
    ledger: Ledger = field(default_factory=Ledger)


@dataclass(frozen=True, slots=True)
class SmallGroup:
    """One station group: team code to cards by seat, and partners."""

    teams: Mapping[str, Mapping[int, Card]]
    pairs: tuple[tuple[int, ...], ...]


@dataclass(frozen=True, slots=True)
class SmallDraw:
    """What comes out: groups by letter, repeats, and the rules that do not hold (in order, the lower seat first)."""

    groups: Mapping[str, SmallGroup]
    repeats: int
    broken: tuple[Two, ...]


def small_draw(request: SmallRequest) -> SmallDraw:
    """Return the groups of a small draw; the same everywhere for the same request."""
    parts = in_seat_order(_dealt_tables(request) if request.how == "usual" else _searched(request))
    apart = frozenset(request.apart)
    groups = {}
    for letter, teams in lettered(parts).items():
        seats = sorted(seat for team in teams.values() for seat in team)
        price = pair_cost(tuple(teams.values()), request.ledger, apart)
        pairs = cheapest_pairs(seats, price) if len(seats) <= PAIRS_EXACT else _neighbors(seats)
        groups[letter] = SmallGroup({code: deal(team, request.ledger.duties) for code, team in teams.items()}, pairs)
    return SmallDraw(groups, _repeats(parts, request.ledger), _broken(parts, request))


def _neighbors(seats: Sequence[int]) -> tuple[tuple[int, ...], ...]:
    """Return partners in order of seats, the last three together where odd."""
    even = len(seats) - 3 if len(seats) % 2 else len(seats)
    pairs = [tuple(seats[at : at + 2]) for at in range(0, even, 2)]
    return (*pairs, tuple(seats[even:])) if len(seats) % 2 else tuple(pairs)


def _repeats(parts: Partition, ledger: Ledger) -> int:
    return sum(ledger.teams.get(two, 0) for group in parts for two in meetings(group))


def _broken(parts: Partition, request: SmallRequest) -> tuple[Two, ...]:
    mates = {two for group in parts for two in meetings(group)}
    return tuple(sorted([*(two for two in request.apart if two in mates), *(two for two in request.together if two not in mates)]))


def _dealt_tables(request: SmallRequest) -> list[list[list[int]]]:
    """Return the tables as teams; each, the largest first, goes to the station group with the fewest students, then teams."""
    tables: dict[str, list[int]] = {}
    for seat in request.seats:
        if request.tables.get(seat):
            tables.setdefault(request.tables[seat], []).append(seat)
    teams = list(tables.values())
    for seat in request.seats:
        if not request.tables.get(seat):
            # Someone without a table joins the smallest one, or starts one where there is none.
            target = min(teams, key=lambda team: (len(team), min(team)), default=None)
            if target is None:
                teams.append([seat])
            else:
                target.append(seat)
    groups: list[list[list[int]]] = [[] for _ in LETTERS]
    for team in sorted(map(sorted, teams), key=lambda team: (-len(team), team)):
        min(groups, key=lambda group: (sum(map(len, group)), len(group))).append(team)
    return groups


def _searched(request: SmallRequest) -> list[list[list[int]]]:
    """Return the best of a few searches; among equals the one found first."""
    table = _Table(request)
    dice = Dice32(request.seed)
    best: tuple[int, list[list[int]]] | None = None
    for _ in range(STARTS):
        found = table.search(table.start(dice))
        if best is None or found[0] < best[0]:
            best = found
        if best[0] == 0:
            break
    teams = best[1] if best is not None else []
    return [[team for team, group in zip(teams, table.group_of, strict=True) if group == each] for each in range(len(LETTERS))]


class _Table:
    """Sizes, costs and the search."""

    def __init__(self, request: SmallRequest) -> None:
        shape = class_shape(len(request.seats), request.team_size)
        self.request = request
        self.sizes = [size for sizes in shape for size in sizes]
        self.group_of = [group for group, sizes in enumerate(shape) for _ in sizes]
        here = set(request.seats)
        together = [two for two in request.together if here.issuperset(two)]
        self.blocks = [block for block in joined(request.seats, together) if len(block) > 1]
        self.bound = {seat for block in self.blocks for seat in block}
        self.free = [seat for seat in request.seats if seat not in self.bound]
        self.near = {two: times for two, times in request.ledger.teams.items() if times and here.issuperset(two)}
        for two in request.apart:
            self.near[two] = self.near.get(two, 0) + BROKEN
        self.levels = {seat: request.levels[seat] for seat in request.seats if seat in request.levels}
        self.unit = 1 if max(self.levels.values(), default=0) <= 4 else 25
        self.known, self.sum = len(self.levels), sum(self.levels.values())
        self.cuts = list(self._cuts([sum(sizes) for sizes in shape])) if request.how == "leveled" and self.levels else []

    def _cuts(self, sizes: Sequence[int]) -> Iterator[tuple[int, int]]:
        """Yield the lowest and highest level of each station group: the ordered levels, cut at the sizes, the smallest group first."""
        ordered = sorted(self.level(seat) for seat in self.request.seats)
        order = sorted(range(len(sizes)), key=lambda group: (sizes[group], -group))
        first = {group: sum(sizes[other] for other in order[:place]) for place, group in enumerate(order)}
        for group, size in enumerate(sizes):
            part = ordered[first[group] : first[group] + size]
            yield (part[0], part[-1]) if part else (0, 0)

    def level(self, seat: int) -> int:
        """Return a level; who has none counts as the middle one (the upper of two)."""
        return self.levels.get(seat, sorted(self.levels.values())[self.known // 2])

    def start(self, dice: Dice32) -> list[list[int]]:
        """Return drawn teams: blocks first, the largest first, each in the first team with room from a drawn one on; then the others."""
        teams: list[list[int]] = [[] for _ in self.sizes]
        loose = list(self.free)
        for block in sorted(self.blocks, key=lambda block: (-len(block), block)):
            first = dice.below(len(teams))
            order = [(first + step) % len(teams) for step in range(len(teams))]
            target = next((team for team in order if len(teams[team]) + len(block) <= self.sizes[team]), None)
            if target is None:
                loose += block
            else:
                teams[target] += block
        waiting = dice.shuffled(sorted(loose))
        for team, size in zip(teams, self.sizes, strict=True):
            while len(team) < size:
                team.append(waiting.pop())
        return teams

    def cost(self, place: int, team: Sequence[int]) -> int:
        """Return what a team costs at its place: broken rules, then levels, then repeats."""
        total = sum(self.near.get(two, 0) for two in meetings([team]))
        if self.cuts:
            low, high = self.cuts[self.group_of[place]]
            return total + LEVEL * sum(max(0, low - self.level(seat), self.level(seat) - high) for seat in team)
        mine = [self.levels[seat] for seat in team if seat in self.levels]
        if self.request.how == "mixed" and mine:
            gap = abs(self.known * sum(mine) - len(mine) * self.sum)
            total += LEVEL * max(0, -(-100 * gap // (self.unit * self.known * len(mine))) - TOLERANCE)
        return total

    def search(self, teams: list[list[int]]) -> tuple[int, list[list[int]]]:
        """Make the best exchange of two students, again and again, even where it costs; return the cheapest teams met."""
        costs = [self.cost(place, team) for place, team in enumerate(teams)]
        best = (sum(costs), [list(team) for team in teams])
        until = dict.fromkeys(self.request.seats, 0)
        for step in range(1, STEPS + 1):
            if best[0] == 0:
                break
            found = self._best_exchange(teams, costs, until, step, best[0])
            if found is None:
                break
            one, other = found
            a, b = self._where(teams, one), self._where(teams, other)
            teams[a], teams[b] = _swapped(teams[a], one, other), _swapped(teams[b], other, one)
            costs[a], costs[b] = self.cost(a, teams[a]), self.cost(b, teams[b])
            until[one] = until[other] = step + REST
            if sum(costs) < best[0]:
                best = (sum(costs), [list(team) for team in teams])
        return best

    def _best_exchange(self, teams: list[list[int]], costs: list[int], until: Mapping[int, int], step: int, least: int) -> Two | None:
        """Return the cheapest exchange of two free students in different teams; the first in order of seats among equals.

        Where both rest or one does, it must bring the cost below `least`.
        """
        now, where = sum(costs), {seat: place for place, team in enumerate(teams) for seat in team}
        best: tuple[int, Two] | None = None
        for position, one in enumerate(self.free):
            a = where[one]
            for other in self.free[position + 1 :]:
                b = where[other]
                if a == b:
                    continue
                after = now - costs[a] - costs[b]
                after += self.cost(a, _swapped(teams[a], one, other)) + self.cost(b, _swapped(teams[b], other, one))
                resting = until[one] >= step or until[other] >= step
                if (not resting or after < least) and (best is None or after < best[0]):
                    best = (after, (one, other))
        return best[1] if best is not None else None

    @staticmethod
    def _where(teams: Sequence[Sequence[int]], seat: int) -> int:
        return next(place for place, team in enumerate(teams) if seat in team)


def _swapped(team: Sequence[int], out: int, into: int) -> list[int]:
    return [into if seat == out else seat for seat in team]
