"""How long a student card is on paper, roughly, so that a full one is set tighter and still fits one sheet."""

from __future__ import annotations

from collections.abc import Iterable
from math import ceil

SHEET_MM = 257
"""Height of a Letter sheet (279.4 mm) without the margins of the print stylesheet; A4 is 17 mm taller."""

SHORT_BY_MM = 20
"""How far the estimate may fall short of the printed card (largest seen: 15, in Spanish)."""

TIGHTER = 0.91
"""Length of a tight card over its usual length (largest seen)."""

_HEAD_MM, _FOOT_MM, _PLAN_MM = 36, 8, 17


def print_length_mm(
    *,
    lines: Iterable[str],
    steps: Iterable[str],
    careful: Iterable[str],
    roles: Iterable[str],
    finish: Iterable[str],
    instead: str,
    rows: int,
    dense: bool,
) -> int:
    """Return the height of a card in mm at its usual type size.

    Heights and characters a line were measured on printed cards; a card that has room to spare does not need them to be exact.
    """
    total = float(_HEAD_MM + _PLAN_MM + _FOOT_MM)
    total += _block(lines, 95, 4.8, 3)
    total += sum(ceil(len(step) / 78) * 5.7 + 3.2 for step in steps)
    total += _columns(careful, 2, 46, 4.9, 9)
    total += _block([instead + " " * 30] if instead else [], 100, 4.3, 1)
    total += _columns(roles, 2, 52, 4.6, 9)
    total += 14 + rows * (7 if dense else 10.5) if rows else 60
    ends = list(finish)
    columns = 3 if len(ends) > 4 else 2
    total += _columns((text + " " * 20 for text in ends), columns, 100 // columns, 4.7, 9)
    return ceil(total)


def _block(texts: Iterable[str], wide: int, line_mm: float, frame_mm: float) -> float:
    found = [ceil(len(text) / wide) for text in texts]
    return sum(found) * line_mm + frame_mm if found else 0.0


def _columns(texts: Iterable[str], columns: int, wide: int, line_mm: float, frame_mm: float) -> float:
    found = [ceil(len(text) / wide) for text in texts]
    return ceil(sum(found) / columns) * line_mm + frame_mm if found else 0.0


def setting(length_mm: int) -> str:
    """Return the classes under which a card of that estimated length fits one sheet: none, `tight`, or `tight packed`."""
    longest = length_mm + SHORT_BY_MM
    if longest <= SHEET_MM:
        return ""
    return "tight" if longest * TIGHTER <= SHEET_MM else "tight packed"
