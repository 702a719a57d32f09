"""A department with one thing changed: what its classes would then need at the same time."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, field, replace
from datetime import date
from fractions import Fraction
from functools import cached_property

from trivet.model.department import Department
from trivet.model.plan import Plan
from trivet.model.school import Run
from trivet.planning.dates import SchoolDay, meetings, school_days
from trivet.planning.materials import same_item
from trivet.planning.stores.moments import Moment, moments
from trivet.planning.stores.pools import Key, Pools, Share
from trivet.planning.stores.uses import Use, uses_of
from trivet.planning.timed_runs import TimedRun, time_runs

Lack = tuple[Key, date, tuple[str, ...]]
"""Where something is short: its pool, the day and the classes."""
Starts = tuple[tuple[int, date], ...]
"""Other first dates for runs, by their place in runs.yml."""


@dataclass(frozen=True, slots=True)
class After:
    """The days on which a change tells, what is short on them then, and the most that is out at one time of each pool concerned."""

    days: AbstractSet[date]
    short: AbstractSet[Lack]
    most: Mapping[Key, Fraction]


@dataclass
class Tried:
    """The plans as they are, and changes of them that are tried; what was tried is kept, since several shortages ask for the same.

    `shares` and `now` are those of all pools, and the moments of the reusable ones.
    """

    department: Department
    plans: Sequence[Plan]
    pools: Pools
    shares: Mapping[Key, Sequence[Share]]
    now: Mapping[Key, Sequence[Moment]]
    _moved: dict[tuple[str, Starts], tuple[tuple[Plan, ...], After] | None] = field(default_factory=dict)
    _thinned: dict[tuple[str, int, int], After] = field(default_factory=dict)

    @cached_property
    def lacking_now(self) -> AbstractSet[Lack]:
        """Where something is short as things are."""
        return _lacking(self.now)

    @cached_property
    def _days(self) -> tuple[SchoolDay, ...]:
        return school_days(self.department.school.calendar)

    @cached_property
    def _by_day(self) -> Mapping[Key, Mapping[date, Sequence[Share]]]:
        found: defaultdict[Key, defaultdict[date, list[Share]]] = defaultdict(lambda: defaultdict(list))
        for key, shares in self.shares.items():
            for share in shares:
                found[key][share.use.date].append(share)
        return found

    @cached_property
    def _pools_of_run(self) -> Mapping[tuple[str, str], Sequence[Key]]:
        found: defaultdict[tuple[str, str], dict[Key, None]] = defaultdict(dict)
        for key, shares in self.shares.items():
            for share in shares:
                found[share.use.run][key] = None
        return defaultdict(tuple, {run: tuple(keys) for run, keys in found.items()})

    @cached_property
    def _days_of_run(self) -> Mapping[tuple[str, str], AbstractSet[date]]:
        found: defaultdict[tuple[str, str], set[date]] = defaultdict(set)
        for shares in self.shares.values():
            for share in shares:
                found[share.use.run].add(share.use.date)
        return found

    def meetings_after(self, class_id: str, day: date, most: int) -> tuple[date, ...]:
        """Return the next dates on which a class meets after a day, at most so many."""
        school = self.department.school
        found = meetings(self._days, school.bells, school.classes[class_id])
        return tuple(each.date for each in found if each.date > day)[:most]

    def runs_of(self, class_id: str) -> list[tuple[int, Run]]:
        """Return the class's runs with their place in runs.yml."""
        return self._runs.get(class_id, [])

    @cached_property
    def _runs(self) -> Mapping[str, list[tuple[int, Run]]]:
        found: defaultdict[str, list[tuple[int, Run]]] = defaultdict(list)
        for place, run in enumerate(self.department.school.runs):
            found[run.class_id].append((place, run))
        return found

    def moved(self, class_id: str, starts: Mapping[int, date]) -> tuple[tuple[Plan, ...], After] | None:
        """Return the plans that other first dates change, with what is then needed.

        None where a run then has no dates, begins later than written, or another run moves too.
        """
        key = (class_id, tuple(sorted(starts.items())))
        if key not in self._moved:
            plans = self._time(class_id, starts)
            uses = [use for plan in plans or () for use in uses_of(self.department, plan)]
            self._moved[key] = None if plans is None else (plans, self.after([(class_id, plan.unit) for plan in plans], uses))
        return self._moved[key]

    def thinned(self, slug: str, index: int, teams: int) -> After:
        """Return what is needed of the item of one of a unit's materials, by its index, where so many teams share what it says."""
        key = (slug, index, teams)
        if key not in self._thinned:
            unit = self.department.units[slug]
            thinned = unit.hands_on.materials[index]
            lines = [replace(each, per_count=teams) if each is thinned else each for each in unit.hands_on.materials]
            own = tuple(each for each in lines if same_item(each.item, thinned.item))
            alone = replace(unit, hands_on=replace(unit.hands_on, materials=own))
            plans = [plan for plan in self.plans if plan.unit == slug]
            uses = [replace(use, devices=0) for plan in plans for use in uses_of(self.department, plan, alone)]
            concerned = self.pools.by_pool(uses)
            self._thinned[key] = self.after([(plan.class_id, slug) for plan in plans], uses, only=tuple(concerned))
        return self._thinned[key]

    def after(self, runs: Iterable[tuple[str, str]], instead: Sequence[Use], *, only: Sequence[Key] | None = None) -> After:
        """Return what is needed where the uses `instead` (none for runs that are taken out) stand in the place of those of some runs.

        A run is its class id and unit slug. All pools are looked at that the runs or `instead` draw on, or `only` some of them.
        """
        gone = set(runs)
        coming = self.pools.by_pool(instead)
        concerned = dict.fromkeys([*coming, *(key for run in sorted(gone) for key in self._pools_of_run[run])] if only is None else only)
        found: dict[Key, tuple[Moment, ...]] = {}
        days = {*(day for run in gone for day in self._days_of_run[run]), *(use.date for use in instead)}
        for key in concerned:
            own = coming.get(key, ())
            if not self.pools.by_key[key].used_up:
                stay = [share for day in days for share in self._by_day[key].get(day, ())]
                kept = [share for share in stay if share.use.run not in gone]
                found[key] = moments(self.pools.by_key[key], [*kept, *own])
        most = {key: max(moment.need for moment in each) for key, each in found.items() if each}
        return After(days, _lacking(found), most)

    def _time(self, class_id: str, starts: Mapping[int, date]) -> tuple[Plan, ...] | None:
        own = self.runs_of(class_id)
        runs = tuple(
            replace(run, starts=starts[place], begins="date", after="", gap_days=0) if place in starts else run for place, run in own
        )
        units = {run.unit: self.department.units[run.unit] for run in runs if run.unit in self.department.units}
        school = replace(self.department.school, runs=runs)
        plans = []
        for (place, run), timed in zip(own, time_runs(replace(self.department, school=school, units=units)), strict=True):
            old = next((plan for plan in self.plans if (plan.class_id, plan.unit) == (class_id, run.unit)), None)
            if old is None:
                continue
            if not isinstance(timed, TimedRun) or (place in starts and timed.days[0].date != starts[place]):
                return None
            if place in starts:
                if len(timed.held) != len(old.rounds):  # what is recorded for its old dates does not move with it
                    return None
                rounds = tuple(replace(each, date=day) for each, day in zip(old.rounds, timed.round_dates, strict=True))
                plans.append(replace(old, days=timed.days, rounds=rounds))
            elif timed.days != old.days:
                return None
        return tuple(plans)


def _lacking(found: Mapping[Key, Sequence[Moment]]) -> AbstractSet[Lack]:
    return {(key, moment.date, tuple(sorted(moment.classes))) for key, each in found.items() for moment in each if moment.short}
