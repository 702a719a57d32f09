"""The fewest repeats of a unit: scans raise a bound, and trying all teams that could do better settles what is left."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from trivet.planning.grouping.certificate import LARGEST, WIDTHS, Bound, Climb
from trivet.planning.grouping.cheap_teams import Allowed, Costs, Team
from trivet.planning.grouping.exact import better


@dataclass(frozen=True, slots=True)
class Minimum:
    """What is proved, and teams with fewer repeats than the arrangement in hand where the proof came upon some.

    `bound.repeats` may exceed what the bound's weights give by one scan: `better` shows the rest with the same weights.
    """

    bound: Bound
    teams: tuple[Team, ...] | None = None


def minimum(matrix: Costs, sizes: Sequence[int], found: int, allowed: Allowed | None = None) -> Minimum:
    """Return the proved minimum for teams of these `sizes`, at most `found`, the repeats of an arrangement in hand.

    `matrix` are the costs of two students in one team in thousandths; `allowed` narrows the teams, for a minimum under levels and
    rules. Where the bound lies lower, each number of repeats above it is tried in turn, until one is reached or it is `found`.
    """
    if found == 0 or max(sizes, default=0) > LARGEST:
        return Minimum(Bound(0))
    climb = Climb(matrix, sizes, found, allowed)
    best = Bound(0)
    for width in WIDTHS:
        climb.up(width)
        best = max(best, climb.bound, key=lambda each: each.repeats)
        while best.repeats < found:
            answer = better(matrix, sizes, climb.best_weights, best.repeats, allowed)
            if answer.teams is not None:
                return Minimum(best, answer.teams)
            if not answer.proved:
                break
            best = Bound(best.repeats + 1, tuple(climb.best_weights))
        if best.repeats >= found:
            return Minimum(best)
    return Minimum(best, better(matrix, sizes, climb.best_weights, found - 1, allowed).teams)
