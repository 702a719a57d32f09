"""Whether an adult is near enough to each hazard."""

from __future__ import annotations

from collections.abc import Iterator

from trivet.model.department import Department
from trivet.model.problem import Problem, Severity
from trivet.model.school import Room, Run
from trivet.model.station import Kind
from trivet.model.unit import Unit
from trivet.planning.cautions import at_hand, hazards_of
from trivet.planning.checks.places import ROOMS, in_file, named, of_run
from trivet.planning.say import say_list
from trivet.planning.timed_runs import WHOLE_CLASS


def check_supervision(department: Department) -> Iterator[Problem]:
    """Yield errors of rotating runs with hazards: no adult at hand where one must stand, or a station nobody sees.

    In a whole-class round the teacher walks. An adult posted at the hands-on station is both at hand and sees it.
    """
    unseen: dict[str, Problem] = {}
    for run in department.school.runs:
        unit, school_class = department.units.get(run.unit), department.school.classes.get(run.class_id)
        if unit is None or school_class is None or run.way == WHOLE_CLASS or run.second_adult is Kind.HANDS_ON:
            continue
        if at_hand(unit):
            yield _second_adult(department, run, unit)
        room = department.school.rooms.get(school_class.room)
        if room is not None and room.id not in unseen and hazards_of(unit) and Kind.HANDS_ON not in room.sees:
            unseen[room.id] = _not_seen(department, run, unit, room)
    yield from unseen.values()


def _second_adult(department: Department, run: Run, unit: Unit) -> Problem:
    tags = say_list([hazard.tag for hazard in at_hand(unit)])
    return Problem(
        code="second-adult-needed",
        severity=Severity.ERROR,
        place=of_run(department, run),
        where=named(run),
        what=f"an adult must be at hand for {tags}, and the teacher sits at her own station",
        remedy=(
            "write `second adult: hands-on` if one will stand there; else demonstrate it in the launch, "
            "move it to the teacher-led station, or choose a gentler form"
        ),
    )


def _not_seen(department: Department, run: Run, unit: Unit, room: Room) -> Problem:
    tags = say_list([hazard.tag for hazard in hazards_of(unit)])
    return Problem(
        code="hands-on-not-seen",
        severity=Severity.ERROR,
        place=in_file(department, ROOMS, "rooms", room.id, "teacher sees"),
        where=room.name,
        what=f"the teacher can't see the hands-on station from the teacher-led one, and {named(run)} has {tags} there",
        remedy=(
            "write `teacher sees: hands-on` once the stations stand so that she can, "
            "or `second adult: hands-on` in every run with a hazard in this room"
        ),
    )
