"""`trivet groups --year --class CLASS`: all units of a class, drawn together."""

from __future__ import annotations

from collections.abc import Iterator

import click

from trivet.command.asked import as_json, stop
from trivet.command.draw_unit import Said
from trivet.command.groups_asked import Asked
from trivet.command.keep_groups import keep_year
from trivet.command.whole_year import whole_year
from trivet.model.department import Department
from trivet.model.lock import ROLE_IDS
from trivet.model.school import SchoolClass
from trivet.planning.grouping.explain import who_with_whom
from trivet.planning.grouping.for_class import Unseated
from trivet.planning.grouping.kept import plain_groups
from trivet.planning.grouping.ledger import MAIN_DUTIES
from trivet.planning.grouping.past import passed
from trivet.planning.grouping.request import Conflict
from trivet.planning.grouping.sentences import conflict, duty, level_spread, unseated, widest_gap, year_quality
from trivet.planning.grouping.year import Year, YearUnit, draw_year, not_yet_together, year_ledger, year_role_spread


def year_groups(context: click.Context, asked: Asked) -> Iterator[str]:
    """Draw the year, keep it where asked, and yield what to print."""
    of = whole_year(context, asked)
    department, class_id = of.department, of.class_id
    past = frozenset(
        run.unit
        for run in of.runs
        if (class_id, run.unit) not in department.locks and run.unit not in of.own.leveled and passed(department, run, asked.today)
    )
    year = draw_year(department, class_id, of.roster, of.own, of.keeper, past=past)
    if isinstance(year, Unseated):
        stop(context, ["; ".join(unseated(year, of.number))])
    if isinstance(year, Conflict):
        stop(context, conflict(year, of.number))
    if not year:
        stop(context, [f"class {class_id} has no unit to draw this school year; write its rows into school/runs.yml"])
    said = keep_year(of.private, department, year) if asked.write else Said()
    if asked.json:
        yield as_json(as_data(of.school_class, year, said))
        return
    yield from lines(department, class_id, year)
    if asked.explain:
        yield from explained(of.school_class, year)
    if past:
        yield f"Left out, since they have begun without kept groups: {', '.join(sorted(past))}."
    yield f"Kept: {', '.join(said.written)}." if said.written else "Nothing was written; --write keeps the units that are new."


def lines(department: Department, class_id: str, year: Year) -> Iterator[str]:
    """Yield the year: a line for each unit, then duties and who has not been together."""
    school_class = department.school.classes[class_id]
    yield f"Class {class_id}, {school_class.size} students, {len(year)} units:"
    for unit in year:
        yield f"  {unit.run.starts} {unit.run.unit}: {state(unit)}"
    ledger = year_ledger(year, public=False)
    held = [
        f"{duty(role)} {min(times)} to {max(times)}"
        for role in MAIN_DUTIES
        if (times := [ledger.duties.get((seat, role), 0) for seat in school_class.seats])
    ]
    yield f"Duties over the year, how often each student: {', '.join(held)}; nobody's three differ by more than {year_role_spread(year)}."
    strangers = not_yet_together(year, school_class.seats)
    left = sum(len(others) for others in strangers.values()) // 2
    yield f"Pairs of students who are in no team together all year: {left} of {school_class.size * (school_class.size - 1) // 2}."
    for seat, others in strangers.items():
        if others:
            yield f"  {school_class.number(seat)} does not work with {', '.join(f'{other:02d}' for other in others)}"


def explained(school_class: SchoolClass, year: Year) -> Iterator[str]:
    """Yield the duties of each student, and the table of who is in a team with whom."""
    ledger = year_ledger(year, public=False)
    yield "Duties over the year, for each student:"
    for seat in school_class.seats:
        held = [f"{duty(role)} {ledger.duties.get((seat, role), 0)}" for role in ROLE_IDS[:4]]
        yield f"  {school_class.number(seat)} {', '.join(held)}"
    yield "Who is in a team with whom over the year:"
    yield from who_with_whom(ledger, school_class.seats)


def state(unit: YearUnit) -> str:
    """Return how one unit stands."""
    if unit.private:
        return "leveled, kept in the private folder"
    if unit.drawn is None or unit.request is None:
        return f"kept already, {year_quality(unit.lock.repeats, unit.lock.proved_minimum, None)}"
    spread = level_spread(unit.drawn, unit.request)
    quality = year_quality(unit.drawn.repeats, unit.drawn.proved_minimum, unit.drawn.own_minimum)
    return f"{quality}{f', {spread}' if spread else ''}"


def as_data(school_class: SchoolClass, year: Year, said: Said) -> dict[str, object]:
    """Return the year as plain data; leveled units without their groups."""
    ledger = year_ledger(year)
    return {
        "class": school_class.id,
        "units": [unit_data(unit) for unit in year],
        "role_spread": year_role_spread(year),
        "duties": {
            school_class.number(seat): {role: ledger.duties.get((seat, role), 0) for role in ROLE_IDS} for seat in school_class.seats
        },
        "not_together": {
            school_class.number(seat): [school_class.number(other) for other in others]
            for seat, others in not_yet_together(year, school_class.seats).items()
        },
        "written": list(said.written),
    }


def unit_data(unit: YearUnit) -> dict[str, object]:
    """Return one unit of the year as plain data."""
    drawn, request = unit.drawn, unit.request
    return {
        "unit": unit.run.unit,
        "starts": unit.run.starts.isoformat(),
        "kept": drawn is None,
        "groups": None if unit.private else plain_groups(unit.lock.groups),
        "repeats": None if unit.private else unit.lock.repeats,
        "pair_repeats": None if unit.private else unit.lock.pair_repeats,
        "proved_minimum": None if unit.private else unit.lock.proved_minimum,
        "own_minimum": drawn.own_minimum if drawn is not None else None,
        "level_spread_percent": widest_gap(drawn, request) if drawn is not None and request is not None else None,
    }
