"""Can the rules all hold? An exact answer, with a placement where they can."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum

from trivet.planning.grouping.rules import Tables, Ties, can_never_hold, too_many


class Answer(Enum):
    """What a search found out."""

    YES = "yes"
    NO = "no"
    UNKNOWN = "not known within the steps allowed"


@dataclass(frozen=True, slots=True)
class Placement:
    """The answer and, where it is yes, the team of each block (an index into the tables)."""

    answer: Answer
    team_of_block: tuple[int, ...] = ()


def place(ties: Ties, tables: Tables, nodes: int) -> Placement:
    """Place all blocks so that every rule holds, or prove that none can, within `nodes` steps.

    Counting first; then depth-first search: bundles choose station groups, most constrained first, then blocks choose teams.
    Students whom no rule names fill what is left, so they need no search.
    """
    if can_never_hold(ties, tables):
        return Placement(Answer.NO)
    search = _Search(ties, tables, nodes)
    if search.bundles(tuple(b for b in range(len(ties.bundles)) if len(ties.bundles[b]) > 1 or ties.apart_group[b])):
        return Placement(Answer.YES, tuple(search.team))
    return Placement(Answer.UNKNOWN if search.nodes <= 0 else Answer.NO)


@dataclass
class _Search:
    """The state of the search: who sits where, what room is left, and who is forbidden where (counted, so that it can be undone)."""

    ties: Ties
    tables: Tables
    nodes: int
    team: list[int] = field(init=False)
    group: list[int] = field(init=False)
    room: list[int] = field(init=False)
    group_room: list[int] = field(init=False)
    no_team: list[list[int]] = field(init=False)
    no_group: list[list[int]] = field(init=False)
    used: list[int] = field(init=False)
    shape: list[tuple[int, ...]] = field(init=False)

    def __post_init__(self) -> None:
        teams, groups = len(self.tables.sizes), len(self.tables.group_sizes)
        self.team = [-1] * len(self.ties.blocks)
        self.group = [-1] * len(self.ties.bundles)
        self.room = list(self.tables.sizes)
        self.group_room = list(self.tables.group_sizes)
        self.no_team = [[0] * teams for _ in self.ties.blocks]
        self.no_group = [[0] * groups for _ in self.ties.bundles]
        self.used = [0] * groups
        self.shape = [
            tuple(size for size, g in zip(self.tables.sizes, self.tables.group_of, strict=True) if g == group) for group in range(groups)
        ]

    # Bundles choose groups.

    def bundles(self, open_bundles: tuple[int, ...]) -> bool:
        """Give every bundle that needs one a station group, then go on to the teams."""
        if not open_bundles:
            return self.blocks(tuple(range(len(self.ties.blocks))))
        self.nodes -= 1
        choices = {bundle: self._groups(bundle) for bundle in open_bundles}
        bundle = min(open_bundles, key=lambda b: (len(choices[b]), -self.ties.weight(b), -len(self.ties.apart_group[b]), b))
        if not choices[bundle] or too_many([self.ties.weight(b) for b in open_bundles], self.group_room):
            return False
        rest = tuple(b for b in open_bundles if b != bundle)
        tried = set()
        for group in choices[bundle]:
            # Two groups of one shape in which nobody sits yet are alike: one of them stands for both.
            alike = (group, ()) if self.used[group] else (-1, self.shape[group])
            if alike in tried:
                continue
            tried.add(alike)
            self._anchor(bundle, group, 1)
            if self.bundles(rest):
                return True
            self._anchor(bundle, group, -1)
            if self.nodes <= 0:
                return False
        return False

    def _groups(self, bundle: int) -> list[int]:
        weight = self.ties.weight(bundle)
        return [g for g, room in enumerate(self.group_room) if room >= weight and not self.no_group[bundle][g]]

    def _anchor(self, bundle: int, group: int, sign: int) -> None:
        self.group[bundle] = group if sign > 0 else -1
        self.group_room[group] -= sign * self.ties.weight(bundle)
        self.used[group] += sign
        for other in self.ties.apart_group[bundle]:
            self.no_group[other][group] += sign

    # Blocks choose teams.

    def blocks(self, open_blocks: tuple[int, ...]) -> bool:
        """Give every block a team."""
        if not open_blocks:
            return True
        self.nodes -= 1
        choices = {block: self._teams(block) for block in open_blocks}
        block = min(open_blocks, key=lambda b: (len(choices[b]), -len(self.ties.blocks[b]), -len(self.ties.apart_team[b]), b))
        if not choices[block] or too_many([len(self.ties.blocks[b]) for b in open_blocks], self.room):
            return False
        rest = tuple(b for b in open_blocks if b != block)
        tried = set()
        for team in choices[block]:
            group, size = self.tables.group_of[team], self.tables.sizes[team]
            if self.room[team] < size:
                alike: tuple[object, ...] = (team,)
            else:
                alike = (group, size, "empty team") if self.used[group] else (self.shape[group], size)
            if alike in tried:
                continue
            tried.add(alike)
            self._seat(block, team, 1)
            if self.blocks(rest):
                return True
            self._seat(block, team, -1)
            if self.nodes <= 0:
                return False
        return False

    def _teams(self, block: int) -> list[int]:
        weight = len(self.ties.blocks[block])
        anchor = self.group[self.ties.bundle_of[block]]
        return [
            team
            for team, room in enumerate(self.room)
            if room >= weight
            and not self.no_team[block][team]
            and (self.tables.group_of[team] == anchor if anchor >= 0 else self.group_room[self.tables.group_of[team]] >= weight)
        ]

    def _seat(self, block: int, team: int, sign: int) -> None:
        weight, group = len(self.ties.blocks[block]), self.tables.group_of[team]
        self.team[block] = team if sign > 0 else -1
        self.room[team] -= sign * weight
        self.used[group] += sign
        if self.group[self.ties.bundle_of[block]] < 0:
            self.group_room[group] -= sign * weight
        for other in self.ties.apart_team[block]:
            self.no_team[other][team] += sign
