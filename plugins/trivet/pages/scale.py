"""Lengths to scale without inline styles: a class for each number of minutes that a site uses.

`at-6h` places a block 6½ minutes after the bell, `m-23` makes it 23 minutes long, `n-52` says how long the whole bar is,
`r-20` how long its shortest round is. A content-security policy without inline styles leaves them to a stylesheet.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

_CLASSES = re.compile(r'class="([^"]*)"')
_LENGTH = re.compile(r"(at|m|n|r|wk|sp|cl|sc|nw|nc)-(\d+)(h?)")


def length_class(name: str, minutes: float) -> str:
    """Return the class for a number of minutes in halves: at-6h for ("at", 6.5). Raises ValueError for other fractions."""
    halves = round(minutes * 2)
    if halves != minutes * 2 or halves < 0:
        raise ValueError(f"minutes on a scale come in halves from 0 up, not {minutes}")
    return f"{name}-{halves // 2}{'h' if halves % 2 else ''}"


def place_class(name: str, count: int) -> str:
    """Return the class for a place or a count on the year's strip: `wk-14` week 14, `sp-2` two weeks, `cl-3` class 3, `sc-8` eight classes.

    `nw-41` and `nc-8` say how many weeks and classes there are.
    """
    return f"{name}-{count}"


def scale_css(bodies: Iterable[str]) -> str:
    """Return one rule for each length class that stands in `bodies`, in order."""
    said = {classes for body in bodies for classes in _CLASSES.findall(body)}
    found = {name for classes in said for name in classes.split()}
    parts = sorted({m.groups() for name in found if (m := _LENGTH.fullmatch(name))}, key=lambda p: (p[0], int(p[1]), p[2]))
    return "".join(f".{name}-{whole}{half}{{--{name}:{whole}{'.5' if half else ''}}}\n" for name, whole, half in parts)
