"""A school as its `school/` folder says: settings, bells, calendar, classes, rooms, roles, kit, runs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, time
from decimal import Decimal

from trivet.model.station import Kind
from trivet.model.wish import Wish


@dataclass(frozen=True, slots=True, kw_only=True)
class Defaults:
    """Numbers a department may change, in minutes unless the name says otherwise.

    `drift_days` are school days by which one teacher's classes may be apart in a unit.

    All of them are common practice with no published source.
    """

    settle_in: float = 4
    expectations_first: float = 3
    expectations_later: float = 1
    runs_with_full_expectations: int = 2
    places: float = 2
    explain: float = 1
    ask: float = 1
    recap: float = 1
    spot_check_seconds: int = 20
    walk_seconds: int = 10
    clean_up: float = 1
    move: float = 2
    evidence: float = 2
    reflection_per_team: float = 0.5
    reflection_least: float = 5
    reflection_most: float = 10
    pack_up: float = 1
    pack_up_most: float = 3
    write_up: float = 20
    write_up_with_evidence: float = 12
    pre_check: float = 5
    explore: float = 2
    question: float = 4
    check_item: float = 3
    idle: float = 6
    target_extra: float = 2
    round_least: int = 20
    round_most: int = 30
    rounds_a_day: int = 2
    late_floor: float = 15
    drift_days: int = 10
    team_size: int = 4
    spare_percent: int = 10
    level_tolerance_percent: int = 25


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """`school/school.yml`. `site` is the address that printed cards carry; `simulations` are units whose code was reviewed."""

    name: str
    time_zone: str
    locale: str = "en-US"
    paper: str = "letter"
    site: str = ""
    demo: bool = False
    teachers: Mapping[str, str] = field(default_factory=dict)
    simulations: tuple[str, ...] = ()
    defaults: Defaults = Defaults()


@dataclass(frozen=True, slots=True)
class Period:
    """One period of a day type, half-open: [start, end)."""

    name: str
    start: time
    end: time

    @property
    def minutes(self) -> int:
        """Length in minutes."""
        return (self.end.hour - self.start.hour) * 60 + self.end.minute - self.start.minute


@dataclass(frozen=True, slots=True)
class DayType:
    """A bell schedule: regular, early release, block, assembly, testing."""

    name: str
    periods: Mapping[str, Period]


@dataclass(frozen=True, slots=True)
class Closure:
    """Days without school, first and last included."""

    first: date
    last: date
    reason: str = ""


@dataclass(frozen=True, slots=True)
class Term:
    """A named stretch of the school year, first and last included."""

    name: str
    first: date
    last: date


@dataclass(frozen=True, slots=True)
class SpecialDay:
    """What one date is, against the usual: a day type, a rotation day, or both ("" = as usual)."""

    day_type: str = ""
    rotation_day: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Calendar:
    """`school/calendar.yml`.

    `weekly` gives the day type of each weekday (0 = Monday) on which school is held.
    `rotation` are the letters in order, () for none; `slide`: a closed day does not use up its letter.
    `short_notice` are the days whose closure or day type came when units were under way: days before them stay as they were planned.
    `moved_earlier` are the dates on which lessons were moved to an earlier time after calendar files had been handed out, in order.
    """

    first: date
    last: date
    weekly: Mapping[int, str]
    rotation: tuple[str, ...] = ()
    slide: bool = True
    closures: tuple[Closure, ...] = ()
    special: Mapping[date, SpecialDay] = field(default_factory=dict)
    terms: tuple[Term, ...] = ()
    moved_earlier: tuple[date, ...] = ()
    short_notice: tuple[Closure, ...] = ()


@dataclass(frozen=True, slots=True)
class LateSeat:
    """A seat that joins the class on a date."""

    seat: int
    first: date


@dataclass(frozen=True, slots=True, kw_only=True)
class SchoolClass:
    """A set of students that meets in a period.

    `seats` are the class numbers in use (ascending, without those `gone`, with the `late` ones).
    `meets` are the rotation days on which it meets, () for every day. `avoid` is public and impersonal.
    """

    id: str
    name: str
    teacher: str
    grade: int
    period: str
    room: str
    seats: tuple[int, ...]
    meets: tuple[str, ...] = ()
    late: tuple[LateSeat, ...] = ()
    gone: tuple[int, ...] = ()
    avoid: tuple[str, ...] = ()
    adults: int = 1

    @property
    def size(self) -> int:
        """How many students."""
        return len(self.seats)

    def number(self, seat: int) -> str:
        """A student's number, such as `p1-07`."""
        return f"{self.id}-{seat:02d}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """Where each station stands, and which stations the teacher sees from the teacher-led one."""

    id: str
    name: str
    stands: Mapping[Kind, str]
    sees: tuple[Kind, ...] = ()
    area_sq_ft: int | None = None
    devices: int | None = None
    store: str = ""


@dataclass(frozen=True, slots=True)
class Role:
    """A duty in a team: one line for the student, one `watch_for` line for the teacher."""

    id: str
    name: str
    does: str
    watch_for: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StockItem:
    """One thing in a store. `have` is in `unit` ("" = counted); `pack` is how many come in one pack."""

    item: str
    have: Decimal
    unit: str = ""
    store: str = ""
    price: Decimal | None = None
    pack: Decimal | None = None
    contains: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Done:
    """What a class did on a date: whole rounds by number, the write-up, or both.

    `without` are the letters of groups that missed these rounds. `minutes` are those at a station, None for what was planned.
    """

    date: date
    rounds: tuple[int, ...] = ()
    write_up: bool = False
    without: tuple[str, ...] = ()
    minutes: int | None = None


@dataclass(frozen=True, slots=True)
class HalfDone:
    """A round that was stopped on a date after so many minutes at the stations."""

    date: date
    round: int
    minutes: int


UNSETTLED = date.max
"""Where a run's start is still to be worked out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """A class runs a unit from a date on. `way` is `rotate` or `whole_class`.

    `begins` says how the start is given: on the `date` that stands in `starts`, `after` another unit of the class and a gap, or as
    late as it still ends `by` a date. For the latter two `starts` is UNSETTLED until planning has worked it out.
    `by` is a deadline wherever it stands.
    `order` are wishes on the order of stations.
    `lost`, `done` and `half` record what came otherwise than planned; what lies before a recorded date went as planned.
    """

    class_id: str
    unit: str
    starts: date
    begins: str = "date"
    after: str = ""
    gap_days: int = 0
    by: date | None = None
    way: str = "rotate"
    second_adult: Kind | None = None
    order: tuple[Wish, ...] = ()
    lost: tuple[date, ...] = ()
    done: tuple[Done, ...] = ()
    half: tuple[HalfDone, ...] = ()
    index: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class School:
    """Everything under `school/` but the locks."""

    settings: Settings
    bells: Mapping[str, DayType]
    calendar: Calendar
    classes: Mapping[str, SchoolClass]
    rooms: Mapping[str, Room]
    roles: tuple[Role, ...]
    expectations: tuple[str, ...]
    inventory: tuple[StockItem, ...]
    runs: tuple[Run, ...]
