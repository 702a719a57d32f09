"""`trivet groups --students N`: how long can a class of that size go?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import click

from trivet.command.asked import as_json
from trivet.command.groups_asked import Asked
from trivet.planning.grouping.weeks import WeekOfTeams, weeks
from trivet.planning.team_sizes import group_sizes, team_sizes


def draw_weeks(_: click.Context, asked: Asked) -> Iterator[str]:
    """Yield the units, and whether the first repeat could have been avoided."""
    students = asked.students or 0
    team = asked.team or 4
    # Where nobody has a teammate no repeat ever comes: one unit says it all.
    units = asked.units or (1 if max(team_sizes(students if asked.whole_class else group_sizes(students)[0], team)) == 1 else None)
    found = weeks(students, team, units, whole_class=asked.whole_class)
    if asked.json:
        yield as_json({"students": students, "units": [as_data(unit) for unit in found]})
        return
    for number, unit in enumerate(found, start=1):
        yield f"Unit {number}: {repeats(unit)}"
        for place, group in enumerate(unit.station_groups or (tuple(range(len(unit.teams))),)):
            letter = f"{'ABC'[place]}  " if unit.station_groups else ""
            yield f"  {letter}" + "   ".join(" ".join(map(str, unit.teams[team])) for team in group)
    yield ending(students, found, asked.units)


def as_data(unit: WeekOfTeams) -> dict[str, object]:
    """Return one unit as plain data; without station groups where the class was drawn as a whole."""
    data: dict[str, object] = {"teams": [list(team) for team in unit.teams]}
    if unit.station_groups:
        data["station_groups"] = [list(group) for group in unit.station_groups]
    return {**data, "repeats": unit.repeats, "proved_minimum": unit.proved_minimum}


def repeats(unit: WeekOfTeams) -> str:
    """Return how many teammates have met before, and whether fewer are possible after the units before."""
    if not unit.repeats:
        return "all teammates are new"
    least = "fewer is not possible after these units" if unit.unavoidable else f"at least {unit.proved_minimum} after these units"
    return f"repeats {unit.repeats}; {least}"


def ending(students: int, found: Sequence[WeekOfTeams], units: int | None) -> str:
    """Return the answer to "how long can a class of N go?"."""
    if all(len(team) == 1 for unit in found for team in unit.teams):
        return f"In a class of {students} nobody has a teammate: every station group is one student, so there is nothing to repeat."
    new = next((number for number, unit in enumerate(found) if unit.repeats), len(found))
    said = f"A class of {students} goes {new} {'unit' if new == 1 else 'units'} without a repeated teammate"
    if new < len(found):
        first = found[new]
        proof = "that one could not be avoided after these" if first.unavoidable else "whether that could be avoided is not proved"
        return f"{said}; unit {new + 1} is the first with one, and {proof}."
    return f"{said}{'' if units is not None else ', and further than a school year'}."
