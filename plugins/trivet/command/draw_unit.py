"""One draw for a class and a unit, and what is said about it."""

from __future__ import annotations

from dataclasses import dataclass

import click

from trivet.command.asked import department_of, run_asked, stop, stop_for
from trivet.command.private_side import PrivateSide, has_errors, private_side
from trivet.command.root import root_of
from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.roster import Roster
from trivet.model.school import Run
from trivet.planning.grouping.draw import draw
from trivet.planning.grouping.for_class import Unseated, counted_before, request_for
from trivet.planning.grouping.kept import plain_groups
from trivet.planning.grouping.request import Conflict, Draw, Request
from trivet.planning.grouping.sentences import conflict, limit, quality, unseated, written


@dataclass(frozen=True, slots=True)
class Said:
    """What came of keeping groups: the files written (shown as they may be printed), and what to know about it."""

    written: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """A draw with all it was drawn from."""

    department: Department
    run: Run
    private: PrivateSide
    from_roster: bool
    request: Request
    counted: tuple[Lock, ...]
    drawn: Draw

    def lines(self, said: Said | None) -> list[str]:
        """Return the draw as text."""
        unit = self.department.units[self.run.unit]
        number = self.department.school.classes[self.run.class_id].number
        source = "drawn with the class's private list"
        if not self.from_roster:
            source = "drawn by number: there is no private list for this class, so no levels and no rules"
        ending = ["Nothing was written; --write keeps these groups."]
        if said is not None:
            ending = [f"{line[0].upper()}{line[1:]}." for line in said.notes]
            ending += [f"Kept in {said.written[0]}."] if said.written else []
            ending += [f"Counted again: {', '.join(said.written[1:])}."] if said.written[1:] else []
        return [
            f"{unit.title} ({unit.slug}), class {self.run.class_id}, {len(self.request.seats)} students, {source}.",
            *written(self.drawn.groups),
            quality(self.drawn, [lock.unit for lock in self.counted]),
            *(limit(each, number) for each in self.drawn.limits),
            *ending,
        ]

    def as_data(self, said: Said | None) -> dict[str, object]:
        """Return the draw as plain data."""
        drawn = self.drawn
        return {
            "unit": self.run.unit,
            "class": self.run.class_id,
            "drawn_from": "roster" if self.from_roster else "numbers",
            "counted": [lock.unit for lock in self.counted],
            "groups": plain_groups(drawn.groups),
            "quality": {
                "repeats": drawn.repeats,
                "pair_repeats": drawn.pair_repeats,
                "proved_minimum": drawn.proved_minimum,
                "role_spread": drawn.role_spread,
            },
            "limits": [{"code": each.code, "count": each.count, "seats": list(each.seats)} for each in drawn.limits],
            "written": list(said.written) if said is not None else [],
            "notes": list(said.notes) if said is not None else [],
        }


def draw_unit(context: click.Context, unit: str, class_id: str, *, leveled: bool) -> Job:
    """Draw groups for one run; exits with 1 and the reason where the lists or the rules do not allow it."""
    department = department_of(context, unit)
    run = run_asked(department, unit, class_id)
    private = private_side(root_of(context), department)
    number = department.school.classes[class_id].number
    roster = roster_of(context, department, run, private)
    if leveled and (roster is None or all(student.level is None for student in roster.students)):
        stop(context, [f"leveled groups need levels, and there are none for class {class_id}; write them into its private list"])
    request = request_for(department, run, roster, leveled=leveled)
    if isinstance(request, Unseated):
        stop(context, ["; ".join(unseated(request, number))])
    drawn = draw(request)
    if isinstance(drawn, Conflict):
        stop(context, conflict(drawn, number))
    return Job(
        department=department,
        run=run,
        private=private,
        from_roster=roster is not None,
        request=request,
        counted=counted_before(department, run),
        drawn=drawn,
    )


def roster_of(context: click.Context, department: Department, run: Run, private: PrivateSide) -> Roster | None:
    """Return the class's private list, None where there is none; exits with 1 where it can't be read."""
    from trivet.reading.private import check_local

    if problems := check_local(private.root):
        stop_for(context, problems)
    roster, problems = private.roster(department.school.classes[run.class_id])
    if has_errors(problems):
        stop_for(context, problems)
    return roster
