"""A seating in hand: what each exchange of students between two teams would change, and making one."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import combinations

from trivet.planning.grouping.board import BROKEN_RULE, OUTSIDE_TOLERANCE, Board, cost_of, excesses
from trivet.planning.grouping.dice import Dice

Exchange = tuple[tuple[int, ...], tuple[int, ...]]
"""Students of one team for as many of another."""

NEVER = 10**30
"""Dearer than any exchange."""


@dataclass
class _Choice:
    """The cheapest exchanges seen."""

    least: int = NEVER
    equals: list[Exchange] = field(default_factory=list)

    def offer(self, change: int, here: tuple[int, ...], there: tuple[int, ...]) -> None:
        """Keep an exchange that is as cheap as any so far."""
        if change < self.least:
            self.least, self.equals = change, [(here, there)]
        elif change == self.least:
            self.equals.append((here, there))


@dataclass
class State:
    """A seating with the tables that price an exchange of two students in O(1) and are kept up in O(n).

    `weight[s][t]`: cost of student s beside the members of team t; `group_weight[s][g]` likewise; `until[s][t]`: first step at which
    s may go to t again.
    """

    board: Board
    team: list[int]
    cost: int = field(init=False)
    members: list[list[int]] = field(init=False)
    weight: list[list[int]] = field(init=False)
    group_weight: list[list[int]] = field(init=False)
    sums: list[int] = field(init=False)
    excess: list[int] = field(init=False)
    until: list[list[int]] = field(init=False)
    single: list[bool] = field(init=False)

    def __post_init__(self) -> None:
        """Fill the tables."""
        board, students, teams = self.board, range(self.board.students), range(len(self.board.tables.sizes))
        groups, group_of = range(len(board.tables.group_sizes)), board.tables.group_of
        self.cost = cost_of(board, self.team)
        self.members = [[s for s in students if self.team[s] == t] for t in teams]
        self.weight = [[sum(board.near[s][o] for o in self.members[t]) for t in teams] for s in students]
        in_group = [[o for o in students if group_of[self.team[o]] == g] for g in groups]
        near_group = board.near_group or [[0] * board.students for _ in students]
        lean = board.lean or [[0] * len(groups) for _ in students]
        self.group_weight = [[lean[s][g] + sum(near_group[s][o] for o in in_group[g]) for g in groups] for s in students]
        deviation = board.spread.deviation if board.spread is not None else (0,) * board.students
        self.sums = [sum(deviation[s] for s in self.members[t]) for t in teams]
        self.excess = excesses(board, self.team)
        self.until = [[-1] * len(teams) for _ in students]
        blocked = {s for block in board.blocks for s in block}
        self.single = [s not in blocked for s in students]

    def best_exchange(self, step: int, best_cost: int, dice: Dice, *, wide: bool) -> Exchange | None:
        """Return the cheapest exchange that is allowed now, drawn among equals.

        One that would undo a recent exchange is allowed only where it beats the best so far. `wide` lets students start who have
        nothing to mend.
        """
        choice = _Choice()
        for student in self._starters(wide=wide):
            self._offer_singles(student, choice, step, best_cost)
        for here, there in self._block_exchanges():
            change = self.change(here, there)
            if self.cost + change < best_cost or not self._barred(here, there, step):
                choice.offer(change, here, there)
        return dice.pick(choice.equals) if choice.equals else None

    def _starters(self, *, wide: bool) -> list[int]:
        board, group_of = self.board, self.board.tables.group_of
        students = [s for s in range(board.students) if self.single[s]]
        if wide:
            return students
        chosen = []
        for s in students:
            team = self.team[s]
            own = self.weight[s][team] + board.links[s] * BROKEN_RULE
            if board.near_group is not None:
                own += self.group_weight[s][group_of[team]] + board.group_links[s] * BROKEN_RULE
            if own > 0 or self.excess[team]:
                chosen.append(s)
        return chosen

    def _offer_singles(self, one: int, choice: _Choice, step: int, best_cost: int) -> None:
        """Offer every exchange of `one` for a student of another team. The innermost loop of the search: plain and unrolled."""
        board, weight, until, single, excess = self.board, self.weight, self.until, self.single, self.excess
        near_one, own, until_one = board.near[one], weight[one], until[one]
        grouped, group_of = board.near_group is not None, board.tables.group_of
        deviation = board.spread.deviation if board.spread is not None else None
        a = self.team[one]
        here = (one,)
        for b, others in enumerate(self.members):
            if b == a:
                continue
            base = own[b] - own[a]
            slack = OUTSIDE_TOLERANCE * (excess[a] + excess[b])
            apart = grouped and group_of[a] != group_of[b]
            for other in others:
                row = weight[other]
                change = base + row[a] - row[b] - 2 * near_one[other]
                if apart:
                    change += self._group_change(one, other, group_of[a], group_of[b])
                if change - slack > choice.least or not single[other]:
                    continue
                if deviation is not None and deviation[other] != deviation[one]:
                    change += self._level_change(a, b, deviation[other] - deviation[one])
                    if change > choice.least:
                        continue
                if self.cost + change < best_cost or (until_one[b] <= step and until[other][a] <= step):
                    choice.offer(change, here, (other,))

    def _group_change(self, one: int, other: int, a: int, b: int) -> int:
        near_group = self.board.near_group or []
        mine, yours = self.group_weight[one], self.group_weight[other]
        return mine[b] - mine[a] + yours[a] - yours[b] - 2 * near_group[one][other]

    def _level_change(self, a: int, b: int, moved: int) -> int:
        """Return the change in cost when team a gains `moved` in deviation and team b loses it."""
        spread = self.board.spread
        if spread is None or not moved:
            return 0
        over_a = abs(self.sums[a] + moved) - spread.most[a]
        over_b = abs(self.sums[b] - moved) - spread.most[b]
        new = (over_a * spread.steepness[a] if over_a > 0 else 0) + (over_b * spread.steepness[b] if over_b > 0 else 0)
        return OUTSIDE_TOLERANCE * (new - self.excess[a] - self.excess[b])

    def _block_exchanges(self) -> Iterator[Exchange]:
        """Yield each block with every set of students of another team that may leave it together."""
        whole = {block[0]: block for block in self.board.blocks}
        for block in self.board.blocks:
            for b, others in enumerate(self.members):
                if b == self.team[block[0]]:
                    continue
                units = [whole.get(s, (s,)) for s in others if s in whole or self.single[s]]
                for count in range(1, len(block) + 1):
                    for chosen in combinations(units, count):
                        leaving = tuple(s for unit in chosen for s in unit)
                        if len(leaving) == len(block):
                            yield block, leaving

    def _barred(self, here: Sequence[int], there: Sequence[int], step: int) -> bool:
        a, b = self.team[here[0]], self.team[there[0]]
        return any(self.until[s][b] > step for s in here) or any(self.until[s][a] > step for s in there)

    def change(self, here: Sequence[int], there: Sequence[int]) -> int:
        """Return the change in cost when the students `here` and `there` change places."""
        board, group_of = self.board, self.board.tables.group_of
        a, b = self.team[here[0]], self.team[there[0]]
        change = _moved(board.near, self.weight, (here, a), (there, b))
        if board.near_group is not None and group_of[a] != group_of[b]:
            change += _moved(board.near_group, self.group_weight, (here, group_of[a]), (there, group_of[b]))
        if board.spread is not None:
            deviation = board.spread.deviation
            change += self._level_change(a, b, sum(deviation[s] for s in there) - sum(deviation[s] for s in here))
        return change

    def make(self, exchange: Exchange, until: int) -> None:
        """Make an exchange; nobody in it may go back before step `until`."""
        here, there = exchange
        a, b = self.team[here[0]], self.team[there[0]]
        self.cost += self.change(here, there)
        for movers, source, target in ((here, a, b), (there, b, a)):
            for s in movers:
                self._move(s, source, target)
                self.until[s][source] = until
        spread = self.board.spread
        if spread is not None:
            for t in (a, b):
                self.excess[t] = max(0, abs(self.sums[t]) - spread.most[t]) * spread.steepness[t]

    def _move(self, student: int, source: int, target: int) -> None:
        board, group_of = self.board, self.board.tables.group_of
        self.members[source].remove(student)
        self.members[target].append(student)
        self.team[student] = target
        _carry(self.weight, board.near[student], source, target)
        if board.near_group is not None and group_of[source] != group_of[target]:
            _carry(self.group_weight, board.near_group[student], group_of[source], group_of[target])
        if board.spread is not None:
            self.sums[source] -= board.spread.deviation[student]
            self.sums[target] += board.spread.deviation[student]


def _carry(weight: list[list[int]], near: list[int], source: int, target: int) -> None:
    for row, cost in zip(weight, near, strict=True):
        if cost:
            row[source] -= cost
            row[target] += cost


def _moved(near: list[list[int]], weight: list[list[int]], one: tuple[Sequence[int], int], other: tuple[Sequence[int], int]) -> int:
    """Return the change when two sets of students change places; what lies within each set goes along unchanged."""
    (here, a), (there, b) = one, other
    if len(here) == len(there) == 1:
        mine, yours = weight[here[0]], weight[there[0]]
        return mine[b] - mine[a] + yours[a] - yours[b] - 2 * near[here[0]][there[0]]
    change = sum(weight[s][b] - weight[s][a] for s in here) + sum(weight[s][a] - weight[s][b] for s in there)
    change -= 2 * sum(near[s][o] for s in here for o in there)
    return change + 2 * sum(near[s][o] for side in (here, there) for s, o in combinations(side, 2))
