"""Duties of a whole year: as even as they can be (de Werra 1971)."""

from __future__ import annotations

from collections import Counter
from random import Random

import pytest

from trivet.model.lock import ROLE_IDS
from trivet.planning.grouping.ledger import MAIN_DUTIES
from trivet.planning.grouping.roles import cards, counted_on
from trivet.planning.grouping.share_roles import share
from trivet.planning.team_sizes import class_shape


def random_year(students: int, wanted: int, units: int, seed: int) -> list[list[tuple[int, ...]]]:
    """Return teams drawn blindly for each unit."""
    chance = Random(seed)
    year = []
    for _ in range(units):
        order = chance.sample(range(1, students + 1), students)
        year.append([tuple(order.pop() for _ in range(size)) for group in class_shape(students, wanted) for size in group])
    return year


@pytest.mark.parametrize("block", range(5))
def test_a_hundred_classes(block: int) -> None:
    """On 100 random classes (20 here) every duty is held once a team, each student's three main cards differ by at most one over the
    year, and where all teams have one size, so do all cards, and none differ where the units divide by the size."""
    for seed in range(20 * block, 20 * block + 20):
        chance = Random(1000 + seed)
        students, wanted, units = chance.choice([18, 24, 27, 28, 31, 33, 36, 37]), chance.choice([3, 4, 4, 5]), chance.randint(2, 12)
        year = random_year(students, wanted, units, seed)
        dealt = share(year, {})
        for teams, unit in zip(year, dealt, strict=True):
            for team in teams:
                assert sorted(unit[seat] for seat in team) == sorted(cards(len(team)))
        held = Counter((seat, role) for unit in dealt for seat, card in unit.items() for role in counted_on(card))
        sizes = {len(team) for team in year[0]}
        names = ROLE_IDS[: sizes.pop()] if len(sizes) == 1 else MAIN_DUTIES
        spreads = {max(counts) - min(counts) for seat in range(1, students + 1) for counts in [[held[seat, name] for name in names]]}
        assert max(spreads) <= 1
        if len(names) == len(year[0][0]) and units % len(names) == 0 and names != MAIN_DUTIES:
            assert spreads == {0}


def test_the_past_is_made_up_for() -> None:
    """Who led three times before is not leader again while others of the team can be, and ends nearer to the others."""
    held = {(1, "leader"): 3}
    dealt = share([[(1, 2, 3, 4)], [(1, 2, 3, 4)], [(1, 2, 3, 4)]], held)
    assert all(unit[1][0] != "leader" for unit in dealt)
