"""A department with one thing changed: what its classes would then need at the same time."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from functools import cached_property

from trivet.model.department import Department
from trivet.model.plan import Plan
from trivet.model.school import Run
from trivet.planning.dates import SchoolDay, meetings, school_days
from trivet.planning.stores.moments import Moment, moments
from trivet.planning.stores.pools import Key, Pools
from trivet.planning.stores.uses import Use, uses_of
from trivet.planning.timed_runs import TimedRun, time_runs


@dataclass
class Tried:
    """The plans as they are, and changes of them that are tried. What was tried is kept, since several shortages ask for the same."""

    department: Department
    plans: Sequence[Plan]
    uses: Sequence[Use]
    pools: Pools
    now: Mapping[Key, Sequence[Moment]]
    """The moments of all reusable pools as they are."""
    _moved: dict[tuple[str, tuple[tuple[int, date], ...]], tuple[Plan, ...] | None] = field(default_factory=dict)

    @cached_property
    def lacking_now(self) -> set[tuple[Key, date, tuple[str, ...]]]:
        """Where something is short as things are."""
        return lacking(self.now)

    @cached_property
    def _days(self) -> tuple[SchoolDay, ...]:
        return school_days(self.department.school.calendar)

    def meetings_after(self, class_id: str, day: date, most: int) -> tuple[date, ...]:
        """Return the next dates on which a class meets after a day, at most so many."""
        school = self.department.school
        found = meetings(self._days, school.bells, school.classes[class_id])
        return tuple(each.date for each in found if each.date > day)[:most]

    def runs_of(self, class_id: str) -> list[tuple[int, Run]]:
        """Return the class's runs with their place in runs.yml."""
        return [(place, run) for place, run in enumerate(self.department.school.runs) if run.class_id == class_id]

    def moved(self, class_id: str, starts: Mapping[int, date]) -> tuple[Plan, ...] | None:
        """Return the class's plans with other first dates for some of its runs, by their place in runs.yml.

        None where a run then has no dates, begins later than written, or moves without being asked to.
        """
        key = (class_id, tuple(sorted(starts.items())))
        if key not in self._moved:
            self._moved[key] = self._time(class_id, starts)
        return self._moved[key]

    def _time(self, class_id: str, starts: Mapping[int, date]) -> tuple[Plan, ...] | None:
        own = self.runs_of(class_id)
        runs = tuple(replace(run, starts=starts.get(place, run.starts)) for place, run in own)
        units = {run.unit: self.department.units[run.unit] for run in runs if run.unit in self.department.units}
        school = replace(self.department.school, runs=runs)
        plans = []
        for (place, run), timed in zip(own, time_runs(replace(self.department, school=school, units=units)), strict=True):
            old = next((plan for plan in self.plans if (plan.class_id, plan.unit) == (class_id, run.unit)), None)
            if old is None:
                continue
            if not isinstance(timed, TimedRun) or (place in starts and timed.days[0].date != starts[place]):
                return None
            if place not in starts and timed.days != old.days:
                return None
            rounds = tuple(replace(each, date=day) for each, day in zip(old.rounds, timed.round_dates, strict=True))
            plans.append(replace(old, days=timed.days, rounds=rounds))
        return tuple(plans)

    def uses_with(self, plans: Iterable[Plan]) -> list[Use]:
        """Return all uses where these plans stand in the place of those of the same class and unit."""
        changed = list(plans)
        instead = {(plan.class_id, plan.unit) for plan in changed}
        return [
            *(use for use in self.uses if (use.class_id, use.unit) not in instead),
            *(use for plan in changed for use in uses_of(self.department, plan)),
        ]

    def moments_with(self, changed: Sequence[Use], days: set[date], keys: Iterable[Key]) -> dict[Key, tuple[Moment, ...]]:
        """Return the moments of some reusable pools on some days, with other uses than the department has now."""
        shares = self.pools.by_pool([use for use in changed if use.date in days])
        return {key: moments(self.pools.by_key[key], shares[key]) for key in keys if key in shares}

    def keys_of(self, uses: Iterable[Use]) -> set[Key]:
        """Return the reusable pools that some meetings draw on."""
        return {pool.key for pool, _ in self.pools.shares(uses) if not pool.used_up}


def lacking(found: Mapping[Key, Sequence[Moment]]) -> set[tuple[Key, date, tuple[str, ...]]]:
    """Return where something is short: pool, day and classes."""
    return {(key, moment.date, tuple(sorted(moment.classes))) for key, each in found.items() for moment in each if moment.short}
