"""Write drawn groups to a lock, with the later locks that count them; never in silence over what has happened."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path

import click

from trivet.command.asked import stop
from trivet.command.draw_unit import Job, Said
from trivet.command.private_side import PrivateSide
from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.planning.grouping.kept import keep, recounted, replace_lock
from trivet.planning.grouping.past import passed
from trivet.planning.grouping.request import Way
from trivet.planning.grouping.year import Year
from trivet.planning.say import say_dates, say_list
from trivet.reading.lock import write_lock


def keep_groups(context: click.Context, job: Job, today: date, *, force: bool) -> Said:
    """Keep the groups of a job, unless the class has worked in other ones already; `force` does it anyway and says what is then false."""
    path = lock_path(context, job)
    key = job.private.key() if job.from_roster else b""
    lock = keep(job.drawn, job.request, job.run, job.counted, drawn_on=today, from_roster=job.from_roster, key=key)
    if lock.leveled and (before_it := job.private.leveled(job.run.class_id).get(job.run.unit)):
        lock = replace(lock, order=before_it.order)
    later = () if lock.leveled else recounted(job.department, lock)
    before = job.department.locks.get((job.run.class_id, job.run.unit))
    if before is not None and same_draw(before, lock) and not later:
        return Said(notes=(f"these groups are kept already in {job.private.shown(path)}, drawn on {before.drawn_on}; nothing was written",))
    notes = falsified(job, path, [each.unit for each in later], today)
    if notes and not force:
        stop(context, [*notes, "nothing was written; write --force to replace them all the same"])
    if before is not None and before.groups != lock.groups and not job.changes:
        notes.append(f"these groups replace those drawn on {before.drawn_on}")
    targets = [(path, lock), *((public_path(job, each.unit), each) for each in later)]
    for target, each in targets:
        write(target, each)
    if lock.leveled and job.run.order:
        where = job.private.shown(path)
        notes.append(f"school/runs.yml asks for an order of stations in this run, where all can read it; move `order:` to {where}")
    return Said(tuple(job.private.shown(target) for target, _ in targets), tuple(notes))


def keep_year(private: PrivateSide, department: Department, year: Year) -> Said:
    """Write the locks of the units that are new, and count kept later ones again."""
    new = [unit.lock for unit in year if unit.drawn is not None]
    for lock in new:
        department = replace_lock(department, lock)
    again = {}
    for lock in new:
        for later in recounted(department, lock):
            department = replace_lock(department, later)
            again[later.unit] = later
    written = []
    for lock in {**{lock.unit: lock for lock in new}, **again}.values():
        path = private.root / "school" / "groups" / lock.class_id / f"{lock.unit}.yml"
        write(path, lock)
        written.append(private.shown(path))
    return Said(tuple(written))


def write(path: Path, lock: Lock) -> None:
    """Write a lock file."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(write_lock(lock), encoding="utf-8", newline="\n")


def lock_path(context: click.Context, job: Job) -> Path:
    """Return the file to write; exits with 1 where there is no private folder to write to, or the unit has groups of the other kind."""
    public, own = public_path(job, job.run.unit), job.private.leveled_path(job.run.class_id, job.run.unit)
    path, other = (own, public) if job.request.way is Way.LEVELED else (public, own)
    if path is None:
        stop(context, ["leveled groups are kept in the private folder, and there is none; make a folder private/ with the class's list"])
    if other is not None and other.exists():
        stop(
            context,
            [f"{job.private.shown(other)} holds groups of this unit drawn another way; delete that file, then draw again"],
        )
    return path


def public_path(job: Job, unit: str) -> Path:
    """Return where public groups of the job's class stand."""
    return job.private.root / "school" / "groups" / job.run.class_id / f"{unit}.yml"


def same_draw(one: Lock, other: Lock) -> bool:
    """Say whether two locks hold the same groups, drawn from the same history and lists."""
    return (one.groups, one.counted, one.inputs, one.seal) == (other.groups, other.counted, other.inputs, other.seal)


def falsified(job: Job, path: Path, later: Sequence[str], today: date) -> list[str]:
    """Return what would no longer be true if the groups in `path` were replaced; nothing where none of their dates has passed."""
    gone = passed(job.department, job.run, today) if path.exists() else ()
    if not gone:
        return []
    return [
        f"class {job.run.class_id} has worked in the groups of {job.private.shown(path)} on {say_dates(gone)}",
        "with other groups there, what was printed for those days, and the count of who has worked with whom, are no longer true",
        *([f"kept groups of later units count them and are counted again: {say_list(later)}"] if later else []),
    ]
