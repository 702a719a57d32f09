"""`trivet groups`: draw groups for a unit, for a year or for a class of some size; keep them, change them, check them."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from datetime import date, datetime
from pathlib import Path

import click

from trivet.command.groups_asked import HOW, Asked
from trivet.command.plain_types import whole, word_of


@click.command()
@click.argument("unit", required=False)
@click.option("--class", "class_id", metavar="CLASS", help="The class's id in school/classes.yml, such as p1.")
@click.option("--year", is_flag=True, help="All units that the class runs, drawn together.")
@click.option("--how", callback=word_of(HOW), metavar="WAY", help="mixed, usual, leveled or auto; else as the unit says.")
@click.option("--leveled", is_flag=True, help="As --how leveled: groups of near levels, kept in the private folder alone.")
@click.option("--change", is_flag=True, help="Fit the kept groups to who has come or left, moving as few students as can be.")
@click.option(
    "--day", type=click.DateTime(["%Y-%m-%d"]), metavar="DATE", help="The kept groups of one day, closed up around who is absent."
)
@click.option("--absent", metavar="NUMBERS", help="With --day: who else is absent, such as 7,12.")
@click.option("--write", is_flag=True, help="Keep the groups: school/groups/CLASS/UNIT.yml. Without it nothing is written.")
@click.option("--force", is_flag=True, help="Replace groups that the class has already worked in.")
@click.option("--explain", is_flag=True, help="Say why: rules, what each aim reached, what limited it, and the proof.")
@click.option("--check", metavar="FILE", type=click.Path(path_type=Path, dir_okay=False), help="Check kept groups again, proof included.")
@click.option("--students", callback=whole(1, 60, "students"), metavar="N", help="How long can a class of N go? Needs no project.")
@click.option("--team", callback=whole(3, 5, "students in a team"), metavar="SIZE", help="The team size, 3, 4 or 5; else the department's.")
@click.option("--units", callback=whole(1, 60, "units"), metavar="N", help="With --students: so many units, not until the first repeat.")
@click.option("--whole-class", is_flag=True, help="With --students: teams for the whole class, without three station groups.")
@click.option("--json", "json", is_flag=True, help="Print JSON, for programs.")
@click.option("--today", type=click.DateTime(["%Y-%m-%d"]), metavar="DATE", help="The date of the draw; else today.")
@click.pass_context
def groups(context: click.Context, /, *, today: datetime | None, day: datetime | None, **options: object) -> None:
    """Draw station groups, teams, pairs and duties.

    Levels and rules come from the class's private list; without one the draw goes by number and says so.
    The same list gives the same groups. What is printed are class numbers, never names.
    """
    dates = {"today": today.date() if today else date.today(), "day": day.date() if day else None}
    asked = Asked(**dates, **options)  # type: ignore[arg-type]
    for line in job_of(asked)(context, asked):
        click.echo(line)


def job_of(asked: Asked) -> Callable[[click.Context, Asked], Iterable[str]]:
    """Return the job; misuse (exit 2) where the options don't go together."""
    if asked.students is not None:
        _refuse(("UNIT", asked.unit), ("--class", asked.class_id), ("--year", asked.year), ("--write", asked.write), to="--students")
        _refuse(("--how", asked.how), ("--leveled", asked.leveled), ("--change", asked.change), to="--students")
        from trivet.command.draw_weeks import draw_weeks

        return draw_weeks
    _refuse(("--units", asked.units), ("--whole-class", asked.whole_class), to="a class of the department")
    if asked.leveled and asked.how not in (None, "leveled"):
        raise click.UsageError(f"--leveled and --how {asked.how} ask for two ways; leave one out")
    if asked.check is not None:
        _refuse(("UNIT", asked.unit), ("--year", asked.year), ("--write", asked.write), to="--check")
        from trivet.command.check_groups import check_groups

        return check_groups
    if asked.class_id is None:
        raise click.UsageError("which class? write --class and its id, such as --class p1; or --students N for a class of that size")
    if asked.year:
        _refuse(("UNIT", asked.unit), ("--how", asked.how), ("--leveled", asked.leveled), ("--day", asked.day), to="--year")
        if asked.change:
            from trivet.command.year_change import year_change

            return year_change
        from trivet.command.year_groups import year_groups

        return year_groups
    if asked.unit is None:
        raise click.UsageError("which unit? write its folder's name before --class, or --year for all units of the class")
    if asked.day or asked.absent:
        _refuse(("--change", asked.change), ("--write", asked.write), ("--how", asked.how), ("--leveled", asked.leveled), to="--day")
        from trivet.command.day_groups import day_groups

        return day_groups
    from trivet.command.unit_groups import unit_groups

    return unit_groups


def _refuse(*given: tuple[str, object], to: str) -> None:
    for name, value in given:
        if value:
            raise click.UsageError(f"{name} does not go with {to}; leave it out")
