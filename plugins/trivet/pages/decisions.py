"""What asks for a decision about runs: the problems of runs.yml that are no mere advice."""

from __future__ import annotations

from dataclasses import dataclass

from trivet.model.plan import Plans
from trivet.model.problem import Severity
from trivet.planning.checks.places import RUNS


@dataclass(frozen=True, slots=True)
class Decision:
    """What is wrong with a run, and what to do."""

    where: str
    what: str
    remedy: str


def decisions(plans: Plans) -> tuple[Decision, ...]:
    """Return them in the order of runs.yml."""
    found = (problem for problem in plans.problems if problem.place.file == RUNS and problem.severity is not Severity.ADVICE)
    return tuple(Decision(problem.where, problem.what, problem.remedy) for problem in found)
