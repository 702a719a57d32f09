"""Small values that school files are made of: comma lists, clock times, stretches of numbers, spoken words."""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import time
from typing import Any

BETWEEN = re.compile(r"\s*(?:\bto\b|[-–—])\s*")


def comma_list(value: Any) -> tuple[str, ...]:
    """Return the entries of a comma list, a YAML list or a single number, each as text without blanks around it."""
    if isinstance(value, list):
        return tuple(str(each).strip() for each in value)
    return tuple(part for each in str(value).split(",") if (part := each.strip()))


def entries(value: Any, path: tuple[str | int, ...]) -> tuple[tuple[str, tuple[str | int, ...]], ...]:
    """Return each entry of a comma list with the path of the value it stands in."""
    if isinstance(value, list):
        return tuple((str(each).strip(), (*path, index)) for index, each in enumerate(value))
    return tuple((each, path) for each in comma_list(value))


def a_time(text: str) -> time | None:
    """Return the clock time that `8:05` names, None where the clock has no such time."""
    hour, minute = (int(part) for part in text.split(":"))
    return time(hour, minute) if hour < 24 and minute < 60 else None


def clock(at: time) -> str:
    """Return a clock time as school files write it: `8:05`."""
    return f"{at.hour}:{at.minute:02d}"


def ends_of(text: str) -> tuple[str, str]:
    """Split a stretch such as `8:05-8:57`, `1 to 31` or `7` into its two ends."""
    parts = BETWEEN.split(text.strip(), maxsplit=1)
    return parts[0], parts[-1]


def stretches(numbers: Iterable[int]) -> str:
    """Write numbers as stretches: `1-9, 11-32`."""
    said: list[list[int]] = []
    for number in sorted(numbers):
        if said and number == said[-1][-1] + 1:
            said[-1].append(number)
        else:
            said.append([number])
    return ", ".join(str(part[0]) if len(part) == 1 else f"{part[0]}-{part[-1]}" for part in said)


def snake(spoken: str) -> str:
    """Turn a spoken key or word into the model's: `early release` into `early_release`."""
    return spoken.replace(" ", "_").replace("-", "_")


def spoken(snake_case: str) -> str:
    """Turn the model's word into the spoken one: `early_release` into `early release`."""
    return snake_case.replace("_", " ")
