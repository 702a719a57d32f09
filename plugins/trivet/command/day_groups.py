"""`trivet groups UNIT --class CLASS --day DATE`: kept groups for one day, closed up around who is absent. Nothing is written."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

import click

from trivet.command.asked import as_json, stop
from trivet.command.draw_unit import kept_job
from trivet.command.groups_asked import Asked
from trivet.model.school import SchoolClass
from trivet.planning.grouping.change import Changed, spoken
from trivet.planning.grouping.day import for_the_day
from trivet.planning.grouping.kept import plain_groups
from trivet.planning.grouping.past import dates_of
from trivet.planning.grouping.sentences import sentence, written
from trivet.planning.say import say_date


def day_groups(context: click.Context, asked: Asked) -> Iterator[str]:
    """Yield the groups of a day, with those left out whom the absences of the private list or --absent name."""
    job, own = kept_job(context, asked)
    day = asked.day or asked.today
    dates = dates_of(job.department, job.run)
    if day not in dates:
        days = ", ".join(each.isoformat() for each in dates)
        stop(
            context,
            [f"class {job.run.class_id} does not work on {job.run.unit} on {say_date(day)}; write --day and one of {days}"],
        )
    school_class = job.department.school.classes[job.run.class_id]
    away = own.absences.get(day, frozenset()) | _named(asked, school_class)
    found = for_the_day(job.drawn.groups, away, job.request)
    lines = spoken_day(found, school_class, day)
    if asked.json:
        unit = {"unit": job.run.unit, "class": job.run.class_id, "date": day.isoformat()}
        yield as_json({**unit, "groups": plain_groups(found.groups), "changes": lines})
        return
    yield f"{job.department.units[job.run.unit].title} ({job.run.unit}), class {job.run.class_id}, {say_date(day)}."
    yield from map(sentence, lines)
    yield from written(found.groups)
    yield "Nothing was written: the kept groups stay, and tomorrow everyone is back in them."


def spoken_day(found: Changed, school_class: SchoolClass, day: date) -> list[str]:
    """Return who is absent, who moves for the day, and which teams work with fewer than three."""
    if not found.left:
        return [f"nobody is absent on {say_date(day)}: the kept groups hold"]
    name = {seat: school_class.number(seat) for seat in (*school_class.seats, *school_class.gone)}
    _, *rest = spoken(found, name)
    small = [code for group in found.groups.values() for code, team in group.teams.items() if len(team) < 3 and len(group.teams) > 1]
    return [
        f"absent: {', '.join(name[seat] for seat in found.left)}",
        *(f"{line} (for the day)" if found.moves else line for line in rest),
        *([f"fewer than three, since no few moves mend it: {', '.join(small)}"] if small else []),
    ]


def _named(asked: Asked, school_class: SchoolClass) -> frozenset[int]:
    """Return the seats that --absent names; misuse (exit 2) where one is no number of the class."""
    seats = set()
    for text in asked.absent.split(",") if asked.absent else ():
        digits = text.strip().removeprefix(f"{school_class.id}-")
        if not (digits.isascii() and digits.isdigit() and int(digits) in school_class.seats):
            raise click.UsageError(f"--absent: {text.strip()[:20]} is no number of class {school_class.id}; write numbers such as 7, 12")
        seats.add(int(digits))
    return frozenset(seats)
