"""Keep a year of published groups from telling levels.

Where every team must span the levels, students of one level meet less often, so whoever never met would probably be of one level.
Among seatings of equal cost this pass takes one in which students of one level meet as often as others do.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from trivet.planning.grouping.board import Board, one_level
from trivet.planning.grouping.dice import Dice
from trivet.planning.grouping.exchange import State
from trivet.planning.grouping.ledger import Two
from trivet.planning.grouping.search import Seating

EXCHANGES = 60
REST = 5
"""Exchanges for which a student who has moved stays."""

AHEAD = 13
"""In tenths of the fair share: later units leave less freedom, so earlier ones run ahead (tried on simulated classes)."""


def evened(
    costs: Board, seating: Seating, seats: Sequence[int], levels: Mapping[int, int], *, met: Mapping[Two, int], dice: Dice
) -> Seating:
    """Return a seating of the same cost in which about as many teammates are of one level as in a draw that knows no levels.

    `met` are the earlier meetings, which count towards the share. Students without a level are left out of the count.
    """
    kin = _kin(seats, levels)
    state = _Evening(State(costs, list(seating.team)), kin)
    share = _share(seats, kin, met, len(state.mates()))
    best = (abs(state.together - share), tuple(state.state.team))
    for step in range(EXCHANGES):
        if best[0] == 0 or not state.improve(share, seating.cost, step, dice):
            break
        best = min(best, (abs(state.together - share), tuple(state.state.team)), key=lambda each: each[0])
    return Seating(seating.cost, best[1])


def _kin(seats: Sequence[int], levels: Mapping[int, int]) -> list[list[int]]:
    """Return who is within half a level of whom."""
    unit = one_level(levels)
    return [[int(a != b and a in levels and b in levels and 2 * abs(levels[a] - levels[b]) < unit) for b in seats] for a in seats]


def _share(seats: Sequence[int], kin: list[list[int]], met: Mapping[Two, int], today: int) -> int:
    """Return how many of today's teammates should be of one level, so that over the year these meet as often as any other two."""
    place = {seat: index for index, seat in enumerate(seats)}
    before = [(place[low], place[high]) for (low, high), times in sorted(met.items()) if times and low in place and high in place]
    pairs = len(seats) * (len(seats) - 1) // 2
    kin_pairs = sum(map(sum, kin)) // 2
    return AHEAD * kin_pairs * (len(before) + today) // (10 * max(1, pairs)) - sum(kin[one][other] for one, other in before)


@dataclass
class _Evening:
    state: State
    kin: list[list[int]]

    def __post_init__(self) -> None:
        self.beside = [[sum(row[o] for o in members) for members in self.state.members] for row in self.kin]
        self.together = sum(self.kin[one][other] for one, other in self.mates())
        self.rests = [0] * len(self.kin)

    def mates(self) -> list[tuple[int, int]]:
        """Return today's teammates."""
        return [two for members in self.state.members for two in combinations(members, 2)]

    def improve(self, share: int, cost: int, step: int, dice: Dice) -> bool:
        """Make the exchange that brings the count nearest to the share without costing anything; False where there is none."""
        team, beside, kin = self.state.team, self.beside, self.kin
        movers = [s for s in range(len(team)) if self.state.single[s] and self.rests[s] <= step]
        ranked = []
        for place, (one, other) in enumerate(dice.shuffled(list(combinations(movers, 2)))):
            a, b = team[one], team[other]
            if a != b:
                gain = beside[one][b] + beside[other][a] - beside[one][a] - beside[other][b] - 2 * kin[one][other]
                ranked.append((abs(self.together + gain - share), place, one, other, gain))
        for _, _, one, other, gain in sorted(ranked):
            if self.state.cost + self.state.change((one,), (other,)) <= cost:
                self._make(one, other, gain)
                self.rests[one] = self.rests[other] = step + REST
                return True
        return False

    def _make(self, one: int, other: int, gain: int) -> None:
        a, b = self.state.team[one], self.state.team[other]
        self.state.make(((one,), (other,)), 0)
        self.together += gain
        for row, near in zip(self.beside, self.kin, strict=True):
            row[a] += near[other] - near[one]
            row[b] += near[one] - near[other]
