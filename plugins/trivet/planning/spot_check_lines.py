"""The questions a team can be asked at a station, built from the unit itself."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from trivet.model.school import Role
from trivet.model.station import AnyStation, HandsOnStation, Kind, TeacherLedStation
from trivet.model.unit import Unit
from trivet.planning import words
from trivet.planning.cautions import hazards_of

SPOT_CHECK_KINDS = ("own", "first_step", "record", "your_job", "done", "safety")
"""`own` is a line of the author's; the order is the one in which they are taken."""


@dataclass(frozen=True, slots=True)
class Line:
    """An open question of one of SPOT_CHECK_KINDS, with what to listen for."""

    kind: str
    ask: str
    listen_for: str


def lines(unit: Unit, kind: Kind, duties: Sequence[Role]) -> tuple[Line, ...]:
    """Return what may be asked at one station of a student who holds `duties` (() where cards are blank), at least one line."""
    station = next(each for each in unit.stations if each.kind is kind)
    own = [Line("own", line.ask, line.listen_for) for line in unit.spot_checks if line.station is kind]
    found = [*own, *_first_step(station), *_record(station), *_your_job(unit, station, duties), *_done(station), *safety(unit, kind)]
    return tuple(found) or (Line("first_step", words.FIRST_STEP[kind], station.goal),)


def safety(unit: Unit, kind: Kind) -> tuple[Line, ...]:
    """Return one question a hazard; () where the station has none."""
    if kind is not Kind.HANDS_ON:
        return ()
    return tuple(Line("safety", hazard.ask, hazard.listen_for) for hazard in hazards_of(unit))


def _first_step(station: AnyStation) -> Iterator[Line]:
    ask = words.FIRST_STEP[station.kind]
    if isinstance(station, TeacherLedStation) and station.start_alone:
        yield Line("first_step", ask, station.start_alone)
    elif isinstance(station, TeacherLedStation) and station.read is not None:
        yield Line("first_step", ask, words.READS)
    elif station.steps:
        step = station.steps[0]
        yield Line("first_step", ask, words.TIMES.format(text=step.text, times=step.times) if step.times > 1 else step.text)


def _record(station: AnyStation) -> Iterator[Line]:
    if station.record is not None and station.record.columns:
        columns = ", ".join(station.record.columns)
        rows = len(station.record.rows)
        yield Line("record", words.RECORD[station.kind], words.ROWS.format(columns=columns, rows=rows) if rows > 1 else columns)


def _your_job(unit: Unit, station: AnyStation, duties: Sequence[Role]) -> Iterator[Line]:
    """Only where students work as a team: at the online station they sit in pairs."""
    if station.work_in != "team" and (station.work_in or not isinstance(station, HandsOnStation)):
        return
    if unit.roles == "students":
        yield Line("your_job", words.YOUR_JOB, words.DUTY_CHOSEN_BY_STUDENTS)
    elif duties:
        yield Line("your_job", words.YOUR_JOB, " ".join(words.DUTY.format(name=duty.name, does=duty.does) for duty in duties))


def _done(station: AnyStation) -> Iterator[Line]:
    if station.done_when:
        yield Line("done", words.DONE[station.kind], station.done_when)
