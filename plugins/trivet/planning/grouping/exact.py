"""The last step of a search and of a proof: can there be as few repeats as some target? Answered exactly where few teams are cheap.

Any arrangement within the target consists of teams whose reduced costs, added up, fit into what the Lagrangian bound leaves (variable
fixing by reduced costs; Nemhauser and Wolsey 1988, from memory). An exact cover of the class by such teams is sought depth first, the
student with the fewest teams first (Knuth 2000); a set of students found hopeless once is not tried again.
"""

from __future__ import annotations

from bisect import bisect_right
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from trivet.planning.grouping.certificate import SCALE
from trivet.planning.grouping.cheap_teams import Allowed, Costs, Team, cheap_teams

MOST_TEAMS = 6_000
"""More cheap teams than that are not tried."""

NODES = 60_000
"""Sets of students looked at, over all steps; most questions take a few hundred."""


@dataclass(frozen=True, slots=True)
class Better:
    """`teams`: an arrangement with at most the target's repeats; None where there is none (`proved`) or the work ran out."""

    teams: tuple[Team, ...] | None
    proved: bool


def better(costs: Costs, sizes: Sequence[int], weights: Sequence[int], target: int, allowed: Allowed | None = None) -> Better:
    """Look for teams of these `sizes` that cover everyone once with at most `target` repeats, given integers `weights` of a bound."""
    wanted = Counter(sizes)
    value = sum(weights)
    cheapest: dict[int, int] = {}
    for size in sorted(wanted):
        found = cheap_teams(costs, weights, size, 0, allowed=allowed)
        if not found:
            return Better(None, proved=True)
        cheapest[size] = found[0][0]
        value += wanted[size] * found[0][0]
    slack = SCALE * target - value
    if slack < 0:
        return Better(None, proved=True)
    teams: list[tuple[int, Team]] = []
    for size, least in cheapest.items():
        found = cheap_teams(costs, weights, size, slack, guess=least, allowed=allowed, most=MOST_TEAMS)
        if len(found) > MOST_TEAMS:
            return Better(None, proved=False)
        teams += [(reduced - least, team) for reduced, team in found]
    cover = _Cover(sorted(teams), len(weights), wanted)
    chosen = cover.go((1 << len(weights)) - 1, slack, (1 << len(teams)) - 1, tuple(wanted[size] for size in cover.sizes))
    return Better(None if chosen is None else tuple(chosen), proved=chosen is None and cover.nodes < NODES)


class _Cover:
    """The cheap teams as bits of whole numbers: who stands in which, and which leave each other alone."""

    def __init__(self, teams: Sequence[tuple[int, Team]], students: int, wanted: Mapping[int, int]) -> None:
        self.teams = [team for _, team in teams]
        self.extra = [extra for extra, _ in teams]
        self.sizes = sorted(wanted)
        self.members = [sum(1 << student for student in team) for team in self.teams]
        self.of_size = [sum(1 << place for place, team in enumerate(self.teams) if len(team) == size) for size in self.sizes]
        self.having = [0] * students
        for place, team in enumerate(self.teams):
            for student in team:
                self.having[student] |= 1 << place
        self.beside = [~self._any_of(team) for team in self.teams]
        self.hopeless: dict[tuple[int, tuple[int, ...]], int] = {}
        self.nodes = 0

    def _any_of(self, team: Team) -> int:
        met = 0
        for student in team:
            met |= self.having[student]
        return met

    def go(self, free: int, slack: int, usable: int, left: tuple[int, ...]) -> list[Team] | None:
        """Cover the students `free` by `usable` teams within `slack`, `left` of each size; None where none can or work ran out."""
        if not free:
            return []
        self.nodes += 1
        if self.nodes >= NODES or self.hopeless.get((free, left), -1) >= slack:
            return None
        chosen = self._fewest(free, usable)
        while chosen:
            lowest = chosen & -chosen
            chosen ^= lowest
            place = lowest.bit_length() - 1
            size = self.sizes.index(len(self.teams[place]))
            then = tuple(count - (each == size) for each, count in enumerate(left))
            rest = usable & self.beside[place] & (1 << bisect_right(self.extra, slack - self.extra[place])) - 1
            if not then[size]:
                rest &= ~self.of_size[size]
            found = self.go(free & ~self.members[place], slack - self.extra[place], rest, then)
            if found is not None:
                return [self.teams[place], *found]
        if self.nodes < NODES:
            self.hopeless[free, left] = slack
        return None

    def _fewest(self, free: int, usable: int) -> int:
        """Return the usable teams of the free student who has the fewest, the lowest of equals."""
        fewest, chosen = len(self.teams) + 1, 0
        while free:
            lowest = free & -free
            free ^= lowest
            having = usable & self.having[lowest.bit_length() - 1]
            if having.bit_count() < fewest:
                fewest, chosen = having.bit_count(), having
                if fewest <= 1:
                    break
        return chosen
