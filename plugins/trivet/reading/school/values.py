"""Short lists and spoken words, as school files write them."""

from __future__ import annotations

from typing import Any

from trivet.reading.forms import Unreadable
from trivet.reading.forms import listed as read_list


def listed(value: Any) -> tuple[str, ...]:
    """Return the entries of a comma list, a YAML list or a single number as texts; the schema has seen that it is one."""
    read = read_list(value)
    return () if isinstance(read, Unreadable) else read


def entries(value: Any, path: tuple[str | int, ...]) -> tuple[tuple[str, tuple[str | int, ...]], ...]:
    """Return each entry of a short list with the path of the value it stands in."""
    if isinstance(value, list):
        return tuple((str(each).strip(), (*path, index)) for index, each in enumerate(value))
    return tuple((each, path) for each in listed(value))


def snake(spoken: str) -> str:
    """Turn a spoken key or word into the model's: `early release` into `early_release`."""
    return spoken.replace(" ", "_").replace("-", "_")


def spoken(snake_case: str) -> str:
    """Turn the model's word into the spoken one: `early_release` into `early release`."""
    return snake_case.replace("_", " ")
