"""The three stations of a unit, as the author wrote them."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum


class Kind(StrEnum):
    """The three kinds of station; the order is the one in which pages name them."""

    ONLINE = "online"
    HANDS_ON = "hands_on"
    TEACHER_LED = "teacher_led"


@dataclass(frozen=True, slots=True)
class Step:
    """One direction. `minutes` is for one time, a multiple of 0.5 from 0.5 to 60; `times` is at least 1."""

    text: str
    minutes: float
    times: int = 1

    @property
    def total_minutes(self) -> float:
        """Minutes for all the times it is done."""
        return self.minutes * self.times


class Per(StrEnum):
    """What a line of materials counts for."""

    TEAM = "team"
    PAIR = "pair"
    STUDENT = "student"
    STATION = "station"
    CLASS = "class"


@dataclass(frozen=True, slots=True)
class Material:
    """One line of materials: `quantity` of `item` for each `per_count` of `per`.

    `unit` is a unit of measure ("mL") or "" for things that are counted. `spare` is a count on top, or None for the default share.
    """

    quantity: Decimal
    item: str
    per: Per
    per_count: int = 1
    unit: str = ""
    used_up: bool = False
    spare: Decimal | None = None


class Prompt(StrEnum):
    """Who a question is for: everyone, or one of two alternatives."""

    CORE = "core"
    SUPPORT = "support"
    CHALLENGE = "challenge"


@dataclass(frozen=True, slots=True)
class Question:
    """A question the teacher asks, with what to listen for."""

    ask: str
    listen_for: str
    prompt: Prompt = Prompt.CORE


@dataclass(frozen=True, slots=True)
class CheckItem:
    """One item of a quick check or a pre-check, with the teacher's answer."""

    ask: str
    answer: str
    skill: str = ""


@dataclass(frozen=True, slots=True)
class SpotCheckLine:
    """An author's own spot check for one station."""

    station: Kind
    ask: str
    listen_for: str


@dataclass(frozen=True, slots=True)
class Variables:
    """What is changed, measured and kept the same (the teacher's; a card prints three empty lines unless `printed`)."""

    change: str = ""
    measure: str = ""
    keep: str = ""
    printed: bool = False


@dataclass(frozen=True, slots=True)
class Record:
    """The table that students fill in. `rows` are row labels; empty labels make empty rows."""

    columns: tuple[str, ...] = ()
    rows: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Expected:
    """A value that the teacher can expect, with the tolerance of the instruments and a source."""

    of: str
    value: str
    tolerance: str = ""
    source: str = ""


@dataclass(frozen=True, slots=True)
class DataTable:
    """Data that the teacher-led group judges; `drawn` says plotted, else left as empty axes."""

    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    drawn: bool = True


@dataclass(frozen=True, slots=True)
class Misconception:
    """What students may say, and what to do then."""

    hear: str
    do: str


@dataclass(frozen=True, slots=True)
class Reading:
    """A text to read: its path inside the unit folder, its Markdown and its number of words."""

    path: str
    text: str
    words: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Station:
    """What every station has."""

    goal: str
    title: str = ""
    steps: tuple[Step, ...] = ()
    done_when: str = ""
    finished_early: str = ""
    work_in: str = ""
    again: str = ""
    variables: Variables | None = None
    record: Record | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OnlineStation(Station):
    """Investigate with a simulation. `open` is an https address or a page in the unit folder."""

    open: str
    use: str = ""
    leave_alone: str = ""
    explore_minutes: float | None = None
    if_down: str = ""

    @property
    def kind(self) -> Kind:
        """Which of the three it is."""
        return Kind.ONLINE


@dataclass(frozen=True, slots=True, kw_only=True)
class HandsOnStation(Station):
    """Build, measure and record. `hazards` is empty for `none`."""

    materials: tuple[Material, ...] = ()
    hazards: tuple[str, ...] = ()
    set_up_minutes: float = 0.0
    clean_up_minutes: float = 0.0
    instead: str = ""
    put_away: str = ""
    safety_notes: tuple[str, ...] = ()
    expected: tuple[Expected, ...] = ()
    watch_seconds: int | None = None

    @property
    def kind(self) -> Kind:
        """Which of the three it is."""
        return Kind.HANDS_ON


@dataclass(frozen=True, slots=True, kw_only=True)
class TeacherLedStation(Station):
    """Question, challenge, repair."""

    read: Reading | None = None
    start_alone: str = ""
    data: DataTable | None = None
    questions: tuple[Question, ...] = ()
    misconceptions: tuple[Misconception, ...] = ()
    quick_check: tuple[CheckItem, ...] = ()

    @property
    def kind(self) -> Kind:
        """Which of the three it is."""
        return Kind.TEACHER_LED


AnyStation = OnlineStation | HandsOnStation | TeacherLedStation
