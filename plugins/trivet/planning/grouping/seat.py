"""Who sits where: the best of the year's skeleton and of a few searches, until it is proved that nothing better exists."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from trivet.planning.grouping.board import Board, cost_of
from trivet.planning.grouping.certificate import Bound, met_matrix
from trivet.planning.grouping.dice import Dice
from trivet.planning.grouping.even import evened
from trivet.planning.grouping.feasible import Placement
from trivet.planning.grouping.letters import in_seat_order
from trivet.planning.grouping.proof import Proof, tighten
from trivet.planning.grouping.request import Request
from trivet.planning.grouping.rules import Tables, rules_among, ties_of
from trivet.planning.grouping.search import Seating, search
from trivet.planning.grouping.skeleton import skeletons

STEPS = 2_000
FIRST_STEPS = 300
"""A short search first: most units are then proved to be as good as they can be."""

STARTS = 5
"""Drawn starts at most."""

UNPROVED_STEPS, PATIENCE = 600, 100
"""Without a proof nothing tells when to stop: one search, until 100 steps are in vain. Over fifteen years of twelve units (24 to 40
students with levels) it left 1,113 repeats where draws with proof left 1,087, at a sixteenth of the time."""


def best_seating(request: Request, costs: Board, placed: Placement) -> tuple[Seating, Proof]:
    """Return the best seating found and what is proved about it; ties go to the smallest list of seats.

    A round of the skeleton is taken where it costs nothing. Else searches start from its best round and from drawn seatings; they
    stop as soon as the proved minimum is reached. Without a proof, one search must do.
    """
    dice = Dice(request.seed)
    proof = Proof(Bound(0), costs.forced)
    rounds = sorted((cost_of(costs, each), place, each) for place, each in enumerate(skeleton_seatings(request, costs.tables)))
    if rounds and rounds[0][0] <= proof.within:
        return Seating(rounds[0][0], tuple(rounds[0][2])), proof
    met = met_matrix(request.seats, request.ledger.teams)
    best: Seating | None = None
    for number, start in enumerate(_starts(request, costs, placed, dice, rounds[0][2] if rounds else None)):
        if not request.certify:
            best = search(costs, start, dice, UNPROVED_STEPS, enough=proof.within, patience=PATIENCE)
            break
        found = search(costs, start, dice, STEPS if number else FIRST_STEPS, enough=proof.within)
        before, best = best, found if best is None else min(best, found, key=lambda each: _rank(request, costs, each))
        if before is None or best.cost < before.cost:
            best, proof = tighten(costs, met, best, proof)
        if best.cost <= proof.within:
            break
    if best is None:
        raise AssertionError("at least one search is made")
    if costs.spread is not None:
        best = evened(costs, best, request.seats, request.levels or {}, met=request.ledger.teams, dice=dice)
    return best, proof


def _starts(request: Request, costs: Board, placed: Placement, dice: Dice, skeleton: list[int] | None) -> Iterator[list[int]]:
    yield drawn_start(request, costs.tables, placed, dice)
    if skeleton is not None and not costs.blocks and not costs.offset:
        yield skeleton
    for _ in range(STARTS - 1):
        yield drawn_start(request, costs.tables, placed, dice)


def _rank(request: Request, costs: Board, found: Seating) -> tuple[int, object]:
    return found.cost, in_seat_order(partition(request.seats, costs.tables, found.team))


def drawn_start(request: Request, tables: Tables, placed: Placement, dice: Dice) -> list[int]:
    """Return a seating in which the blocks sit as placed and everyone else fills the free seats in a drawn order."""
    blocks = ties_of(rules_among(request.seats, request.rules)).blocks
    team_of = {seat: team for block, team in zip(blocks, placed.team_of_block, strict=True) for seat in block}
    free = [team for team, size in enumerate(tables.sizes) for _ in range(size - sum(t == team for t in team_of.values()))]
    others = [seat for seat in request.seats if seat not in team_of]
    team_of.update(zip(others, dice.shuffled(free), strict=True))
    return [team_of[seat] for seat in request.seats]


def skeleton_seatings(request: Request, tables: Tables) -> Iterator[list[int]]:
    """Yield the rounds of the class's skeletons as seatings of today's students.

    Slot k is the k-th class number of the year, gone and late ones included: whoever comes takes a free slot, and nobody moves.
    """
    if not request.skeleton:
        return
    places = request.places or request.seats
    sizes = tuple(sorted((size for group in request.shape(len(places)) for size in group), reverse=True))
    index = {seat: number for number, seat in enumerate(request.seats)}
    for weeks in skeletons(sizes):
        for each in weeks:
            yield seat_teams([[index[places[slot]] for slot in team if places[slot] in index] for team in each], tables)


def seat_teams(teams: Sequence[Sequence[int]], tables: Tables) -> list[int]:
    """Return a seating of these teams at the tables, the largest at the largest; whoever finds no room fills a gap elsewhere."""
    at = [-1] * sum(tables.sizes)
    ordered = sorted(teams, key=lambda team: (-len(team), team))
    order = sorted(range(len(tables.sizes)), key=lambda table: (-tables.sizes[table], table))
    over = [student for team in ordered[len(order) :] for student in team]
    gaps = []
    for table, team in zip(order, [*ordered[: len(order)], *[[] for _ in order[len(ordered) :]]], strict=True):
        for student in team[: tables.sizes[table]]:
            at[student] = table
        over += team[tables.sizes[table] :]
        gaps += [table] * (tables.sizes[table] - len(team))
    for student, table in zip(sorted(over), gaps, strict=True):
        at[student] = table
    return at


def partition(seats: Sequence[int], tables: Tables, team: Sequence[int]) -> list[list[list[int]]]:
    """Return the station groups as lists of teams of seats; three, the last ones empty where there are fewer."""
    groups: list[list[list[int]]] = [[], [], []]
    for place, group in enumerate(tables.group_of):
        groups[group].append([seat for seat, where in zip(seats, team, strict=True) if where == place])
    return groups
