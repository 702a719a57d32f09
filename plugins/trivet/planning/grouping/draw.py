"""Draw groups for one class and one unit."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from trivet.model.lock import Groups, StationGroup
from trivet.model.roster import PairRule, RuleKind
from trivet.planning.grouping import ledger as count
from trivet.planning.grouping.board import Board, board, excesses, lean_of, spread_of
from trivet.planning.grouping.certificate import Bound, met_matrix
from trivet.planning.grouping.conflict import conflicting, decide, quick
from trivet.planning.grouping.feasible import Answer
from trivet.planning.grouping.letters import Partition, in_seat_order, lettered
from trivet.planning.grouping.minimum import minimum
from trivet.planning.grouping.pairs import apart_and_language, cheapest_pairs, pair_cost
from trivet.planning.grouping.request import Conflict, Draw, Limit, Request, Way
from trivet.planning.grouping.roles import deal
from trivet.planning.grouping.rules import Tables, rules_among, tables_of, ties_of
from trivet.planning.grouping.seat import best_seating, partition
from trivet.planning.grouping.usual import best_deal, can_hold, tables_in_order


def draw(request: Request) -> Draw | Conflict:
    """Return groups that keep the rules, spread the levels and repeat as few teams as the search finds, in this order.

    The same request gives the same groups on every machine and Python. Rules that can't all hold come back as a Conflict; wishes that
    can't hold beside them are given up, and a Limit says so.
    """
    if not request.wishes:
        return _drawn(request)
    wished = _drawn(replace(request, rules=(*request.rules, *request.wishes), wishes=()))
    if isinstance(wished, Draw):
        return wished
    plain = _drawn(replace(request, wishes=()))
    return plain if isinstance(plain, Conflict) else replace(plain, limits=(*plain.limits, Limit("support", count=len(request.needing))))


def _drawn(request: Request) -> Draw | Conflict:
    rules = rules_among(request.seats, request.rules)
    parted = usual_parts(request, rules) if request.way is Way.USUAL else searched_parts(request, rules)
    if isinstance(parted, Conflict):
        return parted
    groups = with_cards_and_partners(request, in_seat_order(parted.groups))
    return measured(request, groups, parted, (*parted.limits, *forced_partners(rules, groups)))


def measured(request: Request, groups: Groups, parted: Parted | None = None, limits: tuple[Limit, ...] = ()) -> Draw:
    """Return groups with their figures; without `parted` the minimum is proved anew."""
    published = request.published
    found = count.repeats(groups, published)
    proof = parted.proof if parted is not None and published == request.ledger else prove_all(request, groups, found)
    return Draw(
        groups=groups,
        repeats=found,
        repeated_pairs=count.repeated_pairs(groups, published),
        pair_repeats=count.pair_repeats(groups, published),
        role_spread=count.role_spread(groups, published) if request.deal_roles else 0,
        proved_minimum=proof.repeats if proof is not None else None,
        certificate=dict(zip(map(number_of(request), request.seats), proof.weights, strict=False)) if proof is not None else {},
        own_repeats=count.repeats(groups, request.ledger),
        own_minimum=parted.within if parted is not None else None,
        limits=limits,
    )


@dataclass(frozen=True, slots=True)
class Parted:
    """Station groups as teams of seats, in no order; what limited them; and what is proved about them."""

    groups: list[list[list[int]]]
    limits: tuple[Limit, ...] = ()
    proof: Bound | None = None
    within: int | None = None


def prove_all(request: Request, groups: Groups, found: int) -> Bound | None:
    """Prove a minimum by the published ledger, where the draw itself went by another one."""
    if not request.certify or request.way is Way.USUAL:
        return None
    sizes = [len(team) for group in groups.values() for team in group.teams.values()]
    return minimum(met_matrix(request.seats, request.published.teams), sizes, found).bound


def searched_parts(request: Request, rules: tuple[PairRule, ...]) -> Parted | Conflict:
    """Part the class by search: mixed or leveled."""
    shape = request.shape(len(request.seats))
    tables = tables_of(shape)
    placed = decide(rules, tables)
    if placed.answer is not Answer.YES:
        culprits, minimal = conflicting(rules, lambda some: decide(some, tables).answer, lambda some: quick(some, tables))
        return Conflict(rules=culprits, students=len(request.seats), shape=shape, minimal=minimal)
    costs = board_of(request, tables)
    seating, proof = best_seating(request, costs, placed)
    team = seating.team
    outside = sum(excess > 0 for excess in excesses(costs, team))
    return Parted(
        partition(request.seats, tables, team),
        (Limit("levels", count=outside),) if outside else (),
        proof.bound if request.certify else None,
        proof.within if request.certify else None,
    )


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
    return Parted(parts, (Limit("sizes", count=gap),) if gap > 1 else ())


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


def with_cards_and_partners(request: Request, parts: Partition) -> Groups:
    """Return the groups with letters, duties and partners."""
    number = number_of(request)
    apart, language = apart_and_language(request.rules)
    groups = {}
    for letter, teams in lettered(parts).items():
        cards = {code: deal(team, request.ledger.duties) if request.deal_roles else dict.fromkeys(team, ()) for code, team in teams.items()}
        cost = pair_cost(tuple(teams.values()), request.ledger, apart, language)
        pairs = cheapest_pairs([seat for team in teams.values() for seat in team], cost)
        groups[letter] = StationGroup(
            teams={code: {number(seat): card for seat, card in held.items()} for code, held in cards.items()},
            pairs=tuple(tuple(number(seat) for seat in pair) for pair in pairs),
        )
    return groups


def number_of(request: Request) -> Callable[[int], str]:
    """Return how the class writes a seat: `p1-07` from 7."""
    return f"{request.class_id}-{{:02d}}".format
