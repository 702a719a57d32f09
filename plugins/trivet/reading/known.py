"""What the schemas know about keys, for the scan of lines: which there are, which hold lines, which stand in one place only."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache

from trivet.reading.outline import Part, allowed_keys, resolved
from trivet.reading.schemas import schema

SCHOOL = ("school", "bells", "calendar", "classes", "rooms", "roles", "expectations", "inventory", "runs", "lock")
"""The schemas of the files that are plain YAML."""


@dataclass(frozen=True, slots=True)
class Known:
    """`keys` are all fixed names in small letters, `holders` those under which lines stand.

    `homes` gives, for a key that may stand in one place only, the key that it stands under; `items`, for a list whose items have keys,
    those keys.
    """

    keys: frozenset[str]
    holders: frozenset[str]
    homes: Mapping[str, str]
    items: Mapping[str, tuple[str, ...]]


@cache
def known(*names: str) -> Known:
    """Return what the schemas called `names` know."""
    keys: set[str] = set()
    holders: set[str] = set()
    parents: dict[str, set[str]] = {}
    items: dict[str, tuple[str, ...]] = {}
    for name in names:
        rules = schema(name)
        for parent, key, part in _walk(rules, rules, ""):
            keys.add(key.lower())
            parents.setdefault(key, set()).add(parent)
            if {"array", "object"} & {*([part["type"]] if isinstance(part.get("type"), str) else part.get("type", ()))}:
                holders.add(key)
            if isinstance(part.get("items"), dict) and (inside := allowed_keys(resolved(part["items"], rules))):
                items[key] = inside
    homes = {key: next(iter(above)) for key, above in parents.items() if len(above) == 1 and above != {""}}
    return Known(frozenset(keys), frozenset(holders), homes, items)


def _walk(part: Part, rules: Part, parent: str) -> Iterator[tuple[str, str, Part]]:
    """Yield (key above, key, schema of its value); the key above is "" at the top, in lists and under chosen names."""
    for key, said in part.get("properties", {}).items():
        child = resolved(said, rules)
        yield parent, key, child
        yield from _walk(child, rules, key)
    for below in (part.get("items"), *part.get("patternProperties", {}).values(), part.get("additionalProperties")):
        if isinstance(below, dict):
            yield from _walk(resolved(below, rules), rules, "")
