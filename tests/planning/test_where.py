"""Who is where: the twelve Latin squares and the choice among them."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise, permutations

import pytest

from trivet.model.station import Kind
from trivet.model.wish import Wish
from trivet.planning.where import StationHistory, choose, latin_squares, whole_class_square

GROUPS = {"A": ("p1-01", "p1-04"), "B": ("p1-02", "p1-05"), "C": ("p1-03", "p1-06")}


def test_there_are_twelve() -> None:
    """There are 12 Latin squares of order 3 (OEIS A002860: 1, 2, 12, 576): rows and rounds hold each station once, none twice."""
    squares = latin_squares()
    assert len({tuple(square.values()) for square in squares}) == len(squares) == 12
    for square in squares:
        assert all(set(row) == set(Kind) for row in square.values())
        assert all({square[letter][number] for letter in "ABC"} == set(Kind) for number in range(3))


def test_first_unit_takes_the_first_square() -> None:
    """With no history the first square is taken: A online, hands-on, teacher-led."""
    square = choose(GROUPS, StationHistory())
    assert square["A"] == (Kind.ONLINE, Kind.HANDS_ON, Kind.TEACHER_LED)
    assert square == latin_squares()[0]


def test_six_units_make_a_williams_design() -> None:
    """Groups that stay the same meet, over six units, every order once: each ordered neighbor pair twice, each station twice in each round.

    Williams 1949, Aust. J. Sci. Res. A 2:149-168: for three treatments six sequences balance first-order carry-over.
    """
    history, orders = StationHistory(), Counter[tuple[str, tuple[Kind, ...]]]()
    for _ in range(6):
        square = choose(GROUPS, history)
        history.add(GROUPS, square)
        orders.update(square.items())
    assert orders == Counter({(letter, order): 1 for letter in "ABC" for order in permutations(Kind)})
    for letter in "ABC":
        rows = [order for own, order in orders if own == letter]
        assert Counter(pair for row in rows for pair in pairwise(row)) == Counter(dict.fromkeys(permutations(Kind, 2), 2))
        assert all(Counter(row[number] for row in rows) == Counter(dict.fromkeys(Kind, 2)) for number in range(3))


def test_starts_even_out_when_groups_change() -> None:
    """A group made of students who have all begun online begins elsewhere, and the one that never did begins online."""
    history = StationHistory()
    history.add({"A": ("x", "y", "z")}, latin_squares()[0])
    square = choose({"A": ("q",), "B": ("x", "y"), "C": ("z",)}, history)
    assert square["A"][0] is Kind.ONLINE


def test_starts_outrank_what_follows() -> None:
    """A student who began online once begins elsewhere, even where only online-first orders are free of repeated steps."""
    history = StationHistory()
    history.starts["x", Kind.ONLINE] = 1
    history.follows["x", Kind.HANDS_ON, Kind.ONLINE] = history.follows["x", Kind.TEACHER_LED, Kind.ONLINE] = 1
    assert choose({"A": ("x",), "B": (), "C": ()}, history)["A"][0] is not Kind.ONLINE


def test_fewest_repeated_starts() -> None:
    """The chosen square has the least sum of squared counts of starts that any of the twelve has."""
    history = StationHistory()
    groups = {"A": tuple("abcd"), "B": tuple("efgh"), "C": tuple("ijk")}
    deals = [
        groups,
        {"A": tuple("aeib"), "B": tuple("fjcg"), "C": tuple("kdh")},
        {"A": tuple("kabc"), "B": tuple("defg"), "C": tuple("hij")},
    ]
    for dealt in deals:
        square = choose(dealt, history)

        def after(candidate: dict[str, tuple[Kind, ...]], dealt: dict[str, tuple[str, ...]] = dealt) -> int:
            starts = Counter(history.starts)
            starts.update((student, candidate[letter][0]) for letter, members in dealt.items() for student in members)
            return sum(count**2 for count in starts.values())

        assert after(dict(square)) == min(after(dict(each)) for each in latin_squares())
        history.add(dealt, square)


def test_a_wish_outranks_evenness() -> None:
    """A group that asks for it meets the teacher first in every unit, though others would even out who starts where."""
    history = StationHistory()
    for _ in range(3):
        square = choose(GROUPS, history, [("B", Wish(Kind.TEACHER_LED))])
        history.add(GROUPS, square)
        assert square["B"][0] is Kind.TEACHER_LED


@pytest.mark.parametrize("order", list(permutations("ABC")))
def test_teacher_in_a_full_order(order: tuple[str, str, str]) -> None:
    """A full order of meeting the teacher leaves two squares of the twelve."""
    kept = [s for s in latin_squares() if all(s[letter][number] is Kind.TEACHER_LED for number, letter in enumerate(order))]
    assert len(kept) == 2


def test_whole_class_goes_together() -> None:
    """In a class's first unit all groups are online, then hands-on, then teacher-led."""
    assert set(whole_class_square().values()) == {(Kind.ONLINE, Kind.HANDS_ON, Kind.TEACHER_LED)}
