"""The words of pages, by page and place, one file a language."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from importlib.resources import files
from typing import Any

SOURCE = "en"
"""The language in which every word exists."""


@dataclass(frozen=True, slots=True)
class Words:
    """All words of one language; call it with a dotted key and what the sentence needs.

    A word may be a text, or a mapping with `one` and `other` that the number `n` chooses between.
    """

    language: str
    table: Mapping[str, Any] = field(repr=False, compare=False)
    """Everything by its dotted key: sentences, and the places that hold them."""

    def __call__(self, key: str, **values: Any) -> str:
        """Return the sentence under `key`. Raises KeyError with the key where it does not exist."""
        found = self.table.get(key)
        if isinstance(found, dict) and "other" in found:
            found = found["one" if values.get("n") == 1 else "other"]
        if not isinstance(found, str):
            why = "is not" if key not in self.table else "is no sentence"
            raise KeyError(f"{key} {why} in pages/words/{self.language}.json")
        return found.format(**values) if values else found

    def knows(self, key: str) -> bool:
        """Whether there is something under `key`."""
        return key in self.table


@cache
def load_words(language: str = SOURCE) -> Words:
    """Return the words of `language` (a BCP 47 tag), or the English ones where its file does not exist."""
    tag = language.lower()
    known = tag if tag in languages() else tag.split("-")[0]
    if known not in languages():
        known = SOURCE
    text = (_folder() / f"{known}.json").read_text(encoding="utf-8")
    return Words(known, dict(_by_key(json.loads(text))))


@cache
def languages() -> tuple[str, ...]:
    """The languages that have a file of words."""
    return tuple(sorted(p.name.removesuffix(".json") for p in _folder().iterdir() if p.name.endswith(".json")))


def _by_key(table: Mapping[str, Any], before: str = "") -> Iterator[tuple[str, Any]]:
    for name, value in table.items():
        yield before + name, value
        if isinstance(value, dict):
            yield from _by_key(value, f"{before}{name}.")


def _folder() -> Any:
    return files("trivet.pages") / "words"
