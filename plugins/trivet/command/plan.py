"""`trivet plan UNIT --class CLASS`: what was worked out for one run."""

from __future__ import annotations

from collections.abc import Iterator

import click

from trivet.command.asked import as_json, department_of, run_asked, stop
from trivet.command.private_side import private_side
from trivet.command.root import root_of
from trivet.model.plan import Block, Plan
from trivet.planning.grouping.sentences import written
from trivet.planning.say import say_date

AT_THE_TOP = ("begins", "by")
"""Notes that stand above the days: what the first and the last one come from."""


@click.command()
@click.argument("unit")
@click.option("--class", "class_id", required=True, metavar="CLASS", help="The class's id in school/classes.yml, such as p1.")
@click.option("--json", "json", is_flag=True, help="Print the plan as data, as it is published.")
@click.option("--private", "private", is_flag=True, help="With groups that are kept in the private folder alone. Not for publishing.")
@click.pass_context
def plan(context: click.Context, unit: str, class_id: str, json: bool, private: bool) -> None:
    """Print the plan of a unit in a class: days with clock times, rounds, groups, spot checks, materials."""
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
        where = ", ".join(f"{letter} {kind.value.replace('_', '-')}" for letter, kind in places.items()) or "the groups are not drawn yet"
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
        amount = f"{total.need.normalize():f}" + ("" if total.unit == "each" else f" {total.unit}")
        short = f", short by {total.short.normalize():f}" if total.short else ""
        yield f"  {amount} {total.item}{', used up' if total.use == 'used up' else ''}{short}"


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
    of_round = f", round {block.round}" if block.round is not None else ""
    return f"  {block.start:%H:%M}  {block.kind.replace('_', ' ')}{of_round}, {minutes(block.minutes)}"


def minutes(count: float) -> str:
    """Return minutes without an idle .0."""
    return f"{count:g} min"
