"""`trivet groups --year --class CLASS`: all units of a class, drawn together."""

from __future__ import annotations

from collections.abc import Iterator

import click

from trivet.command.asked import as_json, department_of, remedy, stop
from trivet.command.draw_unit import Said, experience_of, roster_of
from trivet.command.groups_asked import Asked
from trivet.command.keep_groups import keep_year
from trivet.command.private_side import private_side
from trivet.command.root import root_of
from trivet.model.department import Department
from trivet.planning.grouping.explain import who_with_whom
from trivet.planning.grouping.for_class import Unseated, runs_in_order
from trivet.planning.grouping.kept import keep, plain_groups
from trivet.planning.grouping.ledger import MAIN_DUTIES
from trivet.planning.grouping.past import passed
from trivet.planning.grouping.request import Conflict
from trivet.planning.grouping.sentences import conflict, level_spread, unseated, year_quality
from trivet.planning.grouping.year import Year, YearUnit, draw_year, not_yet_together, year_ledger, year_role_spread


def year_groups(context: click.Context, asked: Asked) -> Iterator[str]:
    """Draw the year, keep it where asked, and yield what to print."""
    department = department_of(context, "")
    class_id = asked.class_id or ""
    if class_id not in department.school.classes:
        raise click.UsageError(f"there is no class {class_id}; {remedy(class_id, department.school.classes, 'school/classes.yml')}")
    school_class = department.school.classes[class_id]
    private = private_side(root_of(context), department)
    roster = roster_of(context, school_class, private)
    own = experience_of(context, department, school_class, private)
    key = private.key() if roster is not None and asked.write else b""
    past = frozenset(
        run.unit
        for run in runs_in_order(department, class_id)
        if (class_id, run.unit) not in department.locks and run.unit not in own.leveled and passed(department, run, asked.today)
    )
    year = draw_year(
        department,
        class_id,
        roster,
        own,
        lambda drawn, request, run, counted: keep(
            drawn, request, run, counted, drawn_on=asked.today, from_roster=roster is not None, key=key
        ),
        past=past,
    )
    if isinstance(year, Unseated):
        stop(context, ["; ".join(unseated(year, school_class.number))])
    if isinstance(year, Conflict):
        stop(context, conflict(year, school_class.number))
    if not year:
        stop(context, [f"class {class_id} has no unit to draw this school year; write its rows into school/runs.yml"])
    said = keep_year(private, department, year) if asked.write else Said()
    if asked.json:
        yield as_json(as_data(class_id, year, said))
        return
    yield from lines(department, class_id, year)
    if asked.explain:
        yield "Who is in a team with whom over the year:"
        yield from who_with_whom(year_ledger(year, public=False), school_class.seats)
    if past:
        yield f"Left out, since they have begun without kept groups: {', '.join(sorted(past))}."
    yield f"Kept: {', '.join(said.written)}." if said.written else "Nothing was written; --write keeps the units that are new."


def lines(department: Department, class_id: str, year: Year) -> Iterator[str]:
    """Yield the year: a line for each unit, then duty cards and who has not been together."""
    school_class = department.school.classes[class_id]
    yield f"Class {class_id}, {school_class.size} students, {len(year)} units:"
    for unit in year:
        yield f"  {unit.run.starts} {unit.run.unit}: {state(unit)}"
    ledger = year_ledger(year, public=False)
    held = [
        f"{role} {min(times)} to {max(times)}"
        for role in MAIN_DUTIES
        if (times := [ledger.duties.get((seat, role), 0) for seat in school_class.seats])
    ]
    yield f"Duty cards over the year, times a student: {', '.join(held)}; no student's three lie more than {year_role_spread(year)} apart."
    strangers = not_yet_together(year, school_class.seats)
    left = sum(len(others) for others in strangers.values()) // 2
    yield f"Pairs of students who are in no team together all year: {left} of {school_class.size * (school_class.size - 1) // 2}."
    for seat, others in strangers.items():
        if others:
            yield f"  {school_class.number(seat)} with none of {', '.join(f'{other:02d}' for other in others)}"


def state(unit: YearUnit) -> str:
    """Return how one unit stands."""
    if unit.private:
        return "leveled, kept in the private folder"
    if unit.drawn is None or unit.request is None:
        return f"kept already, {year_quality(unit.lock.repeats, unit.lock.proved_minimum, None)}"
    spread = level_spread(unit.drawn, unit.request)
    quality = year_quality(unit.drawn.repeats, unit.drawn.proved_minimum, unit.drawn.own_minimum)
    return f"{quality}{f', {spread}' if spread else ''}"


def as_data(class_id: str, year: Year, said: Said) -> dict[str, object]:
    """Return the year as plain data; leveled units without their groups."""
    return {
        "class": class_id,
        "units": [
            {
                "unit": unit.run.unit,
                "starts": unit.run.starts.isoformat(),
                "kept": unit.drawn is None,
                "groups": None if unit.private else plain_groups(unit.lock.groups),
                "repeats": None if unit.private else unit.lock.repeats,
                "pair_repeats": None if unit.private else unit.lock.pair_repeats,
                "proved_minimum": None if unit.private else unit.lock.proved_minimum,
            }
            for unit in year
        ],
        "role_spread": year_role_spread(year),
        "written": list(said.written),
    }
