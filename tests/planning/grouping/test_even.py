"""A year of published groups does not tell levels, and a published optimum of diverse grouping is reached."""

from __future__ import annotations

from itertools import combinations
from random import Random

from tests.planning.grouping.classes import asked, drawn
from trivet.planning.grouping.board import Board
from trivet.planning.grouping.dice import Dice
from trivet.planning.grouping.ledger import Ledger
from trivet.planning.grouping.rules import tables_of
from trivet.planning.grouping.search import search

CLASSES, UNITS = 50, 6
MOST = 0.60
"""Our threshold, no source: 0.5 is a coin, 1 is certainty."""

RAN_INT_12 = """
48 31 74 12 84 69 51 72 24 84 59 | 92 16 68 6 85 88 88 3 17 86 | 96 22 13 74 25 89 45 2 72 | 75 83 46 21 88 21 62 10 | 36 97 88 97 51 4 23
| 79 96 5 12 43 94 | 80 73 65 89 84 | 28 47 91 9 | 86 56 68 | 11 38 | 72
"""
"""Distances of instance RanInt_n012_ss_01 of MDGPLIB (Gallego, Laguna, Marti, Duarte 2011), row by row."""


def guessed(seed: int) -> float:
    """Return the AUC of the guess "who never met is of one level" on one simulated class, from its published groups alone."""
    chance = Random(seed)
    students = chance.choice([28, 30, 31, 36])
    abilities = [chance.gauss(0, 1) for _ in range(students)]
    levels = {seat: 1 + sum(ability > cut for cut in (-0.7, 0.0, 0.7)) for seat, ability in enumerate(abilities, 1)}
    ledger = Ledger()
    for unit in range(UNITS):
        ledger = ledger.plus(drawn(asked(students, seed=f"{seed} {unit}", levels=levels, ledger=ledger)).groups)
    never: dict[bool, list[bool]] = {True: [], False: []}
    for two in combinations(range(1, students + 1), 2):
        never[levels[two[0]] == levels[two[1]]].append(two not in ledger.teams)
    same, other = (sum(never[kind]) / len(never[kind]) for kind in (True, False))
    # For a guess that says only yes or no, the area under the curve is the mean of the hit rate and the rate of correct rejections.
    return (same + 1 - other) / 2


def test_never_met_does_not_tell_the_level() -> None:
    """Over 50 simulated classes, guessing "same level" from "never met" is right hardly more often than a coin, either way round."""
    rates = [guessed(seed) for seed in range(CLASSES)]
    assert 1 - MOST < sum(rates) / CLASSES < MOST


def test_published_instance() -> None:
    """The search reaches the optimum 985 of the instance in four groups of three, and the least 293 (all 15,400 ways enumerated)."""
    distance = dict(zip(combinations(range(12), 2), map(int, RAN_INT_12.replace("|", " ").split()), strict=True))
    tables = tables_of(((3, 3, 3, 3),))

    def least(cost: dict[tuple[int, int], int]) -> int:
        near = [[cost.get((min(a, b), max(a, b)), 0) for b in range(12)] for a in range(12)]
        board = Board(tables, near, links=(0,) * 12, group_links=(0,) * 12)
        dice = Dice("diverse")
        return min(search(board, dice.shuffled([0, 1, 2, 3] * 3), dice, 500).cost for _ in range(3))

    assert least(distance) == 293
    assert 12 * 100 - least({two: 100 - far for two, far in distance.items()}) == 985
