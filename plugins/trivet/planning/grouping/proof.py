"""How few repeats there can be, for a seating in hand; and a better seating where the proof finds one."""

from __future__ import annotations

from dataclasses import dataclass, replace

from trivet.planning.grouping.board import OUTSIDE_TOLERANCE, Board, cost_of, excesses
from trivet.planning.grouping.certificate import Bound
from trivet.planning.grouping.cheap_teams import Allowed, Costs, Team
from trivet.planning.grouping.minimum import minimum
from trivet.planning.grouping.search import Seating


@dataclass(frozen=True, slots=True)
class Proof:
    """`bound`: of all teams, with the integers that anyone can check. `within`: of those that rules and levels allow."""

    bound: Bound
    within: int


def tighten(costs: Board, met: Costs, found: Seating, known: Proof) -> tuple[Seating, Proof]:
    """Return the seating, or a better one, and what is proved about it. `met` are the earlier meetings, in thousandths.

    Where levels lie outside the tolerance or rules concern station groups, more than teams decides: then nothing but the minimum of
    all teams is worked out.
    """
    repeats = found.cost % OUTSIDE_TOLERANCE
    if repeats <= known.within:
        return found, known
    sizes, allowed = costs.tables.sizes, allowed_teams(costs)
    least = minimum(met, sizes, repeats)
    bound = max(known.bound, least.bound, key=lambda each: each.repeats)
    known = Proof(bound, max(known.within, bound.repeats))
    if sum(excesses(costs, found.team)) or costs.near_group is not None:
        return found, known
    if allowed is not None and known.within < repeats:
        least = minimum(met, sizes, repeats, allowed)
        known = replace(known, within=max(known.within, least.bound.repeats))
    elif allowed is not None:
        return found, known
    return (found if least.teams is None else seated(costs, least.teams)), known


def seated(costs: Board, teams: tuple[Team, ...]) -> Seating:
    """Return teams as a seating: each at a table of its size, in order."""
    at = [-1] * costs.students
    tables = sorted(range(len(costs.tables.sizes)), key=lambda table: (costs.tables.sizes[table], table))
    for table, team in zip(tables, sorted(teams, key=lambda team: (len(team), team)), strict=True):
        for student in team:
            at[student] = table
    return Seating(cost_of(costs, at), tuple(at))


def allowed_teams(costs: Board) -> Allowed | None:
    """Return a test for teams that no rule on teams and no tolerance forbids; None where everything is allowed."""
    spread, near, blocks = costs.spread, costs.near, costs.blocks
    if spread is None and not any(value >= OUTSIDE_TOLERANCE for row in near for value in row) and not blocks:
        return None
    most = dict(zip(costs.tables.sizes, spread.most, strict=True)) if spread is not None else {}

    def allowed(team: Team) -> bool:
        if spread is not None and abs(sum(spread.deviation[s] for s in team)) > most[len(team)]:
            return False
        if any(near[one][other] >= OUTSIDE_TOLERANCE for one in team for other in team):
            return False
        return all(len(set(block) & set(team)) in (0, len(block)) for block in blocks)

    return allowed
