"""`trivet groups UNIT --class CLASS`: one unit."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import click

from trivet.command.asked import as_json
from trivet.command.draw_unit import Job, change_unit, draw_unit
from trivet.command.groups_asked import Asked
from trivet.command.keep_groups import keep_groups
from trivet.model.lock import Groups
from trivet.planning.grouping.explain import explain, who_with_whom
from trivet.planning.grouping.kept import recounted
from trivet.planning.grouping.request import Way
from trivet.planning.grouping.year import not_met


def unit_groups(context: click.Context, asked: Asked) -> Iterator[str]:
    """Draw or change the groups of one unit, keep them where asked, and yield what to print."""
    unit, class_id = asked.unit or "", asked.class_id or ""
    job = change_unit(context, asked) if asked.change else draw_unit(context, unit, class_id, asked)
    said = keep_groups(context, job, asked.today, force=asked.force) if asked.write else None
    if asked.json:
        yield as_json(job.as_data(said))
        return
    yield from job.lines(said, [] if asked.write or asked.change else replaced(job))
    if asked.explain:
        yield ""
        yield from explained(job)


def replaced(job: Job) -> list[str]:
    """Return what other groups than the kept ones would change: how many get other teammates, and what later units then count."""
    before = job.department.locks.get((job.run.class_id, job.run.unit))
    if before is None or before.groups == job.drawn.groups or job.request.way is Way.LEVELED:
        return []
    was, now = teammates(before.groups), teammates(job.drawn.groups)
    others = sum(was.get(number) != mates for number, mates in now.items())
    lines = [f"Groups of this unit are kept already; with these {others} of {len(now)} students would have other teammates."]
    after = replace(before, groups=job.drawn.groups)
    for later in recounted(job.department, after):
        old = job.department.locks[later.class_id, later.unit]
        lines.append(f"{later.unit}, kept too, would be counted again: repeats {old.repeats} → {later.repeats}.")
    return lines


def teammates(groups: Groups) -> dict[str, frozenset[str]]:
    """Return each student's team."""
    return {number: frozenset(team) for group in groups.values() for team in group.teams.values() for number in team}


def explained(job: Job) -> Iterator[str]:
    """Yield why these groups, and who has been with whom, this unit included."""
    number = job.department.school.classes[job.run.class_id].number
    yield from explain(job.drawn, job.request, [lock.unit for lock in job.counted], number)
    yield ""
    yield "Who has been in a team with whom, this unit included:"
    ledger = job.request.ledger.plus(job.drawn.groups)
    yield from who_with_whom(ledger, job.request.seats)
    for seat, others in not_met(ledger, job.request.seats).items():
        if others:
            yield f"  {number(seat)} has not yet worked with {', '.join(f'{other:02d}' for other in others)}"
