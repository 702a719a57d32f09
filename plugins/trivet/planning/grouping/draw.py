"""Draw groups for one class and one unit."""

from __future__ import annotations

from collections.abc import Sequence

from trivet.model.lock import Groups, StationGroup
from trivet.model.roster import PairRule, RuleKind
from trivet.planning.grouping import ledger as count
from trivet.planning.grouping.board import Board, board, excesses, lean_of, spread_of
from trivet.planning.grouping.conflict import conflicting, decide
from trivet.planning.grouping.dice import Dice
from trivet.planning.grouping.feasible import Answer, Placement
from trivet.planning.grouping.letters import Partition, in_seat_order, lettered
from trivet.planning.grouping.pairs import cheapest_pairs, pair_cost
from trivet.planning.grouping.request import Conflict, Draw, Limit, Request, Way
from trivet.planning.grouping.roles import deal
from trivet.planning.grouping.rules import Tables, rules_among, tables_of, ties_of
from trivet.planning.grouping.search import Seating, search
from trivet.planning.grouping.usual import best_deal, can_hold, tables_in_order
from trivet.planning.team_sizes import class_shape

STEPS = 2_000
STARTS = 2


def draw(request: Request) -> Draw | Conflict:
    """Return groups that keep the rules, spread the levels and repeat as few teams as the search finds, in this order.

    The same request gives the same groups on every machine and Python. Rules that can't all hold come back as a Conflict.
    """
    rules = rules_among(request.seats, request.rules)
    parted = usual_parts(request, rules) if request.way is Way.USUAL else searched_parts(request, rules)
    if isinstance(parted, Conflict):
        return parted
    parts, limits = parted
    groups = with_cards_and_partners(request, in_seat_order(parts))
    return Draw(
        groups=groups,
        repeats=count.repeats(groups, request.ledger),
        pair_repeats=count.pair_repeats(groups, request.ledger),
        role_spread=count.role_spread(groups, request.ledger) if request.deal_roles else 0,
        limits=(*limits, *forced_partners(rules, groups)),
    )


Parted = tuple[list[list[list[int]]], tuple[Limit, ...]]
"""Station groups as teams of seats, in no order, and what limited them."""


def searched_parts(request: Request, rules: tuple[PairRule, ...]) -> Parted | Conflict:
    """Part the class by search: mixed or leveled."""
    shape = class_shape(len(request.seats), request.team_size)
    tables = tables_of(shape)
    placed = decide(rules, tables)
    if placed.answer is not Answer.YES:
        culprits, minimal = conflicting(rules, lambda some: decide(some, tables).answer)
        return Conflict(rules=culprits, students=len(request.seats), shape=shape, minimal=minimal)
    costs = board_of(request, tables)
    seating = best_seating(request, costs, placed)
    outside = sum(excess > 0 for excess in excesses(costs, seating.team))
    return partition(request.seats, tables, seating.team), (Limit("levels", count=outside),) if outside else ()


def usual_parts(request: Request, rules: tuple[PairRule, ...]) -> Parted | Conflict:
    """Part the class into the tables it sits at."""
    teams = tables_in_order(request.seats, request.tables or {})
    levels = request.levels or {}
    known = [levels[seat] for seat in request.seats if seat in levels]
    deviation = {seat: len(known) * levels[seat] - sum(known) for seat in request.seats if seat in levels}
    found = best_deal(teams, rules, deviation)
    if found is None:
        culprits, minimal = conflicting(rules, lambda some: can_hold(teams, some))
        return Conflict(rules=culprits, students=len(request.seats), shape=(tuple(len(team) for team in teams),), minimal=minimal)
    deal_of, gap = found
    parts = [[list(team) for team, group in zip(teams, deal_of, strict=True) if group == each] for each in range(3)]
    return parts, (Limit("sizes", count=gap),) if gap > 1 else ()


def forced_partners(rules: tuple[PairRule, ...], groups: Groups) -> tuple[Limit, ...]:
    """Return the partners who may not share a team: nobody else was left for them."""
    apart = {(r.low, r.high) for r in rules if r.kind is RuleKind.NOT_ONE_TEAM}
    return tuple(Limit("partners", seats=two) for two in count.pair_meetings(groups) if two in apart)


def board_of(request: Request, tables: Tables) -> Board:
    """Return the costs of one request."""
    rules = rules_among(request.seats, request.rules)
    levels = request.levels or {}
    mixed = request.way is Way.MIXED and levels
    return board(
        request.seats,
        tables,
        met=request.ledger.teams,
        rules=rules,
        spread=spread_of(request.seats, levels, tables, request.tolerance_percent) if mixed else None,
        lean=lean_of(request.seats, levels, tables) if request.way is Way.LEVELED and levels else None,
        blocks=ties_of(rules).blocks,
    )


def best_seating(request: Request, costs: Board, placed: Placement) -> Seating:
    """Return the best of a few searches, each from a drawn start that keeps the rules; ties go to the smallest list of seats."""
    dice = Dice(request.seed)
    best: tuple[int, Partition, Seating] | None = None
    for _ in range(STARTS):
        found = search(costs, start(request, costs.tables, placed, dice), dice, STEPS, enough=costs.forced)
        key = (found.cost, in_seat_order(partition(request.seats, costs.tables, found.team)))
        if best is None or key < best[:2]:
            best = (*key, found)
        if found.cost <= costs.forced:
            break
    if best is None:
        raise AssertionError("at least one search is made")
    return best[2]


def start(request: Request, tables: Tables, placed: Placement, dice: Dice) -> list[int]:
    """Return a seating in which the blocks sit as placed and everyone else fills the free seats in a drawn order."""
    blocks = ties_of(rules_among(request.seats, request.rules)).blocks
    team_of = {seat: team for block, team in zip(blocks, placed.team_of_block, strict=True) for seat in block}
    free = [team for team, size in enumerate(tables.sizes) for _ in range(size - sum(t == team for t in team_of.values()))]
    others = [seat for seat in request.seats if seat not in team_of]
    team_of.update(zip(others, dice.shuffled(free), strict=True))
    return [team_of[seat] for seat in request.seats]


def partition(seats: Sequence[int], tables: Tables, team: Sequence[int]) -> list[list[list[int]]]:
    """Return the three station groups as lists of teams of seats."""
    groups: list[list[list[int]]] = [[], [], []]
    for place, group in enumerate(tables.group_of):
        groups[group].append([seat for seat, where in zip(seats, team, strict=True) if where == place])
    return groups


def with_cards_and_partners(request: Request, parts: Partition) -> Groups:
    """Return the groups with letters, duty cards and partners."""
    number = f"{request.class_id}-{{:02d}}".format
    apart = frozenset((r.low, r.high) for r in request.rules if r.kind in (RuleKind.NOT_ONE_TEAM, RuleKind.NOT_ONE_GROUP))
    groups = {}
    for letter, teams in lettered(parts).items():
        cards = {code: deal(team, request.ledger.duties) if request.deal_roles else dict.fromkeys(team, ()) for code, team in teams.items()}
        cost = pair_cost(tuple(teams.values()), request.ledger, apart)
        pairs = cheapest_pairs([seat for team in teams.values() for seat in team], cost)
        groups[letter] = StationGroup(
            teams={code: {number(seat): card for seat, card in held.items()} for code, held in cards.items()},
            pairs=tuple(tuple(number(seat) for seat in pair) for pair in pairs),
        )
    return groups
