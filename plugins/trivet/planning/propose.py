"""Where a new run of a unit in a class would go: its way, its first fitting date, and what would be wrong with it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date

from trivet.model.department import Department
from trivet.model.plan import NotPlanned, Plan, Plans
from trivet.model.problem import Problem, Severity
from trivet.model.school import UNSETTLED, Run
from trivet.model.station import Kind
from trivet.planning.cautions import at_hand
from trivet.planning.dates import meetings, school_days
from trivet.planning.department import plan_department
from trivet.planning.timed_run import WHOLE_CLASS
from trivet.planning.timed_runs import TimedRun, settled, time_runs

TRIED = 60
"""Meetings that are tried as a first day."""


@dataclass(frozen=True, slots=True)
class Proposal:
    """A run that is not written yet. `plan` is None where it has no dates, with the reason in `not_planned`.

    `problems` (no advice) would come on top of those that there are; `first`: it would be the class's first unit of the year.
    """

    run: Run
    first: bool
    plan: Plan | None
    not_planned: NotPlanned | None
    problems: tuple[Problem, ...]

    @property
    def errors(self) -> tuple[Problem, ...]:
        """The problems that would stop a build."""
        return tuple(problem for problem in self.problems if problem.severity is Severity.ERROR)


def propose(department: Department, wanted: Run, today: date, *, way: str = "") -> Proposal:
    """Return the run as it should be written. `department` is settled.

    `wanted` names class and unit. Where it says neither a date nor `after` nor `by` (`begins` is ""), it gets the first date from `today`
    on, after all that the class has planned, on which it brings nothing to decide, else the one with the fewest things. Without a `way`
    a class's first unit is a whole-class one. A second adult is posted where a hazard asks for one and the class has one.
    """
    before = plan_department(department)
    if wanted.begins:
        found = _best(department, before, [_with_way(department, before, wanted, way)])
        if way or not found.first or found.run.way == WHOLE_CLASS:
            return found
        # Only its days tell that it would come before all others.
        return _best(department, before, [_with_way(department, before, wanted, WHOLE_CLASS)])
    own = [plan for plan in before.plans if plan.class_id == wanted.class_id and plan.days]
    after = max((plan.days[-1].date for plan in own), default=date.min)
    school_class = department.school.classes[wanted.class_id]
    met = meetings(school_days(department.school.calendar), department.school.bells, school_class)
    free = [meeting.date for meeting in met if meeting.date > after and meeting.date >= today][:TRIED]
    runs = [_with_way(department, before, replace(wanted, starts=day, begins="date"), way) for day in free]
    fitting = [run for run in runs if _begins_and_ends(department, run)]
    never = replace(wanted, starts=max(today, department.school.calendar.first), begins="date")
    return _best(department, before, fitting or runs[:1] or [never])


def _best(department: Department, before: Plans, runs: Sequence[Run]) -> Proposal:
    """The first run that brings nothing to decide, else the first of those with the fewest errors, then warnings."""
    best: Proposal | None = None
    for run in runs:
        tried = _tried(department, before, run)
        if best is None or _weight(tried) < _weight(best):
            best = tried
        if not best.problems and best.plan is not None:
            break
    assert best is not None
    return best


def _weight(tried: Proposal) -> tuple[bool, int, int]:
    return tried.plan is None, len(tried.errors), len(tried.problems)


def _tried(department: Department, before: Plans, run: Run) -> Proposal:
    placed = replace(run, index=1 + max((each.index for each in department.school.runs), default=-1))
    then = plan_department(_with(department, placed))
    known = {(problem.code, problem.where, problem.what) for problem in before.problems}
    new = [p for p in then.problems if p.severity is not Severity.ADVICE and (p.code, p.where, p.what) not in known]
    reason = next((each for each in then.not_planned if each.run.index == placed.index), None)
    own = [each for each in department.school.runs if each.class_id == run.class_id]
    plan = then.of(run.class_id, run.unit)
    begun = plan.days[0].date if plan else run.starts
    return Proposal(placed, all(each.starts >= begun for each in own), plan, reason, tuple(new))


def _begins_and_ends(department: Department, run: Run) -> bool:
    """Whether a run begins on its date and finds room for all of it, its class alone considered."""
    runs = tuple(each for each in department.school.runs if each.class_id == run.class_id)
    school = replace(department.school, runs=(*runs, run))
    timed = time_runs(replace(department, school=school))[-1]
    return isinstance(timed, TimedRun) and timed.unfinished is None and timed.days[0].date == run.starts


def _with(department: Department, run: Run) -> Department:
    return settled(replace(department, school=replace(department.school, runs=(*department.school.runs, run))))


def _with_way(department: Department, before: Plans, run: Run, way: str) -> Run:
    """The run with its way, and the second adult that it needs."""
    own = [plan.days[0].date for plan in before.plans if plan.class_id == run.class_id and plan.days]
    first = run.begins != "after" and (not own or (run.starts != UNSETTLED and run.starts < min(own)))
    chosen = way or (WHOLE_CLASS if first else "rotate")
    school_class, unit = department.school.classes[run.class_id], department.units[run.unit]
    adult = Kind.HANDS_ON if chosen != WHOLE_CLASS and at_hand(unit) and school_class.adults > 1 else run.second_adult
    return replace(run, way=chosen, second_adult=adult)
