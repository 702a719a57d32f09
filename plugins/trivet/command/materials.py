"""`trivet materials`: what all classes need together, what is short and what would cure it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import date
from typing import TYPE_CHECKING

import click

from trivet.command.asked import as_day, as_json, stop
from trivet.command.root import root_of
from trivet.model.department import Department
from trivet.planning.say import say_date, say_list, say_money, say_number, say_weekdays

if TYPE_CHECKING:
    from trivet.planning.department_materials import DepartmentMaterials, Span
    from trivet.planning.stores.cures import Cure
    from trivet.planning.stores.needs import Reusable, UsedUp

PAPER = {"station_cards": "station cards", "help_slips": "help slips", "write_ups": "write-ups"}


@click.command(short_help="Print the materials of all classes together.")
@click.option("--week", "day", metavar="DATE", callback=as_day, help="One week with its tasks and cures: any day of it.")
@click.option("--json", "json", is_flag=True, help="Print the same as data.")
@click.pass_context
def materials(context: click.Context, day: date | None, json: bool) -> None:
    """Print the materials of all classes together: kit at one time, used-up things in all, devices, what to buy and print.

    Without --week: each term and the year, and which weeks have something short.
    """
    from trivet.planning.department import plan_department
    from trivet.planning.department_materials import department_materials
    from trivet.planning.materials_data import VERSION, materials_json, span_json

    department = _department(context)
    found = department_materials(department, plan_department(department))
    if day is None:
        click.echo(as_json(materials_json(found, department)) if json else "\n".join(_overview(found, department)))
        return
    week = found.week_of(day)
    if json:
        click.echo(as_json({"materials": VERSION, "week": None if week is None else span_json(week, department)}))
    elif week is not None:
        click.echo("\n".join(_lines(week, department)))
    else:
        others = ", ".join(each.first.isoformat() for each in found.weeks) or "none so far; write a run into school/runs.yml"
        click.echo(f"Nothing is planned in the week of {say_date(day)}. Weeks with something: {others}")


def _department(context: click.Context) -> Department:
    """Return the department; exits with 1 and the report where the school or a unit that is run can't be read."""
    from trivet.planning.timed_runs import settled
    from trivet.reading import report
    from trivet.reading.department import read_department

    read = read_department(root_of(context))
    errors = [problem for problem in read.problems if problem.severity == "error"]
    of_school = [problem for problem in errors if problem.place.file.startswith("school/")]
    if read.department is None or of_school:
        click.echo(report.text(of_school or errors, read.sources), nl=False, err=True)
        context.exit(1)
    missing = [run.unit for run in read.department.school.runs if run.unit not in read.department.units]
    if missing:
        stop(context, [f"{say_list(sorted(set(missing)))} can't be read, so the totals would be wrong; trivet check says what to write"])
    return settled(read.department)


def _overview(found: DepartmentMaterials, department: Department) -> Iterator[str]:
    from trivet.planning.stores.sentences import short_of

    if found.year is None:
        yield "No lessons are planned yet: write a run into school/runs.yml."
        return
    for span in (*found.terms, found.year):
        yield from (*_lines(span, department), "")
    yield "Weeks"
    for week in found.weeks:
        short = ", ".join(f"short of {short_of(each)}" for each in week.short) or "nothing short"
        yield f"  {week.first}: {_runs(week, department)}; {short}"


def _lines(span: Span, department: Department) -> Iterator[str]:
    """Yield one stretch of the year as lines to read."""
    week = bool((span.last - span.first).days == 6 and not span.name)
    yield f"{f'Week of {say_date(span.first)}' if week else span.name or 'The whole year'}: {_runs(span, department)}"
    parts = (
        ("Short", _short(span, department)),
        ("Kit, most at one time", _kit(span.reusable, department)),
        ("Used up, in all", _used_up(span.used_up)),
        ("Devices, most at one time", _kit(span.devices, department)),
        ("Shopping list", _shopping(span, department)),
        ("Print", (f"  {each.count:,} {PAPER[each.kind]} ({each.pages:,} pages)" for each in span.prints)),
        ("Set out and take in", _tasks(span, department)),
    )
    for title, lines in parts:
        said = list(lines)
        if said:
            yield from ("", title, *said)


def _runs(span: Span, department: Department) -> str:
    by_unit: dict[str, list[str]] = {}
    for run in span.runs:
        by_unit.setdefault(run.unit, []).append(run.class_id)
    return "; ".join(f"{department.units[unit].title} in {', '.join(classes)}" for unit, classes in by_unit.items())


def _short(span: Span, department: Department) -> Iterator[str]:
    from trivet.planning.stores.sentences import clash, headline

    for each in span.shortages:
        yield f"  {headline(each.lack, department.school.rooms)}"
        yield f"    {clash(each.lack, department.school.rooms)}"
        yield from (f"    {number}. {_cure(cure)}" for number, cure in enumerate(each.cures, start=1))


def _cure(cure: Cure) -> str:
    writes = [f"write `{line}` at {at.file}:{at.line}:{at.column}" for line, at in cure.writes]
    return f"{cure.title}: {'; '.join([*cure.then, *writes])}"


def _kit(needs: Iterable[Reusable], department: Department) -> Iterator[str]:
    from trivet.planning.stores.sentences import place, things, why

    for each in needs:
        where = place(each.pool, department.school.rooms)
        yield f"  {things(each.need, each.pool)}{f' ({where})' if where else ''}{_against(each)}: {why(each)}"


def _used_up(needs: Iterable[UsedUp]) -> Iterator[str]:
    from trivet.planning.stores.sentences import things, why_used_up

    for each in needs:
        where = f" ({each.pool.place})" if each.pool.place else ""
        yield f"  {things(each.need, each.pool, each.unit)}{where}{_against(each)}: {why_used_up(each)}"


def _against(need: Reusable | UsedUp) -> str:
    if need.have is None:
        return ", not counted"
    from trivet.planning.stores.needs import UsedUp

    unit = f" {need.unit}" if isinstance(need, UsedUp) and need.unit != "each" else ""
    return f", have {say_number(need.have)}{unit}" + (f", short {say_number(need.short)}{unit}" if need.short else "")


def _shopping(span: Span, department: Department) -> Iterator[str]:
    from trivet.planning.stores.purchases import total

    locale = department.school.settings.locale
    for each in span.purchases:
        amount = f"{say_number(each.amount)}{' ×' if each.unit == 'each' else f' {each.unit}'} {each.item}"
        packs = f", {each.packs} {'pack' if each.packs == 1 else 'packs'} of {say_number(each.pack)}" if each.packs and each.pack else ""
        where = f" ({each.place})" if each.place else ""
        cost = "no price" if each.cost is None else say_money(each.cost, locale)
        yield f"  {amount}{where}{packs}: {cost}{' (or borrow)' if each.use == 'reusable' else ''}"
    if len(span.purchases) > 1:
        yield f"  together {say_money(total(span.purchases), locale)}"


def _tasks(span: Span, department: Department) -> Iterator[str]:
    from trivet.planning.stores.sentences import task_text, turn_round_text

    rooms, units = department.school.rooms, department.units
    for each in span.tasks:
        yield f"  {rooms[each.room].name if each.room in rooms else each.room}, {say_weekdays(each.dates)}"
        for task in each.tasks:
            word = "after" if task.kind == "take_in" else "before"
            yield f"    {word} {task.at:%H:%M}: {task_text(task, units[task.unit].title)}"
    for short in span.turn_rounds:
        room = rooms[short.room].name if short.room in rooms else short.room
        yield f"  Advice: {turn_round_text(short, units[short.unit].title, room)}"
