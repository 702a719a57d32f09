"""What to write instead of a list or mapping in brackets."""

from __future__ import annotations

import re
from typing import Any

from trivet.model.places import Path
from trivet.reading.quoting import plain_or_quoted

_SHORT_ITEM = re.compile(r"[^,()\n]{1,30}")


def without_brackets(value: dict[str, Any] | list[Any], path: Path) -> str:
    """What to write instead of `value`, which stands at `path` and was written in brackets."""
    name = next((part for part in reversed(path) if isinstance(part, str)), "")
    key = f"{name}:" if path and isinstance(path[-1], str) else ""
    if not value:
        return f"leave {name or 'it'} out, or write its items one a line"
    if isinstance(value, dict):
        first, what = next(iter(value.items()))
        return f"write one key a line, indented: {plain_or_quoted(str(first))}: {plain_or_quoted(str(what))}"
    items = [str(item) for item in value]
    if key and all(_SHORT_ITEM.fullmatch(item) for item in items) and all(isinstance(item, str | int) for item in value):
        return f"write {key} {plain_or_quoted(', '.join(items))}, or one item a line, each after a dash and a space"
    return f"write one item a line, each after a dash and a space: - {plain_or_quoted(items[0])}"
