"""`trivet groups --year --change --class CLASS`: every coming unit, fitted to who has come or left."""

from __future__ import annotations

from collections.abc import Iterator

import click

from trivet.command.asked import as_json, stop
from trivet.command.groups_asked import Asked
from trivet.command.keep_groups import write
from trivet.command.whole_year import WholeYear, whole_year
from trivet.planning.grouping.change import spoken
from trivet.planning.grouping.for_class import Unseated
from trivet.planning.grouping.past import passed
from trivet.planning.grouping.sentences import unseated
from trivet.planning.grouping.year_change import FittedUnit, change_year


def year_change(context: click.Context, asked: Asked) -> Iterator[str]:
    """Fit the kept groups of all coming units, write them where asked, and yield what to print."""
    year = whole_year(context, asked)
    begun = {run.unit for run in year.runs if passed(year.department, run, asked.today)}
    found = change_year(year.department, year.class_id, year.roster, year.own, year.keeper, begun=begun)
    if isinstance(found, Unseated):
        stop(context, ["; ".join(unseated(found, year.number))])
    if not found:
        stop(context, [f"no groups are kept for class {year.class_id}; draw them first: trivet groups --year --class {year.class_id}"])
    written = tuple(keep(year, found)) if asked.write else ()
    if asked.json:
        yield as_json({"class": year.class_id, "units": [as_data(year, unit) for unit in found], "written": list(written)})
        return
    yield f"Class {year.class_id}, kept groups of {len(found)} units:"
    for unit in found:
        yield f"  {unit.run.starts} {unit.run.unit}: {state(year, unit)}"
    if asked.write:
        yield f"Kept: {', '.join(written)}." if written else "Nothing to write: all kept groups fit."
    else:
        yield "Nothing was written; --write keeps these changes."


def state(year: WholeYear, unit: FittedUnit) -> str:
    """Return what becomes of one unit."""
    if unit.begun:
        return "has begun, so its groups stay; seat newcomers by eye"
    if unit.stuck:
        return f"more than two would have to move; draw it anew: trivet groups {unit.run.unit} --class {year.class_id}"
    counts = "" if unit.after.repeats == unit.before.repeats else f"; counted again, repeats {unit.before.repeats} → {unit.after.repeats}"
    if unit.changed is None:
        return f"nobody came or left{counts}"
    return "; ".join(spoken(unit.changed, year.names)) + counts


def as_data(year: WholeYear, unit: FittedUnit) -> dict[str, object]:
    """Return what becomes of one unit as plain data."""
    return {
        "unit": unit.run.unit,
        "starts": unit.run.starts.isoformat(),
        "begun": unit.begun,
        "stuck": unit.stuck,
        "changes": spoken(unit.changed, year.names) if unit.changed is not None else [],
        "repeats": None if unit.before.leveled else unit.after.repeats,
    }


def keep(year: WholeYear, found: tuple[FittedUnit, ...]) -> Iterator[str]:
    """Write every lock that differs, and yield the files."""
    for unit in found:
        if unit.after == unit.before:
            continue
        path = year.private.leveled_path(year.class_id, unit.run.unit) if unit.before.leveled else None
        path = path or year.private.root / "school" / "groups" / year.class_id / f"{unit.run.unit}.yml"
        write(path, unit.after)
        yield year.private.shown(path)
