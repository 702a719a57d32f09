"""`trivet groups --check FILE`: kept groups, checked again."""

from __future__ import annotations

from collections.abc import Iterator

import click

from trivet.command.asked import as_json, stop_for, tell
from trivet.command.groups_asked import Asked
from trivet.command.private_side import private_side
from trivet.command.root import root_of
from trivet.model.roster import PairRule
from trivet.planning.grouping.verify import verify
from trivet.reading.department import read_department
from trivet.reading.lock import read_lock
from trivet.reading.source import read_source


def check_groups(context: click.Context, asked: Asked) -> Iterator[str]:
    """Check a lock against its history, its proof and the rules of the private list; exits with 1 where something does not hold."""
    if asked.check is None or not asked.check.is_file():
        raise click.UsageError(f"there is no file {asked.check}; write --check and a file such as school/groups/p1/float-or-sink.yml")
    root = root_of(context)
    source = read_source(asked.check, asked.check.name)
    lock, problems = read_lock(source.text, asked.check.name) if source.readable else (None, source.problems)
    if lock is None:
        stop_for(context, problems)
    department = read_department(root).department
    others = {unit: other for (class_id, unit), other in (department.locks if department else {}).items() if class_id == lock.class_id}
    rules: tuple[PairRule, ...] = ()
    if department is not None and lock.class_id in department.school.classes and lock.drawn_from == "roster":
        side = private_side(root, department)
        roster, told = side.roster(department.school.classes[lock.class_id])
        tell(told)
        rules = roster.rules if roster is not None else ()
    found = verify(lock, others, rules)
    if asked.json:
        yield as_json({"unit": lock.unit, "class": lock.class_id, "checked": [{"holds": f.holds, "text": f.text} for f in found]})
    else:
        yield f"{lock.unit}, class {lock.class_id}, drawn on {lock.drawn_on}"
        yield from (f"  {'holds' if finding.holds else 'DOES NOT HOLD'}: {finding.text}" for finding in found)
    if not all(finding.holds for finding in found):
        context.exit(1)
