"""How many minutes each station needs, as parts that sum."""

from __future__ import annotations

from dataclasses import dataclass

from trivet.model.school import Defaults
from trivet.model.station import AnyStation, HandsOnStation, Kind, OnlineStation, Prompt, TeacherLedStation
from trivet.model.unit import Unit
from trivet.planning.halves import halves
from trivet.planning.halves import minutes as in_minutes
from trivet.planning.reading_rates import reading_halves

PART_KINDS = ("set_up", "reading", "explore", "step", "question", "quick_check", "clean_up")


@dataclass(frozen=True, slots=True)
class Part:
    """A part of a station's minutes: `half_minutes` for one time, done `times` times.

    `kind` is one of PART_KINDS. `index` counts the unit's steps, questions or items from 0, None elsewhere.
    """

    kind: str
    half_minutes: int
    times: int = 1
    text: str = ""
    index: int | None = None

    @property
    def total(self) -> int:
        """Half minutes for all the times."""
        return self.half_minutes * self.times

    @property
    def minutes(self) -> float:
        """Minutes for all the times."""
        return in_minutes(self.total)


@dataclass(frozen=True, slots=True)
class StationMinutes:
    """What one station needs."""

    kind: Kind
    parts: tuple[Part, ...]

    @property
    def half_minutes(self) -> int:
        """The sum of the parts in half minutes."""
        return sum(part.total for part in self.parts)

    @property
    def minutes(self) -> float:
        """The sum of the parts in minutes."""
        return in_minutes(self.half_minutes)

    def idle_minutes(self, round_minutes: float) -> float:
        """How long this station has nothing to do in a round, 0 where it needs more."""
        return max(0.0, round_minutes - self.minutes)


@dataclass(frozen=True, slots=True)
class Needed:
    """What a unit's three stations need, and the bounds of its round in whole minutes (`least` to `most`)."""

    stations: tuple[StationMinutes, StationMinutes, StationMinutes]
    least: int
    most: int

    @property
    def half_minutes(self) -> int:
        """The needed round in half minutes: the largest of the three."""
        return max(station.half_minutes for station in self.stations)

    @property
    def minutes(self) -> float:
        """The needed round in minutes."""
        return in_minutes(self.half_minutes)

    def of(self, kind: Kind) -> StationMinutes:
        """What the station of this kind needs."""
        return next(station for station in self.stations if station.kind is kind)


@dataclass(frozen=True, slots=True)
class RoundRange:
    """Whole minutes that a round may last: from `low` (what is needed) to `target` (what it should be).

    `differ`: the rounds of a unit may have different lengths, so that there are more minutes in all.
    """

    low: int
    target: int
    differ: bool = False


def needed(unit: Unit, defaults: Defaults) -> Needed:
    """Work out what the three stations of `unit` need."""
    least, most = unit.round_minutes or (defaults.round_least, defaults.round_most)
    grade = unit.grades[0]
    online, hands_on, teacher_led = (
        StationMinutes(station.kind, tuple(part for part in _parts(station, grade, defaults) if part.half_minutes > 0))
        for station in unit.stations
    )
    return Needed((online, hands_on, teacher_led), least, most)


def round_range(unit: Unit, defaults: Defaults) -> RoundRange | None:
    """Return the station minutes that suit `unit`, or None where a station needs more than the upper bound.

    low = max(lower bound, needed), up to a whole minute; target = min(upper bound, max(low, needed + extra)), down to one,
    or the upper bound itself where the unit asks to stretch.
    """
    asks = needed(unit, defaults)
    need = asks.half_minutes
    if need > 2 * asks.most:
        return None
    low = max(asks.least, -(-need // 2))
    wanted = max(low, (need + halves(defaults.target_extra)) // 2)
    return RoundRange(low, asks.most if unit.stretch else min(asks.most, wanted), differ=unit.prefer == "minutes")


def _parts(station: AnyStation, grade: int, defaults: Defaults) -> list[Part]:
    parts = [Part("step", halves(step.minutes), step.times, step.text, index) for index, step in enumerate(station.steps)]
    match station:
        case OnlineStation():
            explore = defaults.explore if station.explore_minutes is None else station.explore_minutes
            return [Part("explore", halves(explore)), *parts]
        case HandsOnStation():
            return [Part("set_up", halves(station.set_up_minutes)), *parts, Part("clean_up", halves(station.clean_up_minutes))]
        case TeacherLedStation():
            return [*_to_read(station, grade), *parts, *_to_answer(station, defaults)]


def _to_read(station: TeacherLedStation, grade: int) -> list[Part]:
    if station.read is None:
        return []
    return [Part("reading", reading_halves(station.read.words, grade), text=station.read.path)]


def _to_answer(station: TeacherLedStation, defaults: Defaults) -> list[Part]:
    """Core questions and check items; support and challenge prompts are alternatives and cost nothing."""
    questions = [
        Part("question", halves(defaults.question), text=question.ask, index=index)
        for index, question in enumerate(station.questions)
        if question.prompt is Prompt.CORE
    ]
    items = [Part("quick_check", halves(defaults.check_item), text=item.ask, index=index) for index, item in enumerate(station.quick_check)]
    return questions + items
