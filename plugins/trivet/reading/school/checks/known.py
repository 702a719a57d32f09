"""Answer a name that nothing is called by with the nearest one that something is."""

from __future__ import annotations

from collections.abc import Iterable

from trivet.model.problem import Problem
from trivet.reading.school.sheet import Sheet

LISTED_MOST = 8
"""How many known names a remedy lists; more would not be read."""

NEAR = 0.66
"""Two of three letters in common, as in r21 and r12; below that, a name is another one and not a slip."""


def not_known(sheet: Sheet, path: tuple[str | int, ...], kind: str, name: str, known: Iterable[str], *, home: str) -> Problem:
    """Say that there is no such thing. `kind` is what it should be ("day type"), `home` where such things are written."""
    return sheet.error(f"unknown-{kind.replace(' ', '-')}", path, f'there is no {kind} "{name}"', remedy_for(name, known, home))


def remedy_for(name: str, known: Iterable[str], home: str) -> str:
    """Return the remedy: the nearest known name, else all of them where they are few, else where they stand."""
    from trivet.reading.near import nearest  # noqa: PLC0415 - only a file with a fault pays for the comparison

    names = tuple(dict.fromkeys(known))
    near = nearest(name, names, NEAR)
    if near:
        return f"write {near}"
    if not names:
        return f"add it to {home} first"
    if len(names) <= LISTED_MOST:
        return f"write one of: {', '.join(names)}; or add it to {home}"
    return f"write a name from {home}"
