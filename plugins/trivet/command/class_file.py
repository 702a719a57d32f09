"""`trivet class-file CLASS`: the file that a teacher's phone opens, so that names stand in place of numbers."""

from __future__ import annotations

import json
import os
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from trivet.command.root import find_root, root_of

if TYPE_CHECKING:
    from collections.abc import Mapping

    from trivet.command.private_side import PrivateSide
    from trivet.model.department import Department
    from trivet.model.plan import Plan
    from trivet.model.roster import Roster, Student
    from trivet.model.school import SchoolClass

VERSION = 1
PRIVATE = "private"
EXAMPLE = "example"
"""The folder under private/ that is shared: it holds the made-up lists of the demo."""


@click.command("class-file", short_help="Write the file with names that a phone opens.")
@click.argument("class_id", metavar="CLASS")
@click.option("--out", type=click.Path(path_type=Path), metavar="FILE", help="Where to write it; else private/class-file-CLASS.json.")
@click.option("--levels", is_flag=True, help="Add the levels, for grouping on the device.")
@click.option("--today", type=click.DateTime(["%Y-%m-%d"]), metavar="DATE", help="The date in the file; else today.")
@click.pass_context
def class_file(context: click.Context, *, class_id: str, out: Path | None, levels: bool, today: datetime | None) -> None:
    """Write the file that a teacher's phone opens: numbers with names, and leveled groups of units that are still to come.

    It holds names, so it is written into the private folder, or outside the project. Send it to nobody.
    """
    from trivet.command.asked import as_json, department_of, remedy
    from trivet.command.private_side import private_side

    department = department_of(context)
    school_class = department.school.classes.get(class_id)
    if school_class is None:
        raise click.UsageError(f"there is no class {class_id}; {remedy(class_id, department.school.classes, 'school/classes.yml')}")
    private = private_side(root_of(context), department)
    target = out or own_folder(private) / f"class-file-{class_id}.json"
    if refused := refusal(target):
        raise click.UsageError(refused)
    roster = roster_of(context, school_class, private)
    made_on = today.date() if today else date.today()
    plans = coming_plans(department, private, class_id, made_on)
    strangers = not_yet(department, private, school_class, made_on)
    write(target, as_json(class_data(school_class, roster, plans, made_on, strangers, levels=levels)) + "\n")
    held = f"{len(roster.students)} students" + (f", leveled groups of {', '.join(plan.unit for plan in plans)}" if plans else "")
    click.echo(f"{out or private.shown(target)}: {held}. It holds names: keep it on your own devices, and out of what is shared.")


def roster_of(context: click.Context, school_class: SchoolClass, private: PrivateSide) -> Roster:
    """Return the class's private list; exits with 1 where there is none or it can't be read, and never quotes a line of it."""
    from trivet.command.asked import stop, stop_for, tell
    from trivet.command.private_side import has_errors
    from trivet.reading.private import check_local

    if problems := check_local(private.root):
        stop_for(context, problems)
    roster, problems = private.roster(school_class)
    if has_errors(problems):
        stop_for(context, problems)
    if roster is None:
        where = f"roster-{school_class.id}.csv"
        stop(context, [f"there is no private list for class {school_class.id}; write private/{where} with the titles seat,name"])
    tell(problems)
    return roster


def own_folder(private: PrivateSide) -> Path:
    """Return the folder for a file with names: the one outside the project, where trivet.local.yml names one, else private/."""
    inside = private.folder is None or private.folder.is_relative_to(private.root)
    return private.root / PRIVATE if inside or private.folder is None else private.folder


def refusal(target: Path) -> str | None:
    """Say why names may not be written to `target`: inside a project only private/ is kept from git and from the site.

    Nor over a file that is no class file.
    """
    path = target.resolve()
    root = find_root(path.parent)
    if root is not None:
        inside = path.relative_to(root).parts
        if inside[0] != PRIVATE or inside[1:2] == (EXAMPLE,):
            where = "/".join(inside[: 2 if inside[0] == PRIVATE else 1]) + ("/" if len(inside) > 1 else "")
            elsewhere = f"write --out private/{path.name}, or a place outside the project"
            return f"{where} is shared, and a class file holds names; {elsewhere}"
    if path.is_dir():
        return f"{target} is a folder; write the name of a file in it too"
    if path.exists() and not is_class_file(path):
        return f"{target} is there already and is no class file; write another name"
    return None


def is_class_file(path: Path) -> bool:
    """Say whether a file is one that this command wrote."""
    try:
        found = json.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return False
    return isinstance(found, dict) and "class_file" in found


def coming_plans(department: Department, private: PrivateSide, class_id: str, made_on: date) -> tuple[Plan, ...]:
    """Return the plans, with groups, of the class's leveled units that are not over yet, in order of their dates."""
    from trivet.command.private_plan import private_plan

    leveled = private.leveled(class_id)
    made = (private_plan(department, leveled, class_id, unit) for unit in leveled if (class_id, unit) not in department.locks)
    coming = [plan for plan in made if plan is not None and plan.days and plan.days[-1].date >= made_on]
    return tuple(sorted(coming, key=lambda plan: (plan.days[0].date, plan.unit)))


def not_yet(department: Department, private: PrivateSide, school_class: SchoolClass, made_on: date) -> Mapping[int, tuple[int, ...]]:
    """Return for each seat with whom it has not been in a team yet, in units that have begun, leveled ones among them."""
    from trivet.planning.grouping.for_class import runs_in_order
    from trivet.planning.grouping.ledger import ledger_of
    from trivet.planning.grouping.year import not_met

    leveled = private.leveled(school_class.id)
    begun = [run for run in runs_in_order(department, school_class.id) if run.starts <= made_on]
    locks = [leveled.get(run.unit) or department.locks.get((school_class.id, run.unit)) for run in begun]
    return not_met(ledger_of(lock.groups for lock in locks if lock is not None), school_class.seats)


def class_data(
    school_class: SchoolClass,
    roster: Roster,
    plans: tuple[Plan, ...],
    made_on: date,
    strangers: Mapping[int, tuple[int, ...]],
    *,
    levels: bool,
) -> dict[str, Any]:
    """Return a class file as data (schema/class-file.schema.json)."""
    from trivet.planning.plan_data import plan_json

    return {
        "class_file": VERSION,
        "class": school_class.id,
        "name": school_class.name,
        "made_on": made_on.isoformat(),
        "students": [_student(student, school_class, strangers, levels=levels) for student in roster.students],
        "plans": [plan_json(plan) for plan in plans],
    }


def _student(student: Student, school_class: SchoolClass, strangers: Mapping[int, tuple[int, ...]], *, levels: bool) -> dict[str, Any]:
    found: dict[str, Any] = {
        "seat": school_class.number(student.seat),
        "name": student.name,
        "adult": student.adult,
        "agreement": student.agreement,
        "not_yet": [school_class.number(other) for other in strangers.get(student.seat, ())],
    }
    return {**found, "level": student.level} if levels else found


def write(target: Path, text: str) -> None:
    """Write a file that its owner alone may read, from its first byte on."""
    target.parent.mkdir(parents=True, exist_ok=True)
    opened = os.open(target, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
    with os.fdopen(opened, "w", encoding="utf-8", newline="\n") as file:
        os.fchmod(file.fileno(), 0o600)
        file.write(text)
