"""Partners online: exact, trios where odd, from other teams where possible."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.planning.grouping.ledger import Ledger
from trivet.planning.grouping.pairs import FORBIDDEN, cheapest_pairs, pair_cost


def all_pairings(seats: tuple[int, ...]) -> Iterator[list[tuple[int, ...]]]:
    """Yield every way to pair off `seats`, with one trio where odd, written from the sentence alone."""
    if len(seats) % 2:
        for trio in combinations(seats, 3):
            for rest in all_pairings(tuple(s for s in seats if s not in trio)):
                yield [trio, *rest]
    elif not seats:
        yield []
    else:
        for partner in seats[1:]:
            for rest in all_pairings(tuple(s for s in seats[1:] if s != partner)):
                yield [(seats[0], partner), *rest]


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_equal_to_trying_all(data: st.DataObject) -> None:
    """For groups of 2 to 10 with any costs, the least sum and the smallest list of seats of all pairings come out."""
    seats = tuple(range(1, data.draw(st.integers(2, 10)) + 1))
    costs = data.draw(st.lists(st.integers(0, 4), min_size=45, max_size=45))
    price = dict(zip(combinations(range(1, 11), 2), costs, strict=True))

    def total(pairing: list[tuple[int, ...]]) -> int:
        return sum(price[two] for members in pairing for two in combinations(members, 2))

    best = min((total(p), tuple(sorted(p))) for p in all_pairings(seats))
    found = cheapest_pairs(seats, lambda a, b: price[min(a, b), max(a, b)])
    assert (total(list(found)), found) == best


def test_small_groups() -> None:
    """Nobody, one alone, a pair, a trio."""
    for count, expected in ((0, ()), (1, ((1,),)), (2, ((1, 2),)), (3, ((1, 2, 3),))):
        assert cheapest_pairs(tuple(range(1, count + 1)), lambda a, b: 0) == expected


@pytest.mark.parametrize("count", [20, 21, 22, 27, 33])
def test_large_groups(count: int) -> None:
    """Groups of classes of up to 99 are paired too, everyone once, with one trio where odd, and nobody with a forbidden partner."""
    seats = tuple(range(1, count + 1))
    found = cheapest_pairs(seats, lambda a, b: FORBIDDEN if abs(a - b) == 1 else 0)
    assert sorted(seat for pair in found for seat in pair) == list(seats)
    assert sorted(map(len, found)) == [2] * (count // 2 - count % 2) + [3] * (count % 2)
    assert all(abs(a - b) > 1 for pair in found for a, b in combinations(pair, 2))


def test_weights_in_order() -> None:
    """Partners before weigh 100 each time, one team today 10, one team before 1; two who may not share a team weigh most."""
    ledger = Ledger(teams={(1, 3): 4}, pairs={(1, 2): 2})
    cost = pair_cost([(1, 2), (3, 4)], ledger, frozenset({(3, 4)}))
    assert (cost(1, 2), cost(2, 1), cost(1, 3), cost(1, 4), cost(4, 3)) == (210, 210, 1, 0, 100_010)


def test_partners_come_from_other_teams() -> None:
    """Three teams of four without a past make six pairs, all across teams."""
    teams = ((1, 2, 3, 4), (5, 6, 7, 8), (9, 10, 11, 12))
    team_of = {seat: team for team in teams for seat in team}
    for one, other in cheapest_pairs(tuple(range(1, 13)), pair_cost(teams, Ledger(), frozenset())):
        assert team_of[one] != team_of[other]
