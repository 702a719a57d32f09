"""Items of a list: does one open with a key of its own, or is it a text?"""

from __future__ import annotations

import re
from dataclasses import dataclass

from trivet.reading.entries import Entry, entry, without_key

_CLOSE_KEY = re.compile(r"([A-Za-z][A-Za-z -]*):(?=[^ \t])")


@dataclass(frozen=True, slots=True)
class ItemFault:
    """What is wrong with the beginning of an item; `column` from 0."""

    code: str
    column: int
    what: str


def item(each: Entry, keys: tuple[str, ...]) -> tuple[Entry, ItemFault | None]:
    """Return the item as it was meant. `keys` are those of the items of its list, () where the items are texts."""
    if not keys:
        return (each if each.key is None else without_key(each)), None
    if each.key is not None and each.key.casefold() in keys:
        return each, None
    close = _CLOSE_KEY.match(each.rest)
    if close is not None and close[1] in keys:
        corrected = (each.lead + each.region)[: each.inner] + close[0] + " " + each.rest[close.end() :].lstrip()
        return entry(corrected), ItemFault("colon-needs-space", each.inner, "a colon needs a space after it")
    if each.key is None:
        # What stands in braces is answered by the loader.
        return (each, None) if each.rest.startswith("{") else _with_key(each, keys)
    text = without_key(each)
    what = f"a colon before a space reads as the end of a key, and the keys here are {', '.join(keys)}"
    lead = text.lead + " " * max(1, each.inner - len(text.lead)) + f"{keys[0]}:"
    return Entry(each.column, each.inner, True, keys[0], lead, " " + text.region.lstrip()), ItemFault(
        "colon-in-text", len(each.lead) - 1, what
    )


def _with_key(each: Entry, keys: tuple[str, ...]) -> tuple[Entry, ItemFault]:
    """Put the usual key before the text of an item, or a colon after the key that it begins with."""
    text = each.rest.strip()
    key = next((key for key in keys if text.casefold().startswith(key + " ")), "")
    text = text[len(key) :].strip()
    key = key or keys[0]
    inner = max(each.inner, each.column + 2)
    corrected = " " * each.column + "-" + " " * (inner - each.column - 1) + f"{key}:"
    meant = Entry(each.column, inner, True, key, corrected, f" {text}" if text else "")
    return meant, ItemFault("item-without-key", each.column, f"an item of this list has keys of its own: {', '.join(keys)}")
