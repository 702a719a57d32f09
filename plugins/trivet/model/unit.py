"""A unit: one topic, three stations, one write-up."""

from __future__ import annotations

from dataclasses import dataclass, field

from trivet.model.places import Places
from trivet.model.station import (
    AnyStation,
    CheckItem,
    HandsOnStation,
    Kind,
    OnlineStation,
    SpotCheckLine,
    TeacherLedStation,
)

ROUND_LEAST, ROUND_MOST = 5, 120
"""The minutes between which a unit may set its shortest and its longest round."""


@dataclass(frozen=True, slots=True)
class WriteUp:
    """Claim, evidence, reasoning: `claim_starts` is the sentence that students finish; `at_home` needs no minutes in class."""

    claim_starts: str = ""
    evidence: tuple[str, ...] = ()
    reasoning: str = ""
    at_home: bool = False


@dataclass(frozen=True, slots=True)
class RubricRow:
    """One row of the write-up's rubric: what 0, 1 and 2 look like."""

    part: str
    levels: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class StationText:
    """A station's student text in another language; steps have no times there, and materials no amounts."""

    title: str = ""
    goal: str = ""
    steps: tuple[str, ...] = ()
    done_when: str = ""
    finished_early: str = ""
    start_alone: str = ""
    put_away: str = ""
    use: str = ""
    leave_alone: str = ""
    materials: tuple[str, ...] = ()
    safety_notes: tuple[str, ...] = ()
    instead: str = ""
    record_columns: tuple[str, ...] = ()
    record_rows: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Translation:
    """The student text of a unit in one language (a BCP 47 tag such as `es`)."""

    language: str
    title: str
    question: str
    stations: dict[Kind, StationText]
    claim_starts: str = ""
    places: Places = field(default_factory=lambda: Places(""), compare=False, repr=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Unit:
    """Everything an author wrote about a unit.

    `grades` is (lowest, highest). `round_minutes` is (lower, upper) bound or None for the department's.
    `prefer` is `equal` rounds, or more `minutes` in rounds that may differ.
    `body` is the teacher's prose in Markdown and `body_line` its first line in the file.
    `files` are the other files of the unit folder, as paths inside it.
    """

    slug: str
    title: str
    question: str
    grades: tuple[int, int]
    online: OnlineStation
    hands_on: HandsOnStation
    teacher_led: TeacherLedStation
    write_up: WriteUp = WriteUp()
    standards: tuple[str, ...] = ()
    new_words: tuple[str, ...] = ()
    round_minutes: tuple[int, int] | None = None
    stretch: bool = False
    prefer: str = "equal"
    group_by: str = "mixed"
    level_tolerance_percent: int | None = None
    roles: str = "drawn"
    returns_to: tuple[str, ...] = ()
    pre_check: tuple[CheckItem, ...] = ()
    spot_checks: tuple[SpotCheckLine, ...] = ()
    reflection: str = ""
    rubric: tuple[RubricRow, ...] = ()
    translations: tuple[Translation, ...] = ()
    body: str = ""
    body_line: int = 1
    files: tuple[str, ...] = ()
    places: Places = field(default_factory=lambda: Places(""), compare=False, repr=False)

    @property
    def stations(self) -> tuple[AnyStation, AnyStation, AnyStation]:
        """The three stations: online, hands-on, teacher-led."""
        return (self.online, self.hands_on, self.teacher_led)
