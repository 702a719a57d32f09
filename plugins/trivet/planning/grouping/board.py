"""A request as whole numbers: what it costs to seat two students together, and how far a team may lie from the class mean."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import combinations

from trivet.model.roster import PairRule, RuleKind
from trivet.planning.grouping.ledger import Two
from trivet.planning.grouping.rules import Tables

BROKEN_RULE = 10**16
"""More than all levels and repeats of a class of 99 together."""

OUTSIDE_TOLERANCE = 10**5
"""For each unit of a team's excess; more than all repeats of a class of 99 over 40 units together."""

LEVEL_STEPS = 4
"""Levels run from 1 to 4; a score of 0 to 100 is cut into as many, so that one level is 25 points."""

SHARE = 60
"""Divisible by every team size, so that means of teams of different sizes compare as whole numbers."""


@dataclass(frozen=True, slots=True)
class Spread:
    """What `mixed` asks for: |Σ deviation of a team| at most `most` for its size; past that, each unit costs `steepness`.

    `deviation` is a student's level less the class mean, times the students with a level (0 for one without).
    """

    deviation: tuple[int, ...]
    most: tuple[int, ...]
    steepness: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Board:
    """All costs, by place in the list of seats. Lower is better; 0 means nothing to mend.

    `near[i][j]`: i and j in one team. `near_group[i][j]`, `lean[i][g]`: i and j in one station group, i in group g; None where no
    rule asks. `offset` makes kept "same" rules cost 0. `links` and `group_links` count them by student. `blocks` are moved whole.
    """

    tables: Tables
    near: list[list[int]]
    near_group: list[list[int]] | None = None
    lean: list[list[int]] | None = None
    spread: Spread | None = None
    offset: int = 0
    links: tuple[int, ...] = ()
    group_links: tuple[int, ...] = ()
    blocks: tuple[tuple[int, ...], ...] = field(default=())

    @property
    def students(self) -> int:
        """How many students."""
        return len(self.near)

    @property
    def forced(self) -> int:
        """The repeats that no arrangement avoids, since a rule keeps the two together: a cost not worth searching below."""
        twos = (two for block in self.blocks for two in combinations(sorted(block), 2))
        return sum(self.near[one][other] % BROKEN_RULE for one, other in twos)


def board(
    seats: Sequence[int],
    tables: Tables,
    *,
    met: Mapping[Two, int] | None = None,
    rules: Sequence[PairRule] = (),
    spread: Spread | None = None,
    lean: list[list[int]] | None = None,
    blocks: Sequence[Sequence[int]] = (),
) -> Board:
    """Return the costs of seating `seats`: `met` counts earlier meetings, `blocks` are seats that are moved together."""
    place = {seat: index for index, seat in enumerate(seats)}
    count = len(seats)
    near = [[0] * count for _ in seats]
    near_group = [[0] * count for _ in seats] if any("group" in rule.kind.asks.value for rule in rules) or lean else None
    links, group_links, offset = [0] * count, [0] * count, 0
    for (low, high), times in (met or {}).items():
        if low in place and high in place:
            near[place[low]][place[high]] = near[place[high]][place[low]] = times
    for rule in rules:
        one, other = place[rule.low], place[rule.high]
        where, counts = (near_group, group_links) if rule.kind.asks in (RuleKind.SAME_GROUP, RuleKind.NOT_ONE_GROUP) else (near, links)
        apart = rule.kind.asks in (RuleKind.NOT_ONE_GROUP, RuleKind.NOT_ONE_TEAM)
        if where is not None:
            where[one][other] += BROKEN_RULE if apart else -BROKEN_RULE
            where[other][one] = where[one][other]
        if not apart:
            offset += BROKEN_RULE
            counts[one] += 1
            counts[other] += 1
    return Board(
        tables=tables,
        near=near,
        near_group=near_group,
        lean=lean,
        spread=spread,
        offset=offset,
        links=tuple(links),
        group_links=tuple(group_links),
        blocks=tuple(tuple(place[seat] for seat in block) for block in blocks if len(block) > 1),
    )


def cost_of(board: Board, team: Sequence[int]) -> int:
    """Return the cost of a seating (the team of each student), counted from scratch."""
    total = board.offset + OUTSIDE_TOLERANCE * sum(excesses(board, team))
    group = [board.tables.group_of[t] for t in team]
    for one, other in combinations(range(board.students), 2):
        if team[one] == team[other]:
            total += board.near[one][other]
        if board.near_group is not None and group[one] == group[other]:
            total += board.near_group[one][other]
    if board.lean is not None:
        total += sum(board.lean[student][group[student]] for student in range(board.students))
    return total


def excesses(board: Board, team: Sequence[int]) -> list[int]:
    """Return by how much each team lies outside the tolerance, in comparable units."""
    sums = [0] * len(board.tables.sizes)
    if board.spread is None:
        return sums
    for student, where in enumerate(team):
        sums[where] += board.spread.deviation[student]
    return [max(0, abs(s) - most) * steep for s, most, steep in zip(sums, board.spread.most, board.spread.steepness, strict=True)]


def one_level(levels: Mapping[int, int]) -> int:
    """Return how many points one level is: 1 on the scale 1 to 4, 25 on the scale 0 to 100."""
    return 1 if max(levels.values(), default=0) <= LEVEL_STEPS else 100 // LEVEL_STEPS


def spread_of(seats: Sequence[int], levels: Mapping[int, int], tables: Tables, tolerance_percent: int) -> Spread:
    """Return what `mixed` asks of each team."""
    known = [levels[seat] for seat in seats if seat in levels]
    total = sum(known)
    unit = one_level(levels)
    return Spread(
        deviation=tuple(len(known) * levels[seat] - total if seat in levels else 0 for seat in seats),
        most=tuple(tolerance_percent * unit * len(known) * size // 100 for size in tables.sizes),
        steepness=tuple(SHARE // size for size in tables.sizes),
    )


def lean_of(seats: Sequence[int], levels: Mapping[int, int], tables: Tables) -> list[list[int]]:
    """Return what `leveled` asks: how far, in points, a student's level lies outside the cut that each station group takes.

    The ordered list of levels is cut at the sizes of the groups, the lowest levels into the smallest group; least variance within
    groups of fixed sizes is such a cut (exchange argument). A level on a cut fits on both sides, so ties stay free. A seat without
    a level counts as the middle one.
    """
    known = sorted(levels[seat] for seat in seats if seat in levels)
    middle = known[len(known) // 2] if known else 0
    values = [levels.get(seat, middle) for seat in seats]
    ordered = sorted(values)
    sizes = tables.group_sizes
    cuts: dict[int, tuple[int, int]] = {}
    first = 0
    for group in sorted(range(len(sizes)), key=lambda g: (sizes[g], -g)):
        part = ordered[first : first + sizes[group]]
        first += sizes[group]
        cuts[group] = (part[0], part[-1]) if part else (0, 0)
    return [
        [OUTSIDE_TOLERANCE * max(0, low - value, value - high) for low, high in (cuts[g] for g in range(len(sizes)))] for value in values
    ]
