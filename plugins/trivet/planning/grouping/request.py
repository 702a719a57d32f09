"""What is asked of a draw, and what comes back."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from trivet.model.lock import Groups
from trivet.model.roster import PairRule
from trivet.planning.grouping.ledger import Ledger
from trivet.planning.team_sizes import class_shape, team_sizes


class Way(StrEnum):
    """How to group: every team spans the levels, each station group is near one level, or the tables stay together."""

    MIXED = "mixed"
    LEVELED = "leveled"
    USUAL = "usual"


@dataclass(frozen=True, slots=True)
class Wanted:
    """What the teacher chose at the draw: the way and the team size, None where the unit and the department decide."""

    way: Way | None = None
    team_size: int | None = None


NOTHING_WANTED = Wanted()


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """One draw for one class.

    `seats` ascend. `levels` by seat, 1 to 4 or 0 to 100; None draws by number alone; a seat without one counts as the class mean.
    `wishes` are rules that are given up together where they can't hold beside `rules`; `fixed` seats are not moved by a change.
    `tables` by seat, for the usual way. `tolerance_percent`: how far a team's mean may lie from the class mean, in hundredths of a level.
    `seed` is canonical text (class, unit, engine), never a clock. `deal_roles` False leaves the duties to the students.
    `places` are all class numbers of the year, gone and late ones included (else the seats). `ledger` is what the draw goes by;
    `public` is what is published of it, where the two differ. `certify` False saves the time of the proof, `skeleton` False leaves
    the skeleton out. `whole_class` draws teams for the class as a whole, without station groups.
    """

    class_id: str
    seats: tuple[int, ...]
    seed: str
    levels: Mapping[int, int] | None = field(default=None, repr=False)
    tables: Mapping[int, str] | None = field(default=None, repr=False)
    rules: tuple[PairRule, ...] = field(default=(), repr=False)
    wishes: tuple[PairRule, ...] = field(default=(), repr=False)
    fixed: frozenset[int] = field(default=frozenset(), repr=False)
    ledger: Ledger = field(default=Ledger(), repr=False)
    way: Way = Way.MIXED
    tolerance_percent: int = 25
    team_size: int = 4
    deal_roles: bool = True
    places: tuple[int, ...] = ()
    public: Ledger | None = field(default=None, repr=False)
    certify: bool = True
    skeleton: bool = True
    whole_class: bool = False

    def shape(self, students: int) -> tuple[tuple[int, ...], ...]:
        """Return the team sizes of each station group for a class of `students`; one group where the whole class is drawn as one."""
        return (team_sizes(students, self.team_size),) if self.whole_class else class_shape(students, self.team_size)

    @property
    def needing(self) -> tuple[int, ...]:
        """The students whom the wishes spread over the teams."""
        return tuple(sorted({seat for wish in self.wishes for seat in (wish.low, wish.high)}))

    @property
    def published(self) -> Ledger:
        """The ledger of what is public, by which published figures are counted."""
        return self.ledger if self.public is None else self.public


@dataclass(frozen=True, slots=True)
class Limit:
    """Something that kept a draw from being better.

    `code`: `levels` (`count` teams lie outside the tolerance), `partners` (the two `seats` may not share a team and had to be
    partners), `sizes` (table groups leave station groups that differ by `count`), `support` (`count` students who need something are
    not spread). `sentences` puts it in words.
    """

    code: str
    count: int = 0
    seats: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Draw:
    """Groups with their figures, counted against the published ledger.

    `repeats` counts every earlier unit of two teammates, `repeated_pairs` each two once.
    `proved_minimum` (of all teams, whatever rules and levels say) and `certificate` (the integers Y by student number) are None and
    empty where no bound was worked out. `own_repeats` and `own_minimum` go by the request's own ledger, and by the teams that rules
    and levels allow: they are told to the teacher, and kept nowhere.
    """

    groups: Groups
    repeats: int
    pair_repeats: int
    role_spread: int
    repeated_pairs: int = 0
    proved_minimum: int | None = None
    certificate: Mapping[str, int] = field(default_factory=dict)
    own_repeats: int = 0
    own_minimum: int | None = None
    limits: tuple[Limit, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Conflict:
    """Rules that can't all hold. `minimal`: dropping any one of them is proved to help."""

    rules: tuple[PairRule, ...]
    students: int
    shape: tuple[tuple[int, ...], ...]
    minimal: bool = True
