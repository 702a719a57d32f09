"""The nearest word of a closed list, for someone who mistyped."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches


def plain(word: str) -> str:
    """Return the word as it sounds: lower case, with spaces for underscores and hyphens."""
    return " ".join(word.lower().replace("_", " ").replace("-", " ").split())


def nearest(word: str, known: Iterable[str], cutoff: float = 0.6) -> str:
    """Return the word of `known` that was probably meant, or "" where none is near."""
    sounds: dict[str, str] = {}
    for each in known:
        sounds.setdefault(plain(each), each)
    heard = plain(word)
    # A plural for a singular is the commonest slip, and in short words a ratio rates other slips above it.
    for other in (heard, heard + "s", heard.removesuffix("s")):
        if other in sounds:
            return sounds[other]
    found = get_close_matches(heard, sorted(sounds), n=1, cutoff=cutoff)
    return sounds[found[0]] if found else ""
