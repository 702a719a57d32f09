"""Duties: who leads, records, fetches, reports and watches the time in each team."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import cache

from trivet.model.lock import ROLE_IDS
from trivet.planning.grouping.ledger import MAIN_DUTIES

Card = tuple[str, ...]
"""The role ids of one card, the one it is named after first."""
Price = tuple[int, int]
"""How uneven a card leaves a student, and how often its duties were held; compared in this order."""

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

    Of all deals the best: first, that the cards come out even for each student (`uneven`); then, that each card goes to whoever held
    it least; ties go to the lowest seats in the order of the cards. Both are sums over students, so card after card is given out, and
    what the later ones cost at least is worked out once for each set of students that are left (blank cards are alike, and come last).
    """
    seats = sorted(team)
    dealt = cards(len(seats))
    named = sum(1 for card in dealt if card)

    def price(seat: int, card: Card) -> Price:
        return uneven(seat, card, held, len(seats)), sum(2 * held.get((seat, role), 0) + 1 for role in counted_on(card))

    prices = [[price(seat, card) for card in dealt[:named]] for seat in seats]
    blank = [price(seat, ()) for seat in seats]

    @cache
    def rest(given: int, free: tuple[int, ...]) -> tuple[Price, tuple[int, ...]]:
        """The least that the cards from `given` on cost among the places `free`, with the first places that do it."""
        if given == named:
            return _total(blank[place] for place in free), free
        best: tuple[Price, tuple[int, ...]] | None = None
        for place in free:
            later, order = rest(given + 1, tuple(other for other in free if other != place))
            found = _total((prices[place][given], later)), (place, *order)
            best = found if best is None or found < best else best
        return best or ((0, 0), ())

    _, order = rest(0, tuple(range(len(seats))))
    return dict(sorted(zip((seats[place] for place in order), dealt, strict=True)))


def _total(prices: Iterable[Price]) -> Price:
    uneven_in_all, often = 0, 0
    for one, other in prices:
        uneven_in_all, often = uneven_in_all + one, often + other
    return uneven_in_all, often


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
