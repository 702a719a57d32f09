"""Who is where where a group missed a round: the fewest rounds that are still needed, and the missed station first.

Groups and the stations they still miss are the two sides of a graph. Its edges fall into as many rounds, each without a group or a
station twice, as its largest degree, and into no fewer (König 1916 on edge colorings of bipartite graphs).
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from functools import lru_cache
from types import MappingProxyType

from trivet.model.station import Kind
from trivet.planning.progress import ROUNDS
from trivet.planning.where import Square, latin_squares

Places = Mapping[str, Kind]
"""Letter to station in one round; a group that is not named has no station to go to."""

Missed = Mapping[int, Sequence[str]]
"""Round, from 1, to the letters of the groups that missed it."""


def fewest_rounds(missing: Mapping[str, Collection[Kind]]) -> int:
    """Return how many rounds are needed until every group has met the stations it misses: the largest degree."""
    stations = [sum(kind in kinds for kinds in missing.values()) for kind in Kind]
    return max((*(len(kinds) for kinds in missing.values()), *stations), default=0)


def rounds_needed(missed: Missed, square: Square | None = None) -> int:
    """Return how many rounds the unit takes in all where groups missed some; without a square, the most that any of the twelve takes."""
    squares = latin_squares() if square is None else (square,)
    return max(len(places(each, missed)) for each in squares) if missed else ROUNDS


def places(square: Square, missed: Missed) -> tuple[Places, ...]:
    """Return who is where in each round, those who missed it left out. Without anything missed these are the square's three rounds."""
    return _places(tuple(square.items()), tuple(sorted((number, tuple(letters)) for number, letters in missed.items())))


@lru_cache(maxsize=4096)
def _places(square: tuple[tuple[str, tuple[Kind, Kind, Kind]], ...], missed: tuple[tuple[int, tuple[str, ...]], ...]) -> tuple[Places, ...]:
    """The same, kept: a run asks for it once a recorded date, for each of the twelve squares."""
    missing = {letter: set(stations) for letter, stations in square}
    absent_in = dict(missed)
    ahead: list[Places] = [{letter: stations[place] for letter, stations in square} for place in range(ROUNDS)]
    held: list[Places] = []
    while ahead:
        planned = ahead.pop(0)
        absent = {letter: kind for letter, kind in planned.items() if letter in absent_in.get(len(held) + 1, ())}
        there = {letter: kind for letter, kind in planned.items() if letter not in absent}
        for letter, kind in there.items():
            missing[letter].discard(kind)
        held.append(MappingProxyType(there))
        if absent:
            ahead = list(catch_up(missing, absent, ahead))
    return tuple(held)


def visited(rounds: Sequence[Places]) -> Square:
    """Return the three stations of each group in the order in which it meets them."""
    letters = dict.fromkeys(letter for each in rounds for letter in each)
    orders = {letter: tuple(each[letter] for each in rounds if letter in each) for letter in letters}
    return {letter: (first, second, third) for letter, (first, second, third) in orders.items()}


def catch_up(missing: Mapping[str, Collection[Kind]], first: Places, before: Sequence[Places]) -> tuple[Places, ...]:
    """Return the fewest rounds in which every group meets what it misses.

    The groups in `first` are at the station they missed in the first of these rounds, as many as can be; then early rounds are as full
    as can be, so that nobody waits who need not; then as many places as can be stay as planned (`before`); ties by letter and station.
    """
    left = {letter: tuple(kind for kind in Kind if kind in kinds) for letter, kinds in missing.items()}

    def cost(rounds: tuple[Places, ...]) -> tuple[int, tuple[int, ...], int]:
        waiting = sum(rounds[0].get(letter) is not kind for letter, kind in first.items()) if rounds else 0
        moved = sum(letter_kind not in then.items() for then, now in zip(before, rounds, strict=False) for letter_kind in now.items())
        return waiting, tuple(-len(each) for each in rounds), moved

    return min(_colorings(left, fewest_rounds(left)), key=cost)


def _colorings(left: Mapping[str, Sequence[Kind]], rounds: int) -> Iterator[tuple[Places, ...]]:
    """Yield every way to meet what is left in so many rounds."""
    if rounds == 0:
        yield ()
        return
    for now in _rounds(tuple(left.items())):
        after = {letter: tuple(kind for kind in kinds if now.get(letter) is not kind) for letter, kinds in left.items()}
        if fewest_rounds(after) < rounds:
            yield from ((now, *rest) for rest in _colorings(after, rounds - 1))


def _rounds(left: Sequence[tuple[str, Sequence[Kind]]], taken: frozenset[Kind] = frozenset()) -> Iterator[dict[str, Kind]]:
    """Yield every round: each group at a station it misses, or at none, and no two at one."""
    if not left:
        yield {}
        return
    letter, kinds = left[0]
    for kind in kinds:
        if kind not in taken:
            yield from ({letter: kind, **rest} for rest in _rounds(left[1:], taken | {kind}))
    yield from _rounds(left[1:], taken)
