"""Duties: every duty once a team, shared fairly over the units."""

from __future__ import annotations

from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.model.lock import ROLE_IDS
from trivet.planning.grouping.ledger import MAIN_DUTIES
from trivet.planning.grouping.roles import EXTRA_CARDS, cards, deal


@pytest.mark.parametrize("size", range(1, 8))
def test_every_duty_once(size: int) -> None:
    """For every team size there is one card a student, and the cards hold each of the five duties once."""
    held = cards(size)
    assert len(held) == size
    assert sorted(role for card in held for role in card) == sorted(ROLE_IDS)


def test_doubled_duties() -> None:
    """The leader keeps time and the recorder reports where no one else does."""
    assert cards(3) == (("leader", "timekeeper"), ("recorder", "reporter"), ("materials",))
    assert cards(4) == (("leader", "timekeeper"), ("recorder",), ("materials",), ("reporter",))
    assert cards(5) == tuple((role,) for role in ROLE_IDS)


@settings(max_examples=50, deadline=None)
@given(st.data())
def test_nobody_deals_fairer(data: st.DataObject) -> None:
    """In a team of three no other deal leaves the students' three main cards more even, by trying all six."""
    held = {(seat, role): data.draw(st.integers(0, 3)) for seat in (1, 2, 3) for role in MAIN_DUTIES}

    def squares(order: tuple[int, ...]) -> int:
        """Sum over students and main cards of (3 x count - sum of the three counts)²."""
        total = 0
        for seat, card in zip(order, MAIN_DUTIES, strict=True):
            counts = [held[seat, role] + (role == card) for role in MAIN_DUTIES]
            total += sum((3 * c - sum(counts)) ** 2 for c in counts)
        return total

    dealt = deal((1, 2, 3), held)
    order = tuple(next(s for s in (1, 2, 3) if dealt[s][0] == card) for card in MAIN_DUTIES)
    assert squares(order) == min(squares(p) for p in permutations((1, 2, 3)))


@pytest.mark.parametrize("size", [4, 5])
def test_extra_cards_go_round(size: int) -> None:
    """In a team that stays together, nobody holds an extra card twice before everyone held one, nor the same card in every unit."""
    held: dict[tuple[int, str], int] = {}
    seats = tuple(range(1, size + 1))
    for _ in range(size):
        for seat, card in deal(seats, held).items():
            held[seat, card[0]] = held.get((seat, card[0]), 0) + 1
    extras = [sum(held.get((seat, role), 0) for role in EXTRA_CARDS) for seat in seats]
    assert max(extras) - min(extras) <= 1
    assert max(held.values()) <= 2
