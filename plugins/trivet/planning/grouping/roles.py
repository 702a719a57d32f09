"""Duties: who leads, records, fetches, reports and watches the time in each team."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import permutations

from trivet.model.lock import ROLE_IDS
from trivet.planning.grouping.ledger import MAIN_DUTIES

Card = tuple[str, ...]
"""The role ids of one card, the one it is named after first."""

EXTRA_CARDS = ("reporter", "timekeeper")

_SMALL_TEAMS: dict[int, tuple[Card, ...]] = {
    0: (),
    1: (ROLE_IDS,),
    2: (("leader", "materials", "timekeeper"), ("recorder", "reporter")),
    3: (("leader", "timekeeper"), ("recorder", "reporter"), ("materials",)),
    4: (("leader", "timekeeper"), ("recorder",), ("materials",), ("reporter",)),
}


def cards(size: int) -> tuple[Card, ...]:
    """Return the cards of a team of `size`, one a student, every duty on exactly one of them.

    The leader keeps time and the recorder reports where no one else does; past five students a card is blank.
    """
    if size in _SMALL_TEAMS:
        return _SMALL_TEAMS[size]
    return (*((role,) for role in ROLE_IDS), *[()] * (size - len(ROLE_IDS)))


def deal(team: Sequence[int], held: Mapping[tuple[int, str], int]) -> dict[int, Card]:
    """Return the cards of one team by seat, as fair as one unit can make them after what each has `held`.

    All deals are compared (120 for a team of five): first, that the cards come out even for each student (`uneven`); then, that
    each card goes to whoever held it least; ties go to the lowest seats in the order of the cards.
    """
    seats = sorted(team)
    dealt = cards(len(seats))

    def unfairness(order: tuple[int, ...]) -> tuple[int, int]:
        with_cards = list(zip(order, dealt, strict=True))
        often = sum(2 * held.get((seat, role), 0) + 1 for seat, card in with_cards for role in counted_on(card))
        return sum(uneven(seat, card, held, len(seats)) for seat, card in with_cards), often

    best = min(_orders(seats), key=lambda order: (unfairness(order), order))
    return dict(sorted(zip(best, dealt, strict=True)))


def counted_on(card: Card) -> Card:
    """Return the roles of a card that count towards fairness: the main duties, and an extra one that is the card's own."""
    return tuple(role for role in card if role in MAIN_DUTIES or role == card[0])


def uneven(seat: int, card: Card, held: Mapping[tuple[int, str], int], size: int) -> int:
    """Return how uneven a student's cards would be: the squares of the three main counts about their own mean (times 3), and the
    square of what extra cards exceed the student's share of them in a team of this size, rounded up.

    Both measures were tried against others over simulated years; this one left most students within one on the main cards without
    making anyone reporter for the year.
    """
    main = [held.get((seat, role), 0) + (role in card) for role in MAIN_DUTIES]
    extra = sum(held.get((seat, role), 0) + (card[:1] == (role,)) for role in EXTRA_CARDS)
    extras = max(0, size - len(MAIN_DUTIES))
    over = max(0, size * extra - extras * (sum(main) + extra) - (size - 1))
    return sum((len(main) * count - sum(main)) ** 2 for count in main) + over**2


def _orders(seats: Sequence[int]) -> Iterator[tuple[int, ...]]:
    """Yield the ways to deal; blank cards past the fifth are alike, so only who holds one of the five matters."""
    for first in permutations(seats, min(len(seats), len(ROLE_IDS))):
        yield (*first, *(seat for seat in seats if seat not in first))
