"""`trivet new run UNIT --class CLASS`: the lines that put a unit on a class's calendar."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from trivet.command.asked import as_day, department_of, known_names, stop
from trivet.command.root import root_of
from trivet.command.run_lines import as_item, run_lines, with_run
from trivet.model.department import Department
from trivet.model.school import UNSETTLED, Run

if TYPE_CHECKING:
    from trivet.planning.propose import Proposal

RUNS = "school/runs.yml"
WAYS = {"rotate": "rotate", "whole class": "whole_class", "whole_class": "whole_class", "whole-class": "whole_class"}


@click.command(short_help="Propose when a class runs a unit.")
@click.argument("unit")
@click.option("--class", "class_id", required=True, metavar="CLASS", help="The class's id in school/classes.yml, such as p1.")
@click.option("--starts", metavar="DATE", callback=as_day, help="The first day, such as 2026-11-30; else the first that fits.")
@click.option("--after", default="", metavar="UNIT", help="Begin when this unit of the class has ended.")
@click.option("--gap", default="", metavar="TEXT", help='How long to wait after it, such as "2 weeks".')
@click.option(
    "--by", metavar="DATE", callback=as_day, help="The last date; without --starts and --after the unit begins as late as it can."
)
@click.option("--way", default="", metavar="WAY", help='"whole class" or rotate; else whole class for the first unit of the year.')
@click.option("--today", metavar="DATE", callback=as_day, help="The date from which to look; else today.")
@click.option("--write", is_flag=True, help="Add the lines to school/runs.yml.")
@click.pass_context
def run(context: click.Context, /, *, unit: str, class_id: str, way: str, today: date | None, write: bool, **how: object) -> None:
    """Propose a run of UNIT in a class: its days, what to decide, and the lines to add to school/runs.yml.

    Writes them only with --write, and only where nothing would be an error then.
    """
    from trivet.planning.propose import propose

    department = department_of(context, unit)
    known_names(department, unit, class_id)
    _refuse_twice(department, unit, class_id)
    wanted = _wanted(department, unit, class_id, how)
    found = propose(department, wanted, today or date.today(), way=_way(way))
    lines = run_lines(found.run)
    path = root_of(context) / RUNS
    text = _text(path)
    click.echo("\n".join(_said(department, found)))
    if found.errors:
        stop(context, ["", "Nothing was written: mend what is said above, or ask for another date."])
    if not write:
        click.echo(f"\nTo be added to {RUNS} (run it again with --write to add them):\n")
        click.echo("\n".join(as_item(lines, text)))
        return
    _write(context, path, text, lines)
    click.echo(f"The groups come next: trivet groups {unit} --class {class_id}")


def _said(department: Department, found: Proposal) -> Iterator[str]:
    """What would be: the days of the run, and what there is to decide."""
    from trivet.command.week import what_of
    from trivet.planning.say import say_date

    run_, title = found.run, department.units[found.run.unit].title
    way = "whole-class rounds" if run_.way == "whole_class" else "rotating rounds"
    first = ", its first unit of the year" if found.first and run_.way == "whole_class" else ""
    yield f"{title} in {run_.class_id}: {way}{first}"
    if found.plan is not None:
        taken = found.plan.pre_check
        if taken is not None:
            yield f"  {say_date(taken.date)}: pre-check, {taken.minutes:g} min at the end of the lesson"
        else:
            yield from (f"  {note.text}" for note in found.plan.notes if note.code == "pre_check")
        yield from (f"  {say_date(day.date)}: {what_of(found.plan, day)}" for day in found.plan.days)
    if found.not_planned is not None:
        yield f"  no days: {found.not_planned.reason}"
    reason = found.not_planned.reason.lower() if found.not_planned is not None else ""
    others = [problem for problem in found.problems if problem.what.lower() not in reason]
    if others:
        yield "To decide:"
        yield from (f"  {problem.severity}: {problem.sentence}" for problem in others)


def _wanted(department: Department, unit: str, class_id: str, how: dict[str, object]) -> Run:
    """The run that the options ask for; misuse (exit 2) where they can't be so."""
    from trivet.planning.dates import meetings, school_days
    from trivet.reading import forms

    starts, by, after, gap = how["starts"], how["by"], str(how["after"]), str(how["gap"])
    own = [each.unit for each in department.school.runs if each.class_id == class_id]
    if starts and after:
        raise click.UsageError("the start is given twice; leave out --starts, or --after")
    if gap and not after:
        raise click.UsageError("a gap stands only beside --after; write --after with the unit before it, or leave --gap out")
    if after and after not in own:
        from trivet.command.asked import remedy

        raise click.UsageError(f"{class_id} does not run {after}; {remedy(after, own, RUNS)}")
    days = forms.gap(gap) if gap else 0
    if isinstance(days, forms.Unreadable):
        raise click.UsageError(f"{days.what}; {days.remedy}")
    calendar = department.school.calendar
    for option, day in (("--starts", starts), ("--by", by)):
        if isinstance(day, date) and not calendar.first <= day <= calendar.last:
            year = f"a day from {calendar.first} to {calendar.last}"
            raise click.UsageError(f"{day} lies outside the school year; write {option} with {year}")
    if isinstance(starts, date):
        school_class = department.school.classes[class_id]
        met = [each.date for each in meetings(school_days(calendar), department.school.bells, school_class)]
        if starts not in met:
            following = next((day for day in met if day > starts), None)
            remedy_ = f"write --starts {following}, the next day on which it meets" if following else "write an earlier day"
            raise click.UsageError(f"{class_id} does not meet on {starts}; {remedy_}")
    return Run(
        class_id=class_id,
        unit=unit,
        starts=starts if isinstance(starts, date) else UNSETTLED,
        begins="date" if starts else "after" if after else "by" if by else "",
        after=after,
        gap_days=days,
        by=by if isinstance(by, date) else None,
    )


def _way(given: str) -> str:
    if given and given.lower() not in WAYS:
        raise click.UsageError(f'there is no way {given}; write --way rotate, or --way "whole class"')
    return WAYS.get(given.lower(), "")


def _refuse_twice(department: Department, unit: str, class_id: str) -> None:
    from trivet.planning.checks.places import of_run

    for each in department.school.runs:
        if (each.class_id, each.unit) == (class_id, unit):
            place = of_run(department, each)
            where = f"{place.file}:{place.line}"
            raise click.UsageError(f"{class_id} already runs {unit} ({where}), and a class runs a unit once a school year")


def _text(path: Path) -> str:
    return path.read_bytes().decode("utf-8") if path.is_file() else ""


def _write(context: click.Context, path: Path, text: str, lines: tuple[str, ...]) -> None:
    """Add the lines; where `trivet check` then finds an error that was not there, the file is put back."""
    from trivet.command.check import problems_of
    from trivet.model.problem import Severity

    root = root_of(context)
    before = {(p.code, p.place.file, p.what) for p in problems_of(root).problems}
    new_text, number = with_run(text, lines)
    path.write_bytes(new_text.encode("utf-8"))
    new = [p for p in problems_of(root).problems if p.severity is Severity.ERROR and (p.code, p.place.file, p.what) not in before]
    if new:
        path.write_bytes(text.encode("utf-8")) if text else path.unlink()
        stop(context, [*(problem.sentence for problem in new), f"Nothing was written: {RUNS} is as it was."])
    click.echo(f"\nAdded to {RUNS}, line {number}.")
