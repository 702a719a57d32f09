"""Partners at the online station."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from functools import cache
from itertools import combinations

from trivet.model.roster import PairRule, RuleKind
from trivet.planning.grouping.ledger import Ledger, Two

FORBIDDEN = 100_000
"""Two who may not share a team are not made partners either, unless nothing else is left."""

WITHOUT_LANGUAGE = 10_000
"""For a student with a language partner beside anyone else: the two share a device wherever they can."""

PARTNERS_BEFORE = 100
"""For each earlier unit in which the two were partners."""

ONE_TEAM_TODAY = 10
ONE_TEAM_BEFORE = 1
"""Once, however often."""

MOST_EXACT = 20
"""The station groups of a class of 60. A set of one more student doubles the work, so larger ones are cut."""

Cost = Callable[[int, int], int]


def apart_and_language(rules: Iterable[PairRule]) -> tuple[frozenset[Two], frozenset[Two]]:
    """Return who should not be partners, and who should: those a rule keeps apart, and language partners.

    Support that is spread over teams says nothing about partners.
    """
    apart = (RuleKind.NOT_ONE_TEAM, RuleKind.NOT_ONE_GROUP)
    rules = tuple(rules)
    return (
        frozenset((rule.low, rule.high) for rule in rules if rule.kind in apart),
        frozenset((rule.low, rule.high) for rule in rules if rule.kind is RuleKind.LANGUAGE),
    )


def pair_cost(teams: Sequence[Sequence[int]], ledger: Ledger, apart: frozenset[Two], language: frozenset[Two] = frozenset()) -> Cost:
    """Return the cost of making two seats partners, for the teams of one station group."""
    team_of = {seat: place for place, team in enumerate(teams) for seat in team}
    with_language = {seat for two in language for seat in two if two[0] in team_of and two[1] in team_of}

    def cost(one: int, other: int) -> int:
        two = (min(one, other), max(one, other))
        if two in language:
            return 0
        return (
            FORBIDDEN * (two in apart)
            + WITHOUT_LANGUAGE * ((one in with_language) + (other in with_language))
            + PARTNERS_BEFORE * ledger.pairs.get(two, 0)
            + ONE_TEAM_TODAY * (team_of[one] == team_of[other])
            + ONE_TEAM_BEFORE * (ledger.teams.get(two, 0) > 0)
        )

    return cost


def cheapest_pairs(group: Sequence[int], cost: Cost) -> tuple[tuple[int, ...], ...]:
    """Return the pairs of one station group with the least sum of costs; one trio where odd, and one alone in a group of one.

    A trio costs its three pairs. Exact: a dynamic program over the sets of seats that still lack a partner, always serving the
    lowest of them (Held and Karp 1962 for the idea); at most about a thousand sets for 14 students. Ties go to the smallest list of seats.
    A group of more than MOST_EXACT is cut into halves by number, each of which is exact.
    """
    seats = sorted(group)
    count = len(seats)
    if count > MOST_EXACT:
        half = count // 4 * 2  # even: the trio, if there is one, is in the second half
        return cheapest_pairs(seats[:half], cost) + cheapest_pairs(seats[half:], cost)
    if count <= 1:
        return tuple((seat,) for seat in seats)
    price = [[cost(one, other) if one != other else 0 for other in seats] for one in seats]

    @cache
    def rest(free: int) -> tuple[int, tuple[int, ...]]:
        """Return the least cost for the set `free` and the first pair or trio taken, as places."""
        if not free:
            return 0, ()
        first = (free & -free).bit_length() - 1
        others = [place for place in range(first + 1, count) if free >> place & 1]
        mine = price[first]
        best = (-1, ())  # type: tuple[int, tuple[int, ...]]
        # An odd set of free seats still has its trio to come; sets of partners are tried in order, so the first of equals is the smallest.
        takes = combinations(others, 1) if len(others) % 2 else _ones_and_twos(others)
        for taken in takes:
            left = free ^ 1 << first ^ 1 << taken[0]
            total = mine[taken[0]]
            if len(taken) > 1:
                left ^= 1 << taken[1]
                total += mine[taken[1]] + price[taken[0]][taken[1]]
            total += rest(left)[0]
            if best[0] < 0 or total < best[0]:
                best = (total, (first, *taken))
        return best

    pairs = []
    free = (1 << count) - 1
    while free:
        members = rest(free)[1]
        pairs.append(tuple(seats[place] for place in members))
        free &= ~sum(1 << place for place in members)
    return tuple(pairs)


def _ones_and_twos(others: Sequence[int]) -> list[tuple[int, ...]]:
    """Return every one and every two of `others` in order of their lists; one alone only where an odd set is left over."""
    taken: list[tuple[int, ...]] = [*combinations(others, 1)] if len(others) > 2 else []
    return sorted([*taken, *combinations(others, 2)])
