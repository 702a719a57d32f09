"""`trivet groups UNIT --class CLASS`: draw groups, show them, keep them."""

from __future__ import annotations

from datetime import date, datetime

import click


@click.command()
@click.argument("unit")
@click.option("--class", "class_id", required=True, metavar="CLASS", help="The class's id in school/classes.yml, such as p1.")
@click.option("--leveled", is_flag=True, help="Station groups of near levels. They are kept in the private folder alone.")
@click.option("--write", is_flag=True, help="Keep the groups: school/groups/CLASS/UNIT.yml. Without it nothing is written.")
@click.option("--force", is_flag=True, help="Replace groups that the class has already worked in.")
@click.option("--json", "json", is_flag=True, help="Print JSON, for programs.")
@click.option("--today", type=click.DateTime(["%Y-%m-%d"]), metavar="DATE", help="The date of the draw; else today.")
@click.pass_context
def groups(
    context: click.Context, *, unit: str, class_id: str, leveled: bool, write: bool, force: bool, json: bool, today: datetime | None
) -> None:
    """Draw station groups, teams, partners and duty cards of a class for one unit.

    Levels and rules come from the class's private list; without one the draw goes by number and says so.
    The same list gives the same groups. What is printed are class numbers, never names.
    """
    from trivet.command.asked import as_json
    from trivet.command.draw_unit import draw_unit
    from trivet.command.keep_groups import keep_groups

    job = draw_unit(context, unit, class_id, leveled=leveled)
    said = keep_groups(context, job, today.date() if today else date.today(), force=force) if write else None
    click.echo(as_json(job.as_data(said)) if json else "\n".join(job.lines(said)))
