"""Whether a unit's stations fit its round."""

from __future__ import annotations

from collections.abc import Iterator

from trivet.model.problem import Problem, Severity
from trivet.model.school import Defaults
from trivet.model.unit import ROUND_LEAST, ROUND_MOST, Unit
from trivet.planning.halves import halves, spoken
from trivet.planning.minutes import Needed, Part, StationMinutes, needed, round_range
from trivet.planning.say import STATION_NAMES


def check_unit(unit: Unit, defaults: Defaults) -> Iterator[Problem]:
    """Yield the problems of one unit's minutes: too long (error), under the shortest round or idle (advice)."""
    asks = needed(unit, defaults)
    yield from (_too_long(unit, asks, station) for station in asks.stations if station.half_minutes > 2 * asks.most)
    allowed = round_range(unit, defaults)
    if allowed is None:
        return
    if _whole(asks.half_minutes) < asks.least:
        yield _short(unit, asks)
    yield from _idle(unit, asks, allowed.target, halves(defaults.idle))


def _whole(half_minutes: int) -> int:
    """Return the whole minutes that hold so many half minutes: rounds last whole minutes."""
    return -(-half_minutes // 2)


def _too_long(unit: Unit, asks: Needed, station: StationMinutes) -> Problem:
    over = station.half_minutes - 2 * asks.most
    name = STATION_NAMES[station.kind]
    parts = " + ".join(_spoken_part(part) for part in station.parts)
    longer = _whole(station.half_minutes)
    write = f", or write `round: {asks.least}-{longer} min` where a class has the time" if longer <= ROUND_MOST else ""
    return Problem(
        code="station-too-long",
        severity=Severity.ERROR,
        place=unit.places.key("stations", name),
        where=name,
        what=f"this station needs {spoken(station.half_minutes)} min, more than the longest round of {asks.most}: {parts}",
        remedy=f"cut {spoken(over)} min{write}",
    )


def _spoken_part(part: Part) -> str:
    """A part with its minutes, such as `step 2 9 (3 min, 3 times)`."""
    names = {"step": "step", "question": "question", "quick_check": "quick check item"}
    name = f"{names[part.kind]} {(part.index or 0) + 1}" if part.kind in names else part.kind.replace("_", " ")
    times = f" ({spoken(part.half_minutes)} min, {part.times} times)" if part.times > 1 else ""
    return f"{name} {spoken(part.total)}{times}"


def _short(unit: Unit, asks: Needed) -> Problem:
    longest = max(asks.stations, key=lambda station: station.half_minutes)
    shorter = _whole(asks.half_minutes)
    write = f", or write `round: {shorter}-{asks.most} min`" if shorter >= ROUND_LEAST else ""
    return Problem(
        code="round-short",
        severity=Severity.ADVICE,
        place=unit.places.key("stations"),
        what=(
            f"no station fills the shortest round of {asks.least} min: the longest, {STATION_NAMES[longest.kind]}, "
            f"needs {spoken(longest.half_minutes)}"
        ),
        remedy=f"add something for early finishers{write}",
    )


def _idle(unit: Unit, asks: Needed, round_minutes: int, idle_half_minutes: int) -> Iterator[Problem]:
    """Stations that have much less to do than the round and nothing for those who finish early."""
    for station, minutes in zip(unit.stations, asks.stations, strict=True):
        idle = 2 * round_minutes - minutes.half_minutes
        if idle < idle_half_minutes or station.finished_early:
            continue
        name = STATION_NAMES[station.kind]
        yield Problem(
            code="station-idle",
            severity=Severity.ADVICE,
            place=unit.places.key("stations", name),
            where=name,
            what=f"idle for {spoken(idle)} min in a round of {round_minutes}: it needs {spoken(minutes.half_minutes)}",
            remedy="write `finished early:` with something for early finishers, or add a step",
        )
