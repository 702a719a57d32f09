"""What is asked of a draw, and what comes back."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from trivet.model.lock import Groups
from trivet.model.roster import PairRule
from trivet.planning.grouping.ledger import Ledger


class Way(StrEnum):
    """How to group: every team spans the levels, each station group is near one level, or the tables stay together."""

    MIXED = "mixed"
    LEVELED = "leveled"
    USUAL = "usual"


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """One draw for one class.

    `seats` ascend. `levels` by seat, 1 to 4 or 0 to 100; None draws by number alone; a seat without one counts as the class mean.
    `tables` by seat, for the usual way. `tolerance_percent`: how far a team's mean may lie from the class mean, in hundredths of a level.
    `seed` is canonical text (class, unit, engine), never a clock. `deal_roles` False leaves the duty cards to the students.
    """

    class_id: str
    seats: tuple[int, ...]
    seed: str
    levels: Mapping[int, int] | None = field(default=None, repr=False)
    tables: Mapping[int, str] | None = field(default=None, repr=False)
    rules: tuple[PairRule, ...] = field(default=(), repr=False)
    ledger: Ledger = field(default=Ledger(), repr=False)
    way: Way = Way.MIXED
    tolerance_percent: int = 25
    team_size: int = 4
    deal_roles: bool = True


@dataclass(frozen=True, slots=True)
class Limit:
    """Something that kept a draw from being better.

    `code`: `levels` (`count` teams lie outside the tolerance), `partners` (the two `seats` may not share a team and had to be
    partners), `sizes` (table groups leave station groups that differ by `count`). `sentences` puts it in words.
    """

    code: str
    count: int = 0
    seats: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Draw:
    """Groups with their figures, counted against the request's ledger.

    `proved_minimum` and `certificate` (the integers Y by student number) are None and empty where no bound was worked out.
    """

    groups: Groups
    repeats: int
    pair_repeats: int
    role_spread: int
    proved_minimum: int | None = None
    certificate: Mapping[str, int] = field(default_factory=dict)
    limits: tuple[Limit, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Conflict:
    """Rules that can't all hold. `minimal`: dropping any one of them is proved to help."""

    rules: tuple[PairRule, ...]
    students: int
    shape: tuple[tuple[int, ...], ...]
    minimal: bool = True
