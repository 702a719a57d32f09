"""Arithmetic in the finite fields of the sizes that classes need."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

_PRIMES = (2, 3, 5, 7, 11, 13)

_REDUCES = {4: (2, (1, 1)), 8: (2, (1, 1, 0)), 9: (3, (2, 0))}
"""Size: prime p, and what x^k is: lowest digit first. x² = x + 1, x³ = x + 1, x² = 2 = -1: irreducible over Z_p by trying all roots."""

SIZES = tuple(sorted({*_PRIMES, *_REDUCES}))


@dataclass(frozen=True, slots=True)
class Field:
    """A field of `size` elements 0, 1, … (digits to the base p): tables of sums and products."""

    size: int
    sums: tuple[tuple[int, ...], ...]
    products: tuple[tuple[int, ...], ...]


@cache
def field(size: int) -> Field:
    """Return the field of one of SIZES elements."""
    prime, reduces = _REDUCES.get(size, (size, ()))
    degree = len(reduces) or 1

    def digits(value: int) -> list[int]:
        return [value // prime**place % prime for place in range(degree)]

    def value(ds: list[int]) -> int:
        return sum(digit % prime * prime**place for place, digit in enumerate(ds))

    def product(one: int, other: int) -> int:
        long = [0] * (2 * degree - 1)
        for i, a in enumerate(digits(one)):
            for j, b in enumerate(digits(other)):
                long[i + j] += a * b
        for place in range(len(long) - 1, degree - 1, -1):
            for i, digit in enumerate(reduces):
                long[place - degree + i] += long[place] * digit
        return value(long[:degree])

    every = range(size)
    return Field(
        size,
        tuple(tuple(value([a + b for a, b in zip(digits(x), digits(y), strict=True)]) for y in every) for x in every),
        tuple(tuple(product(x, y) for y in every) for x in every),
    )
