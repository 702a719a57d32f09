"""Which station group is where in each round: one of the twelve Latin squares of order three."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from itertools import permutations, product

from trivet.model.station import Kind
from trivet.model.wish import Wish
from trivet.planning.team_sizes import LETTERS

Square = Mapping[str, tuple[Kind, Kind, Kind]]
"""Letter to the stations of its three rounds, in order."""


@dataclass(slots=True)
class StationHistory:
    """How often each student began at a station, and went from one to another, in the class's earlier units."""

    starts: Counter[tuple[str, Kind]] = field(default_factory=Counter)
    follows: Counter[tuple[str, Kind, Kind]] = field(default_factory=Counter)

    def add(self, students: Mapping[str, Iterable[str]], square: Square) -> None:
        """Count one more rotating unit; `students` gives the students of each letter."""
        for letter, members in students.items():
            first, second, third = square[letter]
            for student in members:
                self.starts[student, first] += 1
                self.follows[student, first, second] += 1
                self.follows[student, second, third] += 1


@cache
def latin_squares() -> tuple[Square, ...]:
    """Return all twelve, in order of the stations of A, then B, then C (stations in the order of Kind)."""
    rows = [(first, second, third) for first, second, third in permutations(Kind)]
    return tuple(
        dict(zip(LETTERS, (a, b, c), strict=True))
        for a, b, c in product(rows, repeat=3)
        if all(len(set(round_)) == 3 for round_ in zip(a, b, c, strict=True))
    )


def choose(students: Mapping[str, Sequence[str]], history: StationHistory, wanted: Sequence[tuple[str, Wish]] = ()) -> Square:
    """Return the square that gives most of what is `wanted` for a letter, evens out who starts where over the year, then who follows what.

    Evenness is the sum over students of the squares of their counts, which is least where the counts are most even; the
    last (after Williams 1949) balances which station a student meets straight after which. Ties: the first of `latin_squares`.
    """

    def cost(square: Square) -> tuple[int, int, int]:
        unmet = sum(not wish.holds(square[letter]) for letter, wish in wanted)
        starts = follows = 0
        for letter, members in students.items():
            first, second, third = square[letter]
            for student in members:
                # (c + 1)² - c² = 2c + 1: only what this unit adds differs between squares
                starts += 2 * history.starts[student, first] + 1
                follows += 2 * (history.follows[student, first, second] + history.follows[student, second, third]) + 2
        return (unmet, starts, follows)

    return min(latin_squares(), key=cost)


def whole_class_square() -> Square:
    """Return where everyone is in a class's first unit: online, hands-on, teacher-led, together."""
    return dict.fromkeys(LETTERS, (Kind.ONLINE, Kind.HANDS_ON, Kind.TEACHER_LED))
