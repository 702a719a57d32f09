"""`trivet groups UNIT --class CLASS`: one unit."""

from __future__ import annotations

from collections.abc import Iterator

import click

from trivet.command.asked import as_json
from trivet.command.draw_unit import Job, change_unit, draw_unit
from trivet.command.groups_asked import Asked
from trivet.command.keep_groups import keep_groups
from trivet.planning.grouping.explain import explain, who_with_whom


def unit_groups(context: click.Context, asked: Asked) -> Iterator[str]:
    """Draw or change the groups of one unit, keep them where asked, and yield what to print."""
    unit, class_id = asked.unit or "", asked.class_id or ""
    job = (change_unit if asked.change else draw_unit)(context, unit, class_id, asked)
    said = keep_groups(context, job, asked.today, force=asked.force) if asked.write else None
    if asked.json:
        yield as_json(job.as_data(said))
        return
    yield from job.lines(said)
    if asked.explain:
        yield ""
        yield from explained(job)


def explained(job: Job) -> Iterator[str]:
    """Yield why these groups, and who has been with whom, this unit included."""
    number = job.department.school.classes[job.run.class_id].number
    yield from explain(job.drawn, job.request, [lock.unit for lock in job.counted], number)
    yield ""
    yield "Who has been in a team with whom, this unit included:"
    yield from who_with_whom(job.request.ledger.plus(job.drawn.groups), job.request.seats)
