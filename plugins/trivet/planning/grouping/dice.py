"""Chance that comes out the same on every machine and Python."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from random import Random
from typing import TypeVar

Thing = TypeVar("Thing")


class Dice:
    """Chance from a text: SHA-256 of the text seeds a generator of which only `random()` is used.

    Python promises the same numbers from `Random(int).random()` in every version; `shuffle`, `choice` and
    `randrange` carry no such promise (the library's notes on reproducibility), so they are not used.
    """

    __slots__ = ("_next",)

    def __init__(self, seed: str) -> None:
        """Seed the generator from a text."""
        self._next = Random(int.from_bytes(hashlib.sha256(seed.encode()).digest(), "big")).random

    def below(self, limit: int) -> int:
        """Return a whole number from 0 to `limit` - 1."""
        return int(self._next() * limit)

    def pick(self, things: Sequence[Thing]) -> Thing:
        """Return one of `things`."""
        return things[self.below(len(things))]

    def shuffled(self, things: Sequence[Thing]) -> list[Thing]:
        """Return the things in a drawn order (Fisher and Yates 1938, as Durstenfeld 1964 made it)."""
        order = list(things)
        for last in range(len(order) - 1, 0, -1):
            other = self.below(last + 1)
            order[last], order[other] = order[other], order[last]
        return order
