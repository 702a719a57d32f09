"""A proved minimum of repeats for one unit, that anyone can check again in one scan.

For any integers Y, one a student, every way to part the class into k_s teams of each size s costs at least

    (Σ Y + Σ_s k_s · min over |S| = s of (SCALE · w(S) - Σ of Y over S)) / SCALE,    w(S) = earlier meetings within S,

since each student sits in exactly one team (Lagrangian bound of set partitioning; Geoffrion 1974, Fisher 1981, from memory).
Valid for every Y, so nothing that finds Y needs to be trusted. At best it reaches the linear bound of set partitioning.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from trivet.planning.grouping.cheap_teams import Allowed, Costs, Found, Team, cheap_teams
from trivet.planning.grouping.ledger import Two

SCALE = 1000
"""Y are thousandths of a repeat."""

SCANS = 200
"""Scans of all teams at most for each width; most units are settled in 20 to 80."""

WIDTHS = (400, 1000)
"""How far above the cheapest a team may lie, in thousandths, to count among those that pull at Y; the wide one is slow and sure."""

NARROWEST = 20
LEAST_REACH = 100
SHORTER = 7
KEPT = 7
"""Tenths of the step's reach, and of the last direction, that are kept; tried on fifty histories of 12 to 36 students."""

WITHOUT_PROGRESS = 8
"""After so many scans without progress steps grow shorter, and the search goes on from the best Y."""

POOL = 600
LARGEST = 5
"""Teams of six and more are too many to scan."""


@dataclass(frozen=True, slots=True)
class Bound:
    """`repeats`: no arrangement has fewer. `weights`: the integers Y by place in the list of seats, () where 0 needs no proof."""

    repeats: int
    weights: tuple[int, ...] = ()


def met_matrix(seats: Sequence[int], met: Mapping[Two, int]) -> list[list[int]]:
    """Return the earlier meetings by place, in units of SCALE."""
    place = {seat: index for index, seat in enumerate(seats)}
    matrix = [[0] * len(seats) for _ in seats]
    for (low, high), times in met.items():
        if low in place and high in place:
            matrix[place[low]][place[high]] = matrix[place[high]][place[low]] = SCALE * times
    return matrix


def prove(matrix: Costs, sizes: Sequence[int], found: int, allowed: Allowed | None = None) -> Bound:
    """Return the best lower bound that the scans reach, at most `found`, the repeats of an arrangement in hand.

    `matrix` are the costs of two students in one team in thousandths, `sizes` those of all teams; `allowed` narrows the teams, for a
    minimum under levels and rules.
    """
    climb = Climb(matrix, sizes, found, allowed)
    for width in WIDTHS:
        climb.up(width)
    return climb.bound


class Climb:
    """The best Y so far, and steps to better ones."""

    def __init__(self, matrix: Costs, sizes: Sequence[int], found: int, allowed: Allowed | None = None) -> None:
        """Begin with nothing proved; `found` repeats are enough."""
        self.matrix, self.teams, self.found, self.allowed = matrix, Counter(sizes), found, allowed
        self.goal = SCALE * (found - 1) + 1
        self.best = 0
        self.best_weights = [0] * len(matrix)
        self.known: dict[int, dict[Team, int]] = {size: {} for size in self.teams}

    @property
    def bound(self) -> Bound:
        """What is proved."""
        return Bound(-(-self.best // SCALE), tuple(self.best_weights)) if self.best else Bound(0)

    def up(self, near: int) -> None:
        """Climb for up to SCANS scans by subgradient steps in whole numbers, unless the goal is reached: a student in too many of the
        teams within `near` of the cheapest is worth less, one in none is worth more."""
        if self.found == 0 or self.best >= self.goal or max(self.teams, default=0) > LARGEST:
            return
        weights = [SCALE * self.found // len(self.matrix)] * len(self.matrix)
        slope = [0] * len(self.matrix)
        reach, waited = SCALE * self.found, 0
        for _ in range(SCANS):
            value, cover = self.scan(weights, near)
            waited += 1
            if value > self.best:
                self.best, self.best_weights, waited = value, weights, 0
            if self.best >= self.goal:
                return
            if waited >= WITHOUT_PROGRESS:
                near, reach, waited = max(NARROWEST, near * 3 // 4), max(LEAST_REACH, reach * SHORTER // 10), 0
                weights = self.best_weights if self.best else weights
            pull = [1 - times for times in cover]
            length = sum(one * one for one in pull)
            if not length:
                near = max(NARROWEST, near // 2)
                continue
            # Part of the last direction is kept, so that the path does not zigzag.
            slope = [one + other * KEPT // 10 for one, other in zip(pull, slope, strict=True)]
            target = min(SCALE * self.found, self.best + reach)
            step = max(1, (target - value) // length)
            weights = [weight + step * one for weight, one in zip(weights, slope, strict=True)]

    def scan(self, weights: Sequence[int], near: int) -> tuple[int, list[int]]:
        """Return the value of the bound for `weights`, and how often each student stands in the cheap teams chosen."""
        value = sum(weights)
        cover = [0] * len(self.matrix)
        for size in sorted(self.teams):
            pool = self.known[size]
            guess = min((cost - sum(weights[i] for i in team) for team, cost in pool.items()), default=0)
            found = cheap_teams(self.matrix, weights, size, near, guess=guess, allowed=self.allowed)
            if not found:
                return 0, cover
            value += self.teams[size] * found[0][0]
            pool.update((team, reduced + sum(weights[i] for i in team)) for reduced, team in found[:POOL])
            for team in list(pool)[: max(0, len(pool) - 2 * POOL)]:
                del pool[team]
            _cover(found, self.teams[size], cover)
        return value, cover


def _cover(found: Found, count: int, cover: list[int]) -> None:
    """Choose `count` of the cheap teams, each time the one that overlaps least with those chosen, so that the pull is spread."""
    overlaps = [sum(cover[i] for i in team) for _, team in found]
    teams_of: list[list[int]] = [[] for _ in cover]
    for place, (_, team) in enumerate(found):
        for i in team:
            teams_of[i].append(place)
    for _ in range(count):
        for i in found[overlaps.index(min(overlaps))][1]:  # the first of equals: found are the least first
            cover[i] += 1
            for place in teams_of[i]:
                overlaps[place] += 1
