"""Groups that missed a round: the fewest rounds, the missed station first, every station once."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.model.station import Kind
from trivet.planning.catch_up import catch_up, fewest_rounds, places, rounds_needed, visited
from trivet.planning.where import latin_squares

LETTERS = "ABC"
EDGES = tuple(product(LETTERS, Kind))
ONE = latin_squares()[0]


def least_rounds(edges: Sequence[tuple[str, Kind]]) -> int:
    """The fewest rounds, found by trying to deal the edges one by one: written without any theorem."""

    def fits(rest: Sequence[tuple[str, Kind]], rounds: list[set[tuple[str, Kind]]]) -> bool:
        if not rest:
            return True
        letter, kind = rest[0]
        for each in rounds:
            if all(letter != other and kind is not station for other, station in each):
                each.add((letter, kind))
                if fits(rest[1:], rounds):
                    return True
                each.remove((letter, kind))
        return False

    return next(count for count in range(10) if fits(edges, [set() for _ in range(count)]))


def test_all_patterns_of_missing_stations() -> None:
    """For each of the 512 ways to miss stations, the fewest rounds are the largest degree (König 1916), and they are found."""
    for count in range(len(EDGES) + 1):
        for edges in combinations(EDGES, count):
            missing = {letter: [kind for other, kind in edges if other == letter] for letter in LETTERS}
            rounds = catch_up(missing, {}, ())
            assert fewest_rounds(missing) == least_rounds(edges) == len(rounds)
            held = [(letter, kind) for each in rounds for letter, kind in each.items()]
            assert sorted(held) == sorted(edges)
            assert all(len(set(each.values())) == len(each) for each in rounds)


@pytest.mark.parametrize("square", latin_squares(), ids=range(12))
@pytest.mark.parametrize("number", [1, 2, 3])
@pytest.mark.parametrize("letter", LETTERS)
def test_one_group_missed_a_round(square: dict[str, tuple[Kind, Kind, Kind]], number: int, letter: str) -> None:
    """A group that missed a round costs one round more, and is at the station it missed in the very next round."""
    rounds = places(square, {number: (letter,)})
    assert len(rounds) == 4 == rounds_needed({number: (letter,)}, square)
    assert letter not in rounds[number - 1]
    assert rounds[number][letter] is square[letter][number - 1]


@settings(max_examples=60, deadline=None)
@given(
    square=st.sampled_from(latin_squares()),
    missed=st.dictionaries(st.integers(1, 5), st.sets(st.sampled_from(LETTERS), min_size=1).map(lambda s: tuple(sorted(s))), max_size=4),
)
def test_everyone_meets_every_station_once(square: dict[str, tuple[Kind, Kind, Kind]], missed: dict[int, tuple[str, ...]]) -> None:
    """Whoever missed what, each group meets each station once in the end, no two at a time, and the past is as it was."""
    rounds = places(square, missed)
    for letter in LETTERS:
        assert sorted(each[letter] for each in rounds if letter in each) == sorted(Kind)
        assert visited(rounds)[letter] == tuple(each[letter] for each in rounds if letter in each)
    assert all(len(set(each.values())) == len(each) for each in rounds)
    first = min(missed, default=4)
    for number in range(1, min(first, 4)):
        assert rounds[number - 1] == {letter: square[letter][number - 1] for letter in LETTERS}
    for number in missed:
        before = {each: letters for each, letters in missed.items() if each < number}
        assert places(square, before)[: number - 1] == rounds[: number - 1]
    assert len(rounds) <= rounds_needed(missed)


def test_nothing_missed() -> None:
    """Without a miss the rounds are those of the square, and there are three."""
    assert rounds_needed({}) == 3
    assert places(ONE, {}) == tuple({letter: ONE[letter][place] for letter in LETTERS} for place in range(3))


def test_nobody_waits_who_need_not() -> None:
    """After group B missed round 1, the next round has all three groups at work, and the last one those that are left."""
    assert [len(each) for each in places(ONE, {1: ("B",)})] == [2, 3, 2, 2]
