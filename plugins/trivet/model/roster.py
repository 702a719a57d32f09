"""A class's private list: never in git, never on the site."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum


class RuleKind(StrEnum):
    """What may be asked of two students. The last two are never written as rules: they follow from the columns adult and needs."""

    NOT_ONE_TEAM = "not in one team"
    SAME_TEAM = "same team"
    NOT_ONE_GROUP = "not in one station group"
    SAME_GROUP = "same group"
    LANGUAGE = "language partner"
    WITH_ADULT = "with the adult"
    SPREAD = "support spread"

    @property
    def asks(self) -> RuleKind:
        """What the rule asks of the groups: one of the first four."""
        return _ASKS.get(self, self)


_ASKS = {
    RuleKind.LANGUAGE: RuleKind.SAME_TEAM,
    RuleKind.WITH_ADULT: RuleKind.SAME_GROUP,
    RuleKind.SPREAD: RuleKind.NOT_ONE_TEAM,
}

WRITTEN_KINDS = (RuleKind.NOT_ONE_TEAM, RuleKind.SAME_TEAM, RuleKind.NOT_ONE_GROUP, RuleKind.SAME_GROUP, RuleKind.LANGUAGE)
"""The kinds that a teacher writes as rules."""


@dataclass(frozen=True, slots=True, order=True)
class PairRule:
    """A rule for two seats; `low` < `high`."""

    kind: RuleKind
    low: int
    high: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Student:
    """One row of a roster. `level` is 1 to 4 or a score 0 to 100, None where not known; one with a `fixed` seat is not moved later."""

    seat: int
    name: str = field(default="", repr=False)
    level: int | None = field(default=None, repr=False)
    table: str = field(default="", repr=False)
    needs: str = field(default="", repr=False)
    avoid: str = field(default="", repr=False)
    agreement: bool | None = field(default=None, repr=False)
    adult: bool = field(default=False, repr=False)
    fixed: bool = field(default=False, repr=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Roster:
    """The students of one class in order of seat, and the rules between them."""

    class_id: str
    students: tuple[Student, ...]
    rules: tuple[PairRule, ...] = field(default=(), repr=False)
