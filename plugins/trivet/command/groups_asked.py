"""What `trivet groups` was asked to do."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path

from trivet.planning.grouping.request import Wanted, Way

HOW = ("mixed", "usual", "leveled", "auto")
"""The ways to group that a teacher may choose at the draw; auto draws mixed groups, with advice from the pre-check."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """The options of one call."""

    unit: str | None
    class_id: str | None
    year: bool
    how: str | None
    leveled: bool
    change: bool
    day: date | None
    absent: str | None
    write: bool
    force: bool
    explain: bool
    check: Path | None
    students: int | None
    team: int | None
    units: int | None
    whole_class: bool
    json: bool
    today: date

    @property
    def wanted(self) -> Wanted:
        """Return what the teacher chose of a draw."""
        how = "leveled" if self.leveled else "mixed" if self.how == "auto" else self.how
        return Wanted(Way(how) if how else None, self.team)
