"""Best-swap tabu search for one unit (Glover 1989): the best exchange is made even where it costs, and may not be undone at once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from trivet.planning.grouping.board import Board
from trivet.planning.grouping.dice import Dice
from trivet.planning.grouping.exchange import State

TENURE = 7
TENURE_EXTRA = 6
"""A student may not go back for 7 to 12 exchanges."""

WIDE_EVERY = 4
"""Every so often students with nothing to mend start an exchange too: under a level tolerance the way often leads through them."""


@dataclass(frozen=True, slots=True)
class Seating:
    """The team of each student (an index into the tables), and what it costs."""

    cost: int
    team: tuple[int, ...]


def search(board: Board, start: Sequence[int], dice: Dice, steps: int, *, enough: int = 0, patience: int | None = None) -> Seating:
    """Return the best seating met in `steps` exchanges from `start`; stops at a cost of `enough`, or after `patience` steps in vain.

    The budget is a number of exchanges, never seconds, so that a busy machine draws the same groups.
    """
    state = State(board, list(start))
    best = Seating(state.cost, tuple(state.team))
    last = 0
    for step in range(steps):
        if best.cost <= enough or (patience is not None and step - last > patience):
            break
        wide = board.spread is not None and step % WIDE_EVERY == 0
        exchange = state.best_exchange(step, best.cost, dice, wide=wide)
        if exchange is None:
            continue
        state.make(exchange, step + TENURE + dice.below(TENURE_EXTRA))
        if state.cost < best.cost:
            best, last = Seating(state.cost, tuple(state.team)), step
    return best
