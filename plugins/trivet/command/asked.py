"""What a command was asked about: the department as written, and one run of it."""

from __future__ import annotations

import json as plain_json
from datetime import date
from typing import TYPE_CHECKING, NoReturn

import click

from trivet.command.root import root_of
from trivet.model.department import Department
from trivet.model.school import Run

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable

    from trivet.model.problem import Problem


def department_of(context: click.Context, unit: str = "") -> Department:
    """Return the department; exits with 1 and the report where the school, or the unit asked for (if any), can't be read."""
    from trivet.planning.timed_runs import settled
    from trivet.reading import report
    from trivet.reading.department import read_department

    read = read_department(root_of(context))
    blocking = [
        p for p in read.problems if p.severity == "error" and (read.department is None or p.place.file.startswith(f"units/{unit}/"))
    ]
    if read.department is None or (blocking and unit not in read.department.units):
        click.echo(report.text(blocking, read.sources), nl=False, err=True)
        context.exit(1)
    return settled(read.department)


def run_asked(department: Department, unit: str, class_id: str) -> Run:
    """Return the run that the words of a command name; misuse (exit 2) with the nearest name where there is none."""
    known_names(department, unit, class_id)
    runs = [run for run in department.school.runs if run.class_id == class_id]
    found = next((run for run in runs if run.unit == unit), None)
    if found is None:
        write = f"write `- class: {class_id}`, `unit: {unit}` and `starts:` there; if they stand there, `trivet check` says what is wrong"
        raise click.UsageError(f"school/runs.yml has no row for class {class_id} and unit {unit}; {write}")
    return found


def known_names(department: Department, unit: str = "", class_id: str = "") -> None:
    """Refuse a unit or a class that is not there (exit 2), with the nearest name; "" asks for none."""
    if unit and unit not in department.units:
        raise click.UsageError(f"there is no unit {unit}; {remedy(unit, department.units, 'units/')}")
    if class_id and class_id not in department.school.classes:
        raise click.UsageError(f"there is no class {class_id}; {remedy(class_id, department.school.classes, 'school/classes.yml')}")


def as_day(_context: click.Context, option: click.Parameter, given: str | None) -> date | None:
    """Return a date that an option gives; misuse (exit 2) where it is none."""
    if given is None:
        return None
    try:
        return date.fromisoformat(given)
    except ValueError:
        which = "any day of the week, such as" if "--week" in option.opts else "a day such as"
        raise click.UsageError(f"{given} is no date; write {option.opts[0]} with {which} 2026-11-30") from None


def remedy(word: str, known: Collection[str], home: str) -> str:
    """Return the nearest known word, or where the known ones stand."""
    from trivet.reading.near import nearest

    near = nearest(word, known)
    return f"did you mean {near}?" if near else f"write one that stands in {home}: {', '.join(sorted(known)) or 'none so far'}"


def stop(context: click.Context, lines: Iterable[str]) -> NoReturn:
    """Say why nothing was done, and exit with 1."""
    for line in lines:
        click.echo(line, err=True)
    context.exit(1)


def tell(problems: Collection[Problem]) -> None:
    """Report problems without quoting a line of the files they are in; nothing is said where there are none."""
    from trivet.reading import report

    if problems:
        click.echo(report.text(problems, {}), nl=False, err=True)


def stop_for(context: click.Context, problems: Collection[Problem]) -> NoReturn:
    """Report problems as `tell` does, and exit with 1."""
    tell(problems)
    context.exit(1)


def as_json(value: object) -> str:
    """Return a value as indented JSON."""
    return plain_json.dumps(value, ensure_ascii=False, indent=2)
