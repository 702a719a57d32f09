"""A change of the calendar that is only supposed, to see what it would do."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True, kw_only=True)
class WhatIf:
    """Days, first and last included, that are lost to a unit, closed, or otherwise than the calendar says.

    One of `lost`, `closed`, `day_type` and `rotation_day` is given; the latter two may be given together.
    """

    first: date
    last: date
    lost: bool = False
    closed: str = ""
    day_type: str = ""
    rotation_day: str = ""
