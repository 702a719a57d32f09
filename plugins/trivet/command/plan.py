"""`trivet plan UNIT --class CLASS`: what was worked out for one run."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from decimal import Decimal

import click

from trivet.command.asked import as_day, as_json, department_of, known_names, run_asked, stop
from trivet.command.private_side import private_side
from trivet.command.root import root_of
from trivet.model.plan import Block, MaterialTotal, Plan
from trivet.planning.grouping.sentences import written
from trivet.planning.materials import DEVICE
from trivet.planning.say import say_date

SPOKEN = {"evidence": "evidence line", "write_up": "write-up"}
"""Kinds of blocks that are not called as their word says."""

AT_THE_TOP = ("begins", "by")
"""Notes that stand above the days: what the first and the last one come from."""


_WHAT_IF = (
    'Show what would change if a day were otherwise, such as "2026-12-02 early release", "2026-12-02 lost" or "2026-12-02 closed"; '
    "may be given several times. Writes nothing."
)


@click.command(short_help="Print the plan of a unit, or of a week; ask what if.")
@click.argument("unit", default="")
@click.option("--class", "class_id", default="", metavar="CLASS", help="The class's id in school/classes.yml, such as p1.")
@click.option(
    "--week", "week", metavar="DATE", callback=as_day, help="Print a week of all classes (or of one): any day of it, such as 2026-11-30."
)
@click.option("--what-if", "what_if", multiple=True, metavar="TEXT", help=_WHAT_IF)
@click.option("--json", "json", is_flag=True, help="Print it as data; a plan as it is published.")
@click.option("--private", "private", is_flag=True, help="With groups that are kept in the private folder alone. Not for publishing.")
@click.pass_context
def plan(
    context: click.Context, *, unit: str, class_id: str, week: date | None, what_if: tuple[str, ...], json: bool, private: bool
) -> None:
    """Print the plan of a unit in a class: days with clock times, rounds, groups, spot checks, materials.

    With --week instead: the lessons of a week. With --what-if: what would move and shrink, for all runs or the one asked.
    """
    if private and (week or what_if):
        raise click.UsageError("--private stands with a unit and its class alone; leave it out")
    if week or what_if:
        _several(context, unit, class_id, week=week, what_if=what_if, json=json)
        return
    if not unit or not class_id:
        missing = "UNIT and --class" if not unit and not class_id else "--class" if unit else "UNIT"
        raise click.UsageError(f"write {missing}, such as trivet plan float-or-sink --class p1; or --week or --what-if for all classes")
    _one(context, unit, class_id, json=json, private=private)


def _several(context: click.Context, unit: str, class_id: str, *, week: date | None, what_if: tuple[str, ...], json: bool) -> None:
    """A week, or what would change, or the week as it would then be."""
    from trivet.command import week as a_week
    from trivet.command import what_if as supposed
    from trivet.planning.department import plan_department
    from trivet.planning.differences import differences
    from trivet.planning.suppose import known_before_all, suppose

    department = department_of(context, unit)
    if unit and class_id:
        run_asked(department, unit, class_id)
    elif unit or class_id:
        known_names(department, unit, class_id)
    changes = supposed.read(what_if, department)
    before = plan_department(department)
    then = suppose(department, changes, before.plans, class_id, unit) if changes else department
    after = plan_department(then) if changes else before
    if week is not None:
        shown = [each for each in after.plans if class_id in ("", each.class_id) and unit in ("", each.unit)]
        click.echo(
            as_json(a_week.as_data(then, shown, week)) if json else "\n".join(a_week.lines(then, shown, week, supposed.supposed(changes)))
        )
        return
    found = [each for each in differences(before, after) if class_id in ("", each.class_id) and unit in ("", each.unit)]
    new = supposed.new_problems(before, after, class_id, unit)
    if json:
        click.echo(as_json(supposed.as_data(changes, found, new)))
        return
    in_time = plan_department(known_before_all(department, then))
    notice = any(each.lines for each in differences(after, in_time))
    click.echo("\n".join(supposed.lines(department, changes, found, new, notice=notice)))


def _one(context: click.Context, unit: str, class_id: str, *, json: bool, private: bool) -> None:
    """The plan of one run."""
    from trivet.command.private_plan import private_plan
    from trivet.planning.department import plan_department
    from trivet.planning.plan_data import plan_json

    department = department_of(context, unit)
    run = run_asked(department, unit, class_id)
    leveled = private_side(root_of(context), department).leveled(class_id) if private else {}
    found = private_plan(department, leveled, class_id, unit)
    if found is None:
        untimed = plan_department(department).not_planned
        reason = next((each.reason for each in untimed if each.run == run), "it could not be planned")
        stop(context, [f"{unit} in class {class_id} has no plan: {reason}"])
    click.echo(as_json(plan_json(found)) if json else "\n".join(lines(found, department.units[unit].title)))


def lines(found: Plan, title: str) -> Iterator[str]:
    """Yield a plan as lines to read."""
    yield f"{title} ({found.unit}), class {found.class_id}, {'whole-class rounds' if found.way == 'whole_class' else 'rotating rounds'}"
    for part in (days, rounds, groups, spot_checks, materials, cautions, notes):
        said = list(part(found))
        if said:
            yield from ("", *said)


def days(found: Plan) -> Iterator[str]:
    """Yield the pre-check and the days with their blocks."""
    yield from (note.text for note in found.notes if note.code in AT_THE_TOP)
    if found.pre_check is not None:
        yield f"Pre-check: {say_date(found.pre_check.date)}, {found.pre_check.start:%H:%M}, {minutes(found.pre_check.minutes)}"
    for day in found.days:
        yield f"{say_date(day.date)}: {day.day_type.replace('_', ' ')} day, {day.start:%H:%M} to {day.end:%H:%M}, {day.minutes} min"
        yield from (block_line(block) for block in day.blocks)
        if day.surplus_minutes:
            yield f"         {minutes(day.surplus_minutes)} left"


def rounds(found: Plan) -> Iterator[str]:
    """Yield the rounds and who is where."""
    for each in found.rounds:
        places = each.stations or {}
        nobody = "the groups are not drawn yet" if each.stations is None else "nobody"
        where = ", ".join(f"{letter} {kind.value.replace('_', '-')}" for letter, kind in places.items()) or nobody
        yield f"Round {each.round}: {say_date(each.date)}, {each.minutes} min{', half done' if each.half else ''}: {where}"


def groups(found: Plan) -> Iterator[str]:
    """Yield the groups as written lists."""
    yield from written(found.groups or {})


def spot_checks(found: Plan) -> Iterator[str]:
    """Yield the spot checks."""
    for number, check in enumerate(found.spot_checks):
        if number == 0:
            yield "Spot checks"
        yield f"  round {check.round}, {check.team}, {check.seat}: {check.ask} Listen for: {check.listen_for}"


def materials(found: Plan) -> Iterator[str]:
    """Yield what is needed, and what is short."""
    for number, total in enumerate(found.materials):
        if number == 0:
            yield "Materials"
        short = f", {quantity(total.short, total.unit)} short" if total.short else ""
        yield f"  {thing(total)}{', used up' if total.use == 'used up' else ''}{short}"


def thing(total: MaterialTotal) -> str:
    """Return what is needed as `3 × graduated cylinder 25 mL`, `594 mL water` or `5 devices`."""
    if total.item == DEVICE:
        return f"{total.need.normalize():f} {DEVICE}{'' if total.need == 1 else 's'}"
    return f"{quantity(total.need, total.unit)} {'× ' if total.unit == 'each' else ''}{total.item}"


def quantity(amount: Decimal, unit: str) -> str:
    """Return an amount with its unit."""
    return f"{amount.normalize():f}" + ("" if unit == "each" else f" {unit}")


def cautions(found: Plan) -> Iterator[str]:
    """Yield the cautions, under what outranks them."""
    for number, caution in enumerate(found.cautions):
        if number == 0:
            yield "Cautions (follow your local code and your district's policy)"
        yield f"  {caution.hazard}: {caution.text}"


def notes(found: Plan) -> Iterator[str]:
    """Yield the decisions in plain words."""
    yield from (note.text for note in found.notes if note.code not in AT_THE_TOP)


def block_line(block: Block) -> str:
    """Return a block as `  08:12  launch of round 1, 7 min`."""
    name = SPOKEN.get(block.kind, block.kind.replace("_", " "))
    if block.kind == "station":
        name = f"round {block.round} at the stations"
    elif block.round is not None:
        name += f" of round {block.round}"
    return f"  {block.start:%H:%M}  {name}, {minutes(block.minutes)}"


def minutes(count: float) -> str:
    """Return minutes without an idle .0."""
    return f"{count:g} min"
