"""Table groups that stay together as teams: only their deal over the three station groups is drawn."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations
from math import prod

from trivet.model.roster import PairRule
from trivet.planning.grouping.feasible import Answer
from trivet.planning.grouping.rules import broken

Deal = tuple[int, ...]
"""The station group (0, 1, 2) of each table."""

DEALS = 20_000
"""As many deals of one size pattern are compared; a class of nine tables has at most 3,025, so this only bounds odd classes."""

GROUPS = 3


def tables_in_order(seats: Sequence[int], tables: Mapping[int, str]) -> tuple[tuple[int, ...], ...]:
    """Return the table groups as seats, in order of the lowest seat at each."""
    at: dict[str, list[int]] = {}
    for seat in sorted(seats):
        at.setdefault(tables[seat], []).append(seat)
    return tuple(tuple(members) for members in at.values())


def best_deal(teams: Sequence[Sequence[int]], rules: Sequence[PairRule], deviation: Mapping[int, int]) -> tuple[Deal, int] | None:
    """Return the deal of teams over station groups and the gap between the largest and smallest group; None where a rule can't hold.

    In this order: the rules, sizes as even as they can be, the groups' level means near the class mean (`deviation` by seat, in
    whole numbers), then the first in order.
    """
    if within_tables(teams, rules):
        return None
    sizes = [len(team) for team in teams]
    for gap in range(sum(sizes) + 1):
        best: tuple[int, Deal] | None = None
        for _, deal in zip(range(DEALS), deals(sizes, gap), strict=False):
            if _broken(teams, rules, deal):
                continue
            found = (_unevenness(teams, deal, deviation), deal)
            best = found if best is None or found < best else best
        if best is not None:
            return best[1], gap
    return None


def can_hold(teams: Sequence[Sequence[int]], rules: Sequence[PairRule]) -> Answer:
    """Say whether some deal keeps all rules."""
    return Answer.YES if best_deal(teams, rules, {}) is not None else Answer.NO


def deals(sizes: Sequence[int], gap: int) -> Iterator[Deal]:
    """Yield the deals whose group sizes differ by at most `gap`, groups being opened in order, so that each way comes once."""
    most = (sum(sizes) + 2 * gap) // GROUPS

    def go(place: int, held: tuple[int, ...], deal: Deal) -> Iterator[Deal]:
        if place == len(sizes):
            if max(held) - min(held) <= gap:
                yield deal
            return
        opened = max(deal, default=-1) + 1
        for group in range(min(opened + 1, GROUPS)):
            if held[group] + sizes[place] <= most:
                more = tuple(size + (sizes[place] if g == group else 0) for g, size in enumerate(held))
                yield from go(place + 1, more, (*deal, group))

    return go(0, (0,) * GROUPS, ())


def within_tables(teams: Sequence[Sequence[int]], rules: Sequence[PairRule]) -> list[PairRule]:
    """Return the rules on teams that the tables themselves do not keep."""
    team_of = {seat: place for place, team in enumerate(teams) for seat in team}
    return [rule for rule in broken(rules, team_of, team_of) if "team" in rule.kind.asks.value]


def _broken(teams: Sequence[Sequence[int]], rules: Sequence[PairRule], deal: Deal) -> bool:
    if not rules:
        return False
    team_of = {seat: place for place, team in enumerate(teams) for seat in team}
    return bool(broken(rules, team_of, {seat: deal[place] for seat, place in team_of.items()}))


def _unevenness(teams: Sequence[Sequence[int]], deal: Deal, deviation: Mapping[int, int]) -> int:
    """Return the sum of differences of the groups' mean deviations, scaled to whole numbers."""
    if not deviation:
        return 0
    sizes = [0] * GROUPS
    sums = [0] * GROUPS
    for team, group in zip(teams, deal, strict=True):
        sizes[group] += len(team)
        sums[group] += sum(deviation.get(seat, 0) for seat in team)
    scale = prod(size for size in sizes if size)
    means = [total * (scale // size) for total, size in zip(sums, sizes, strict=True) if size]
    return sum(abs(one - other) for one, other in combinations(means, 2))
