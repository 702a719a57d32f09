"""Wishes on the order of stations: how many can be met, which are not, and what they are given up for.

All three stations are in use in every round, so that the order is one of twelve Latin squares: small enough to try them all.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import combinations

from trivet.model.wish import Wish
from trivet.planning.say import STATION_NAMES, say_list
from trivet.planning.team_sizes import LETTERS
from trivet.planning.where import Square, latin_squares

Asked = tuple[str, Wish]
"""A group's letter, and what is asked for it."""


@dataclass(frozen=True, slots=True)
class Refusal:
    """A wish that a group can't have. `because` are the fewest of the met ones with which no order gives it."""

    letter: str
    wish: Wish
    because: tuple[Asked, ...]


def asked(wishes: Sequence[Wish]) -> tuple[Asked, ...]:
    """Return what is asked for each group, each thing once: a wish without a letter is asked for all three."""
    each = ((letter, wish) for wish in wishes for letter in LETTERS if wish.letter in ("", letter))
    return tuple(dict.fromkeys((letter, Wish(wish.kind, "", wish.before, wish.last)) for letter, wish in each))


def met(wanted: Iterable[Asked], square: Square) -> tuple[Asked, ...]:
    """Return what a square gives of it."""
    return tuple((letter, wish) for letter, wish in wanted if wish.holds(square[letter]))


def most_met(wishes: Sequence[Wish]) -> int:
    """Return how much of what is asked the best of the twelve squares gives."""
    return max(len(met(asked(wishes), square)) for square in latin_squares())


def refusals(wishes: Sequence[Wish], square: Square) -> tuple[Refusal, ...]:
    """Return what a square that gives as much as can be does not give, in the order of the wishes."""
    given = met(asked(wishes), square)
    return tuple(Refusal(letter, wish, _because(letter, wish, given)) for letter, wish in asked(wishes) if (letter, wish) not in given)


def _because(letter: str, wish: Wish, given: Sequence[Asked]) -> tuple[Asked, ...]:
    for size in range(len(given) + 1):
        for some in combinations(given, size):
            together = (*some, (letter, wish))
            if all(len(met(together, square)) < len(together) for square in latin_squares()):
                return some
    return ()


def why(refusal: Refusal) -> str:
    """Return a sentence that names the wish and the met ones that stand against it."""
    groups: dict[Wish, list[str]] = {}
    for letter, wish in refusal.because:
        groups.setdefault(wish, []).append(letter)
    others = [
        f"group{'s' if len(letters) > 1 else ''} {say_list(letters)} {_is(letters)}{'' if wish == refusal.wish else f' {said(wish)}'}"
        for wish, letters in sorted(groups.items(), key=lambda each: each[0] != refusal.wish)
    ]
    gives = "both" if len(refusal.because) == 1 else "all of that"
    return f"Group {refusal.letter} can't be {said(refusal.wish)}: {', '.join(others)}, and no order of the stations gives {gives}."


def _is(letters: Sequence[str]) -> str:
    return "are" if len(letters) > 1 else "is"


def said(wish: Wish) -> str:
    """Return a wish as it follows "is"."""
    at = f"at the {STATION_NAMES[wish.kind]} station"
    if wish.before is not None:
        return f"{at} before the {STATION_NAMES[wish.before]} one"
    return f"{at} {'last' if wish.last else 'first'}"
