"""Problems that need a computation: minutes, supervision, dates. Whether kept groups fit their class is asked while they are read."""

from __future__ import annotations

from collections.abc import Sequence

from trivet.model.department import Department
from trivet.model.plan import Plan
from trivet.model.problem import Problem, in_order
from trivet.planning.checks.clashes import check_clashes
from trivet.planning.checks.inventory import check_inventory
from trivet.planning.checks.kit import check_kit
from trivet.planning.checks.runs import check_runs
from trivet.planning.checks.shows import check_shows
from trivet.planning.checks.stations import check_unit
from trivet.planning.checks.supervision import check_supervision
from trivet.planning.checks.year import check_year
from trivet.planning.timed_runs import AnyRun

CODES = {
    "station-too-long": "A station needs more minutes than the longest round.",
    "round-short": "All three stations need less than the shortest round.",
    "station-idle": "A station needs much less than the round and says nothing for those who finish early.",
    "cannot-tell-apart": "Two expected values differ by no more than their propagated tolerance.",
    "barely-told-apart": "Two expected values differ by no more than their tolerances in the worst case.",
    "expected-unread": "An expected value, or its tolerance, can't be compared with others.",
    "no-day-fits": "No meeting of the class is long enough for a first round.",
    "year-ends": "The rounds and the write-up do not all fit before the school year ends.",
    "class-never-meets": "The class has no meeting from the run's date on.",
    "no-room-before": "A unit that is to end by a date finds no room before it.",
    "waits-for-unit": "The unit after which a run begins has no days.",
    "done-out-of-order": "A round is recorded as done before the one before it.",
    "done-beyond": "A round is recorded that the unit does not have.",
    "all-lost": "Every day on which a class could work on a unit is lost.",
    "done-too-much": "More is recorded for a date than its period holds.",
    "stopped-too-late": "A round is recorded as stopped after more minutes than it has.",
    "record-unused": "Something is recorded for a date on which the class is not at this unit.",
    "runs-overlap": "A run begins before the class's run before it has ended.",
    "by-missed": "A unit ends after the last date that it was given.",
    "past-term": "A unit begins in a term and ends after it.",
    "into-testing": "Testing days lie between the first and the last day of a unit.",
    "drift": "Classes of one teacher are too many school days apart in the same unit.",
    "two-at-once": "A teacher, or a room, has lessons of two classes at the same time.",
    "kit-clash": "Lessons at the same time need more of a thing than there is.",
    "kit-short": "A run alone needs more of a thing than there is.",
    "order-not-met": "More is asked of the order of stations than any order gives.",
    "second-adult-needed": "A hazard needs an adult at hand, and the teacher sits at her own station.",
    "hands-on-not-seen": "A hazard needs a room in which the teacher-led station sees the hands-on one.",
    "class-size": "A class with hands-on hazards is larger than advised.",
    "item-avoided": "An item contains what the class avoids.",
    "item-not-counted": "The inventory does not know a thing that a unit needs, or counts it in another kind of unit.",
}
"""Every code of a problem that is found here, with what it means."""


def check_units(department: Department) -> tuple[Problem, ...]:
    """Return the problems of units alone."""
    defaults = department.school.settings.defaults
    units = department.units.values()
    return in_order([problem for unit in units for problem in (*check_unit(unit, defaults), *check_shows(unit))])


def check_planned(department: Department, timed_runs: Sequence[AnyRun], plans: tuple[Plan, ...]) -> tuple[Problem, ...]:
    """Return every problem of units and runs that needs a computation, by place."""
    return in_order(
        [
            *check_units(department),
            *check_runs(department, timed_runs),
            *check_year(department, timed_runs),
            *check_clashes(department, timed_runs),
            *check_kit(department, plans),
            *check_supervision(department),
            *check_inventory(department),
        ]
    )
