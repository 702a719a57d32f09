"""The plans of a whole department, from committed files alone."""

from __future__ import annotations

from collections import defaultdict

from trivet.model.department import Department
from trivet.model.plan import NotPlanned, Plan, Plans
from trivet.planning.checks import check_timed
from trivet.planning.planned_run import ClassHistory, plan_run
from trivet.planning.timed_runs import TimedRun, time_runs
from trivet.planning.untimed import UntimedRun


def plan_department(department: Department) -> Plans:
    """Plan every run: all dates and minutes first, then the rest by date, since a class's earlier units count for its later ones.

    Plans stand in the order of runs.yml; a run without dates is named with its reason; problems are those of `check_department`.
    """
    timed_runs = time_runs(department)
    by_date = sorted((timed.days[0].date, place) for place, timed in enumerate(timed_runs) if isinstance(timed, TimedRun))
    histories: defaultdict[str, ClassHistory] = defaultdict(ClassHistory)
    plans: dict[int, Plan] = {}
    for _, place in by_date:
        timed = timed_runs[place]
        if isinstance(timed, TimedRun):
            plans[place] = plan_run(department, timed, histories[timed.run.class_id])
    return Plans(
        plans=tuple(plans[place] for place in sorted(plans)),
        not_planned=tuple(NotPlanned(each.run, each.sentence) for each in timed_runs if isinstance(each, UntimedRun)),
        problems=check_timed(department, timed_runs),
    )
