"""What to write instead of a list or mapping in brackets."""

from __future__ import annotations

import re
from typing import Any

from trivet.model.places import Path
from trivet.reading.quoting import plain_or_quoted

_SHORT_ITEM = re.compile(r"[^,()\n]{1,30}")


def without_brackets(value: dict[str, Any] | list[Any], path: Path) -> str:
    """What to write instead of `value`, which stands at `path` and was written in brackets."""
    key = f"{path[-1]}:" if path and isinstance(path[-1], str) else ""
    if not value:
        return "write its items below it, one a line; where there are none, delete this line"
    if isinstance(value, dict):
        first, what = next(iter(value.items()))
        return f"write one key a line, indented: {plain_or_quoted(first)}: {_shown(what)}".rstrip()
    items = [str(item) for item in value]
    if (
        key
        and all(_SHORT_ITEM.fullmatch(item) for item in items)
        and all(isinstance(item, str | int) and not isinstance(item, bool) for item in value)
    ):
        return f"write {key} {plain_or_quoted(', '.join(items))} (or one item a line, each after a dash and a space)"
    first = value[0]
    if isinstance(first, dict) and first:
        key, what = next(iter(first.items()))
        return f"write each item after a dash and a space, its keys one below the other: - {plain_or_quoted(key)}: {_shown(what)}".rstrip()
    return f"write one item a line, each after a dash and a space: - {_shown(first)}"


def _shown(value: Any) -> str:
    if value is None or isinstance(value, dict | list):
        return ""  # what stands inside goes on lines of its own
    if isinstance(value, bool):
        return "true" if value else "false"
    return plain_or_quoted(value) if isinstance(value, str) else str(value)
