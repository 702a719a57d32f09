"""Rules that can't all hold: found, and cut down to those that matter."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from trivet.model.roster import PairRule
from trivet.planning.grouping.board import board
from trivet.planning.grouping.dice import Dice
from trivet.planning.grouping.feasible import Answer, Placement, place
from trivet.planning.grouping.rules import Tables, Ties, ties_of
from trivet.planning.grouping.search import search

SHORT, LONG = 300, 20_000
"""Steps of the exact search before and after a placement has been looked for."""

WITNESS_STEPS = 400
WITNESS_TRIES = 3


def decide(rules: Sequence[PairRule], tables: Tables) -> Placement:
    """Say whether all rules can hold, with the team of each block where they can.

    A short exact search settles most sets; then a placement is looked for; then the exact search goes on. Either alone can hang:
    the exact one on rules that can hold, the other on rules that can't.
    """
    ties = ties_of(rules)
    found = place(ties, tables, SHORT)
    if found.answer is Answer.UNKNOWN:
        found = _witness(rules, ties, tables)
    if found.answer is Answer.UNKNOWN:
        found = place(ties, tables, LONG)
    return found


def _witness(rules: Sequence[PairRule], ties: Ties, tables: Tables) -> Placement:
    """Look for a placement by exchanges that count broken rules alone."""
    named = sorted({seat for block in ties.blocks for seat in block})
    fillers = sum(tables.sizes) - len(named)
    seats = [*named, *(-1 - filler for filler in range(fillers))]
    counted = board(seats, tables, rules=rules)
    dice = Dice("witness " + " ".join(f"{r.kind.value} {r.low} {r.high}" for r in rules))
    slots = [team for team, size in enumerate(tables.sizes) for _ in range(size)]
    for _ in range(WITNESS_TRIES):
        found = search(counted, dice.shuffled(slots), dice, WITNESS_STEPS)
        if found.cost == 0:
            at = dict(zip(seats, found.team, strict=True))
            return Placement(Answer.YES, tuple(at[block[0]] for block in ties.blocks))
    return Placement(Answer.UNKNOWN)


def quick(rules: Sequence[PairRule], tables: Tables) -> Answer:
    """Say what counting and a short exact search tell; it is unknown where they do not tell."""
    return place(ties_of(rules), tables, SHORT).answer


Asks = Callable[[Sequence[PairRule]], Answer]


def conflicting(rules: Sequence[PairRule], can_hold: Asks, first: Asks | None = None) -> tuple[tuple[PairRule, ...], bool]:
    """Return a set of rules that can't all hold, and whether it is proved minimal: without any one of them the rest can hold.

    Deletion filter: each rule in turn is left out for good where the rest still can't hold (Chinneck and Dravnieks 1991, from memory).
    One pass is enough, since a set that can hold goes on holding when more rules leave it. A pass by a quicker question, `first`,
    leaves a small set for the exact one.
    """
    kept = list(rules)
    if first is not None:
        for rule in reversed(rules):
            rest = [other for other in kept if other != rule]
            if first(rest) is Answer.NO:
                kept = rest
    proved = can_hold(kept) is Answer.NO
    for rule in list(reversed(kept)):
        rest = [other for other in kept if other != rule]
        answer = can_hold(rest)
        if answer is Answer.NO:
            kept = rest
        proved = proved and answer is not Answer.UNKNOWN
    return tuple(kept), proved
