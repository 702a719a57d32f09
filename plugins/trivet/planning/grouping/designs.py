"""Weeks of teams in which no two students meet twice, by arithmetic.

Two sources. Lines of an affine plane: a slot is (column, row) in a field of q elements, and in round m it belongs to team
row + m·column; two slots of different columns meet in exactly one of the q rounds, two of one column never. Starters: a base
round is developed by adding 0, 1, … to the residues, as Kirkman systems (Ray-Chaudhuri and Wilson 1971), nearly Kirkman systems
and resolvable designs are; the tests check every pair.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from itertools import combinations

from trivet.planning.grouping.fields import SIZES, field

Team = tuple[int, ...]
Round = tuple[Team, ...]


@dataclass(frozen=True, slots=True)
class Starter:
    """Points: residues mod `modulus` in `copies` copies (label = copy · modulus + residue), then `fixed` points that do not move."""

    modulus: int
    copies: int
    fixed: int
    bases: tuple[str, ...]

    def rounds(self) -> tuple[Round, ...]:
        """Return all rounds."""
        moving = self.modulus * self.copies

        def moved(label: int, by: int) -> int:
            return label if label >= moving else label // self.modulus * self.modulus + (label + by) % self.modulus

        bases = [[[int(label) for label in team.split()] for team in base.split("/")] for base in self.bases]
        return tuple(
            tuple(tuple(sorted(moved(label, by) for label in team)) for team in base) for base in bases for by in range(self.modulus)
        )


STARTERS: dict[tuple[int, int], Starter] = {
    (15, 3): Starter(7, 2, 1, ("6 10 11/4 13 14/1 7 9/5 8 12/0 2 3",)),
    (18, 3): Starter(4, 4, 2, ("9 10 12/4 11 16/3 6 8/0 5 17/7 13 14/1 2 15", "2 4 9/8 12 17/0 10 15/3 7 11/5 6 14/1 13 16")),
    (21, 3): Starter(
        5, 4, 1, ("10 11 17/4 7 13/5 14 19/0 1 12/3 16 18/9 15 20/2 6 8", "10 18 19/1 3 17/7 8 15/4 6 16/2 12 20/9 11 14/0 5 13")
    ),
    (24, 3): Starter(11, 2, 2, ("9 12 23/3 18 20/6 13 19/11 14 15/7 17 22/1 2 21/0 4 16/5 8 10",)),
    (27, 3): Starter(13, 2, 1, ("11 21 22/12 14 25/5 8 17/16 19 23/3 7 24/6 13 26/0 2 18/4 9 10/1 15 20",)),
    (30, 3): Starter(14, 2, 2, ("12 20 29/4 23 24/3 14 17/19 21 25/7 16 28/1 22 27/0 8 18/2 13 15/9 11 26/5 6 10",)),
    (36, 3): Starter(17, 2, 2, ("20 23 29/4 6 33/3 17 24/7 14 22/2 25 35/8 19 21/12 28 34/10 13 32/26 30 31/1 9 27/11 15 18/0 5 16",)),
    (39, 3): Starter(
        19, 2, 1, ("11 21 22/4 12 25/5 7 14/8 23 30/13 29 33/6 31 34/3 20 26/1 27 32/19 28 36/9 10 15/0 16 24/18 37 38/2 17 35",)
    ),
    (24, 4): Starter(7, 3, 3, ("0 9 20 23/12 15 17 18/3 5 6 14/1 7 11 13/4 8 16 22/2 10 19 21",)),
    (28, 4): Starter(9, 3, 1, ("10 11 18 23/7 15 25 27/2 3 24 26/1 4 20 21/13 17 19 22/6 8 9 12/0 5 14 16",)),
    (36, 4): Starter(11, 3, 3, ("0 12 25 33/3 11 23 34/1 14 22 35/2 28 29 31/6 7 9 13/17 18 20 24/4 8 27 32/5 10 15 19/16 21 26 30",)),
    (40, 4): Starter(
        13, 3, 1, ("1 5 36 37/13 24 29 33/11 12 26 32/4 19 20 34/17 28 30 38/2 15 23 27/7 21 31 39/6 9 16 35/3 8 10 14/0 18 22 25",)
    ),
}
"""By (students, team size). Facts, each checked pair by pair in the tests."""


@cache
def plane(order: int, columns: int) -> tuple[Round, ...]:
    """Return the `order` rounds of teams of `columns` over a field of `order`; slot = column · order + row.

    Where all columns are whole and can themselves be parted into teams of `columns`, rounds inside the columns follow.
    """
    f = field(order)
    rounds = [
        tuple(
            tuple(c * order + next(x for x in range(order) if f.sums[x][f.products[m][c]] == t) for c in range(columns))
            for t in range(order)
        )
        for m in range(order)
    ]
    return (
        *rounds,
        *(tuple(tuple(c * order + slot for slot in team) for c in range(columns) for team in inner) for inner in full(order, columns)),
    )


@cache
def full(students: int, size: int) -> tuple[Round, ...]:
    """Return the longest known weeks of teams of exactly `size`; one round where no other is known, () where sizes do not fit."""
    if size < 1 or students % size:
        return ()
    teams = students // size
    found: list[tuple[Round, ...]] = [(tuple(tuple(range(t * size, (t + 1) * size)) for t in range(teams)),)]
    if (students, size) in STARTERS:
        found.append(STARTERS[students, size].rounds())
    if teams in SIZES and 1 < size <= teams:
        found.append(plane(teams, size))
    return max(found, key=len)


def meetings_of(rounds: tuple[Round, ...]) -> list[tuple[int, int]]:
    """Return every two slots that share a team, once for each round in which they do."""
    return [two for each in rounds for team in each for two in combinations(sorted(team), 2)]
