"""One draw for a class and a unit, and what is said about it."""

from __future__ import annotations

from dataclasses import dataclass, replace

import click

from trivet.command.asked import department_of, run_asked, stop, stop_for, tell
from trivet.command.groups_asked import Asked
from trivet.command.private_side import PrivateSide, has_errors, private_side
from trivet.command.root import root_of
from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.roster import Roster
from trivet.model.school import Run, SchoolClass
from trivet.planning.grouping.advice import advice, in_words
from trivet.planning.grouping.change import change, spoken
from trivet.planning.grouping.draw import draw, measured
from trivet.planning.grouping.experience import Experience
from trivet.planning.grouping.for_class import Unseated, counted_before, request_for
from trivet.planning.grouping.kept import plain_groups
from trivet.planning.grouping.request import Conflict, Draw, Request, Way
from trivet.planning.grouping.sentences import by_presence, conflict, limit, quality, sentence, together_again, unseated, written

TABLES = "private/roster-{}.csv with the titles seat,table"
NOTHING = Draw(groups={}, repeats=0, pair_repeats=0, role_spread=0)


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
    changes: tuple[str, ...] = ()
    advice: tuple[str, ...] = ()

    def number(self, seat: int) -> str:
        """Return a student's number."""
        return self.department.school.classes[self.run.class_id].number(seat)

    def lines(self, said: Said | None, replaced: list[str]) -> list[str]:
        """Return the draw as text; `replaced` says what it would change where other groups are kept."""
        unit = self.department.units[self.run.unit]
        source = "drawn with the class's private list"
        if not self.from_roster:
            source = "drawn by number: there is no private list for this class, so no levels and no rules"
        ending = ["Nothing was written; --write keeps these groups."]
        if said is not None:
            ending = [sentence(line) for line in said.notes]
            ending += [f"Kept in {said.written[0]}."] if said.written else []
            ending += [f"Counted again: {', '.join(said.written[1:])}."] if said.written[1:] else []
        return [
            f"{unit.title} ({unit.slug}), class {self.run.class_id}, {len(self.request.seats)} students, {source}.",
            *written(self.drawn.groups),
            quality(self.drawn, [lock.unit for lock in self.counted]),
            *together_again(self.drawn, self.request, self.number),
            *(limit(each, self.number) for each in self.drawn.limits),
            *by_presence(self.drawn),
            *self.advice,
            *map(sentence, self.changes),
            *replaced,
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
            "changes": list(self.changes),
            "advice": list(self.advice),
            "limits": [{"code": each.code, "count": each.count, "seats": list(each.seats)} for each in drawn.limits],
            "written": list(said.written) if said is not None else [],
            "notes": list(said.notes) if said is not None else [],
        }


def draw_unit(context: click.Context, unit: str, class_id: str, asked: Asked) -> Job:
    """Draw groups for one run; exits with 1 and the reason where the lists or the rules do not allow it."""
    job, _ = _asked(context, unit, class_id, asked)
    drawn = draw(job.request)
    if isinstance(drawn, Conflict):
        stop(context, conflict(drawn, job.number))
    return replace(job, drawn=drawn)


def change_unit(context: click.Context, asked: Asked) -> Job:
    """Fit kept groups to the class as it is now; exits with 1 where there are none, or where more than two students would move."""
    job, _ = kept_job(context, asked)
    changed = change(job.drawn.groups, job.request)
    if changed is None:
        stop(context, ["more than two students would have to move; leave --change out to draw the groups anew"])
    name = {seat: job.number(seat) for seat in {*job.request.seats, *changed.left}}
    return replace(job, drawn=measured(job.request, changed.groups), changes=tuple(spoken(changed, name)))


def kept_job(context: click.Context, asked: Asked) -> tuple[Job, Experience]:
    """Return kept groups, public or leveled, as a job, and what is privately known; exits with 1 where none are kept."""
    unit, class_id = asked.unit or "", asked.class_id or ""
    job, own = _asked(context, unit, class_id, asked)
    leveled = own.leveled.get(unit)
    kept = leveled or job.department.locks.get((class_id, unit))
    if kept is None:
        stop(context, [f"no groups of {unit} are kept for class {class_id}; draw them first: trivet groups {unit} --class {class_id}"])
    way = Way.LEVELED if leveled is not None else job.request.way
    return replace(job, request=replace(job.request, way=way), drawn=replace(NOTHING, groups=kept.groups), advice=()), own


def _asked(context: click.Context, unit: str, class_id: str, asked: Asked) -> tuple[Job, Experience]:
    department = department_of(context, unit)
    run = run_asked(department, unit, class_id)
    private = private_side(root_of(context), department)
    school_class = department.school.classes[class_id]
    roster = roster_of(context, school_class, private)
    own = experience_of(context, department, school_class, private)
    wanted = asked.wanted
    if wanted.way is Way.USUAL and roster is None:
        stop(context, [f"usual groups need tables, and there is no private list for class {class_id}; write {TABLES.format(class_id)}"])
    request = request_for(department, run, roster, wanted=wanted, own=own)
    if isinstance(request, Unseated):
        stop(context, ["; ".join(unseated(request, school_class.number))])
    if request.way is Way.LEVELED and request.levels is None:
        stop(context, [f"leveled groups need levels, and there are none for class {class_id}; write them into its private list"])
    job = Job(
        department=department,
        run=run,
        private=private,
        from_roster=roster is not None,
        request=request,
        counted=counted_before(department, run),
        drawn=NOTHING,
        advice=advised(department, run, request, own, asked),
    )
    return job, own


def roster_of(context: click.Context, school_class: SchoolClass, private: PrivateSide) -> Roster | None:
    """Return the class's private list, None where there is none; exits with 1 where it can't be read."""
    from trivet.reading.private import check_local

    if problems := check_local(private.root):
        stop_for(context, problems)
    roster, problems = private.roster(school_class)
    if has_errors(problems):
        stop_for(context, problems)
    tell(problems)
    return roster


def advised(department: Department, run: Run, request: Request, own: Experience, asked: Asked) -> tuple[str, ...]:
    """Return what the pre-check advises, where the unit or the teacher asks for it, and whose levels the draw went by."""
    found = advice(own.scores.get(run.unit), request.seats)
    wants = asked.how == "auto" or (asked.how is None and department.units[run.unit].group_by == "auto")
    said = (in_words(found, leveled=request.way is Way.LEVELED),) if wants and request.way is not Way.USUAL else ()
    by_scores = found.speaks and request.levels is not None and request.way is not Way.USUAL
    return (*said, *(("The levels are the scores of this unit's pre-check.",) if by_scores else ()))


def experience_of(context: click.Context, department: Department, school_class: SchoolClass, private: PrivateSide) -> Experience:
    """Return what the private folder knows of the class's earlier units; exits with 1 where it can't be read."""
    own, problems = private.experience(school_class, department.units)
    if has_errors(problems):
        stop_for(context, problems)
    tell(problems)
    return own
