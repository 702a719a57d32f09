"""Values of options, refused in plain words."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import click

from trivet.reading.near import nearest

MOST_DIGITS = 9
MOST_SHOWN = 20
"""Signs of a value that are said again."""

Number = Callable[[click.Context, click.Parameter, str | None], int | None]
Word = Callable[[click.Context, click.Parameter, str | None], str | None]


def whole(least: int, most: int, what: str) -> Number:
    """Return a callback for an option that is a whole number from `least` to `most`; `what` is counted. Misuse exits with 2."""

    def read(context: click.Context, param: click.Parameter, given: str | None) -> int | None:
        if given is None:
            return None
        digits = given.strip().removeprefix("-")
        number = int(given) if digits.isascii() and digits.isdigit() and len(digits) <= MOST_DIGITS else None
        if number is not None and least <= number <= most:
            return number
        wrong = "is no whole number" if number is None else "is too few" if number < least else "is too many"
        option = param.opts[0]
        said = f"{option}: {given.strip()[:MOST_SHOWN] or 'nothing'} {wrong}"
        raise click.UsageError(f"{said}; write {option} and the number of {what}, from {least} to {most}", context)

    return read


def word_of(words: Sequence[str]) -> Word:
    """Return a callback for an option that is one of a few words. Misuse exits with 2 and the nearest word."""

    def read(context: click.Context, param: click.Parameter, given: str | None) -> str | None:
        if given is None:
            return None
        text = given.strip().lower()
        if text in words:
            return text
        said = f"{param.opts[0]}: {text[:MOST_SHOWN] or 'nothing'} is none of {', '.join(words)}"
        raise click.UsageError(f"{said}; write {param.opts[0]} {nearest(text, words) or words[0]}", context)

    return read
