"""The rest of a day when the lesson runs late: what stays, what shrinks, what moves to the next day.

The same rule stands in pages/assets/js/late.js for the clock; both are held to one file of shared cases. In this order, until the rest
fits: what was dealt beyond the least goes (the written evidence line with it); the write-up moves; rounds not yet begun move, the last
one first; a begun round shrinks, down to the late floor over all its minutes; below that it stops at the signal and is half done, to go
on next day with what is left. Reflection keeps its least before everything else. What is free then is dealt as in a plan.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from trivet.planning.halves import halves
from trivet.planning.halves import minutes as in_minutes

OPENING = ("settle_in", "expectations", "places", "launch", "recap")
"""Blocks before which no round of the day has been worked."""

OF_ROUND = ("launch", "recap", "station", "clean_up")

GIVES_WAY = (
    "pack_up", "clean_up", "move", "places", "expectations", "settle_in", "launch", "recap", "station", "write_up", "reflection",
)  # fmt: skip
"""In this order where even the least of all blocks does not fit."""


@dataclass(frozen=True, slots=True)
class Part:
    """A block without its clock: kind, minutes in halves, and its round, None outside rounds.

    `before` are the minutes of a station that its round was worked on earlier days, until it was stopped there.
    """

    kind: str
    minutes: float
    round: int | None = None
    before: float = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class LateRules:
    """Minutes that a department may change; the defaults are common practice, no source."""

    late_floor: float = 15
    reflection_least: float = 5
    reflection_most: float = 10
    pack_up_least: float = 1
    pack_up_most: float = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class LateDay:
    """`parts` fill the time left together with `surplus`, the first with what is left of it.

    `moved` are rounds that begin on the next day, `write_up` the minutes of it that move there. `half` is the round that stops, with
    `half_left` minutes still to work.
    """

    parts: tuple[Part, ...]
    surplus: float
    moved: tuple[int, ...] = ()
    write_up: float = 0
    half: int | None = None
    half_left: float = 0


DEFAULT_RULES = LateRules()


def late(parts: Sequence[Part], done: float, left: float, rules: LateRules = DEFAULT_RULES) -> LateDay:
    """Budget the rest of a day anew: `parts` from the one going on to the last, `done` minutes of the first behind, `left` to the bell.

    All minutes come in halves. Raises ValueError for a negative number.
    """
    if min(done, left, *(part.minutes for part in parts), *(part.before for part in parts)) < 0:
        raise ValueError("minutes of a day are never negative")
    work = _Rest(parts, halves(done), halves(left), rules)
    work.move_write_up()
    work.move_rounds()
    work.shrink_begun()
    work.give_way()
    return work.dealt()


@dataclass(slots=True)
class _Block:
    """`rest` half minutes are planned from now on, `least` must stay; `whole` is the planned length."""

    part: Part
    whole: int
    rest: int
    least: int
    begun: bool


class _Rest:
    def __init__(self, parts: Sequence[Part], done: int, left: int, rules: LateRules) -> None:
        self.rules, self.left = rules, left
        self.moved: list[int] = []
        self.write_up = 0
        self.half: int | None = None
        self.half_left = 0
        self.blocks = [self._block(part, done if place == 0 else 0, begun=place == 0) for place, part in enumerate(parts)]
        self.worked = bool(parts) and parts[0].kind not in OPENING

    def _block(self, part: Part, done: int, *, begun: bool) -> _Block:
        whole = halves(part.minutes)
        rest = max(0, whole - done)
        least = {
            "reflection": max(0, halves(self.rules.reflection_least) - done),
            "pack_up": max(0, halves(self.rules.pack_up_least) - done),
            "evidence": 0,
        }.get(part.kind, rest)
        return _Block(part, whole, rest, least, begun)

    def over(self) -> int:
        """How many half minutes too many the least of all blocks is."""
        return sum(block.least for block in self.blocks) - self.left

    def move_write_up(self) -> None:
        """A write-up that has not begun moves; a round that moves takes it along."""
        for block in self.blocks:
            if block.part.kind == "write_up" and not block.begun and self.over() > 0:
                self.write_up = block.whole
                self.blocks = [each for each in self.blocks if each is not block]
                return

    def move_rounds(self) -> None:
        """Rounds whose launch has not begun move, the last one first; with the first of the day goes what only opens it."""
        begun = self.blocks[0].part.round if self.blocks else None
        rounds = [block.part.round for block in self.blocks if block.part.kind == "station" and block.part.round != begun]
        for number in reversed(rounds):
            if self.over() <= 0 or number is None:
                return
            self._move(number)

    def _move(self, number: int) -> None:
        first = next(place for place, block in enumerate(self.blocks) if block.part.round == number)
        before = first - 1 if first and self.blocks[first - 1].part.kind == "move" else first
        gone = {id(block) for block in self.blocks if block.part.round == number} | {id(block) for block in self.blocks[before:first]}
        self.blocks = [block for block in self.blocks if id(block) not in gone]
        self.moved.insert(0, number)
        if not self.worked and not any(block.part.kind == "station" for block in self.blocks):
            self.blocks = [block for block in self.blocks if block.begun or block.part.kind not in ("expectations", "places", "evidence")]

    def shrink_begun(self) -> None:
        """The round or the write-up that is going on gives what is too much."""
        over = self.over()
        if over <= 0 or not self.blocks:
            return
        first = self.blocks[0]
        if first.part.kind == "write_up":
            given = min(over, first.rest)
            first.rest = first.least = first.rest - given
            self.write_up = given
        elif first.part.kind in OF_ROUND:
            self._shrink_round(over)

    def _shrink_round(self, over: int) -> None:
        station = next((block for block in self.blocks if block.part.kind == "station"), None)
        if station is None or station.part.round is None:
            return
        worked = station.whole - station.rest
        before = halves(station.part.before)
        floor = min(halves(self.rules.late_floor), before + station.whole)
        rest = max(0, station.rest - over)
        if before + worked + rest >= floor:
            station.rest = station.least = rest
        elif station.begun:
            self.half, self.half_left = station.part.round, station.whole - worked - rest
            station.rest = station.least = rest
        else:
            self._move(station.part.round)

    def give_way(self) -> None:
        """Where even the least does not fit: pack-up, clean-up and whatever else stands gives way before reflection does."""
        for kind in GIVES_WAY:
            for block in reversed(self.blocks):
                if block.part.kind == kind and self.over() > 0:
                    block.least -= min(block.least, self.over())
                    block.rest = min(block.rest, block.least) if kind not in ("reflection", "pack_up") else block.rest

    def dealt(self) -> LateDay:
        """Deal what is free: the evidence line, reflection, pack-up, in this order; the rest is left over."""
        free = -self.over()
        length = {id(block): block.least for block in self.blocks}
        mosts = {"reflection": halves(self.rules.reflection_most), "pack_up": halves(self.rules.pack_up_most)}
        for kind in ("evidence", "reflection", "pack_up"):
            for block in self.blocks:
                if block.part.kind != kind:
                    continue
                if kind == "evidence":
                    more = block.rest if block.rest <= free else free if block.begun else 0
                else:
                    behind = max(0, block.whole - block.rest) if block.begun else 0
                    more = min(free, max(0, max(mosts[kind], block.whole) - behind - length[id(block)]))
                length[id(block)] += more
                free -= more
        return LateDay(
            parts=tuple(
                replace(block.part, minutes=in_minutes(length[id(block)])) for block in self.blocks if length[id(block)] or block.begun
            ),
            surplus=in_minutes(free),
            moved=tuple(self.moved),
            write_up=in_minutes(self.write_up),
            half=self.half,
            half_left=in_minutes(self.half_left),
        )
