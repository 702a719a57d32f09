"""Kept groups: who works with whom, drawn once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from trivet.model.wish import Wish

ROLE_IDS = ("leader", "recorder", "materials", "reporter", "timekeeper")
"""In the order in which duties are dealt: three every team has, then the extra ones."""


@dataclass(frozen=True, slots=True)
class StationGroup:
    """A third of the class.

    `teams`: team code (A1) to student number to role ids. `pairs`: two or three student numbers; one for a group of one.
    """

    teams: Mapping[str, Mapping[str, tuple[str, ...]]]
    pairs: tuple[tuple[str, ...], ...]

    @property
    def students(self) -> tuple[str, ...]:
        """All student numbers, ascending."""
        return tuple(sorted(n for team in self.teams.values() for n in team))


Groups = Mapping[str, StationGroup]
"""Letter (A, B, C) to station group. A holds the lowest class number; an empty group has no teams."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lock:
    """A lock file (`lock: 1`), public or private. A `leveled` one is always private, and so is its `order`: wishes on that of stations."""

    unit: str
    class_id: str
    drawn_on: date
    engine: str
    drawn_from: str
    counted: tuple[str, ...]
    inputs: str
    seal: str
    groups: Groups
    repeats: int = 0
    pair_repeats: int = 0
    proved_minimum: int | None = None
    certificate: Mapping[str, int] = field(default_factory=dict)
    leveled: bool = False
    order: tuple[Wish, ...] = ()
