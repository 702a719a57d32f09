"""What all classes of a department need together, by week and by term: kit at once, used-up things in all, devices, paper, tasks."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import lru_cache, partial

from trivet.model.department import Department
from trivet.model.plan import Plan, Plans
from trivet.planning.same import Same
from trivet.planning.stores.cures import Cure, cure_to_write, cures
from trivet.planning.stores.moments import Moment, moments
from trivet.planning.stores.needs import Reusable, UsedUp, reusable, used_up
from trivet.planning.stores.pools import Key, Pool, Share, make_pools
from trivet.planning.stores.prints import Print, prints
from trivet.planning.stores.purchases import Purchase, purchase
from trivet.planning.stores.tasks import RoomDays, TurnRound, tasks, turn_rounds
from trivet.planning.stores.tried import Tried
from trivet.planning.stores.uses import Use, headcount_of, uses

WEEK = timedelta(days=6)


@dataclass(frozen=True, slots=True, kw_only=True)
class RunInSpan:
    """A run with a planned day in a stretch of the year."""

    class_id: str
    unit: str
    teams: int


@dataclass(frozen=True, slots=True)
class Shortage:
    """Something that is short, with what would cure it."""

    lack: Reusable | UsedUp
    cures: tuple[Cure, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """What one stretch of the year needs, first and last day included. `name` is a term's, "" for a week or the whole year.

    `runs` have a day in it; `prints` are of runs whose first round lies in it; `tasks`, `turn_rounds` and `shortages` are a week's.
    What the stores hold is taken as counted today: nothing is taken off for what stretches before it use up.
    """

    name: str
    first: date
    last: date
    runs: tuple[RunInSpan, ...]
    reusable: tuple[Reusable, ...]
    used_up: tuple[UsedUp, ...]
    devices: tuple[Reusable, ...]
    purchases: tuple[Purchase, ...]
    prints: tuple[Print, ...]
    shortages: tuple[Shortage, ...] = ()
    tasks: tuple[RoomDays, ...] = ()
    turn_rounds: tuple[TurnRound, ...] = ()

    @property
    def short(self) -> tuple[Reusable | UsedUp, ...]:
        """Everything that is short in it."""
        everything: tuple[Reusable | UsedUp, ...] = (*self.reusable, *self.used_up, *self.devices)
        return tuple(each for each in everything if each.missing)


@dataclass(frozen=True, slots=True)
class DepartmentMaterials:
    """Each week with a planned day, each term with one, and the whole year (first planned day to last), None where nothing is planned."""

    weeks: tuple[Span, ...]
    terms: tuple[Span, ...]
    year: Span | None

    def week_of(self, day: date) -> Span | None:
        """The week that a day lies in, None where nothing is planned in it."""
        return next((week for week in self.weeks if week.first <= day <= week.last), None)


@dataclass(frozen=True, slots=True)
class _Ledger:
    """Everything that is needed, by pool and day."""

    department: Department
    plans: Sequence[Plan]
    uses: Sequence[Use]
    pools: Mapping[Key, Pool]
    shares: Mapping[Key, Sequence[Share]]
    moments: Mapping[Key, Sequence[Moment]]


def department_materials(department: Department, plans: Plans) -> DepartmentMaterials:
    """Work out the materials of all plans of a department, from committed files alone.

    Reusable things are counted where most are out at one time, bell to bell, over all classes that share a store; what is used up is
    added up over classes, teams and rounds, its spare rounded up once a stretch; devices are counted against those of each room.
    """
    planned = tuple(plan for plan in plans.plans if plan.days)
    if not planned:
        return DepartmentMaterials((), (), None)
    ledger, tried = _opened(Same(department), Same(plans.plans))
    span = partial(_span, ledger)
    days = sorted(day.date for plan in planned for day in plan.days)
    weeks = [_with_week(ledger, span("", monday, monday + WEEK)) for monday in sorted({_monday(day) for day in days})]
    terms = [span(term.name, term.first, term.last) for term in department.school.calendar.terms]
    return DepartmentMaterials(
        weeks=tuple(_with_cures(week, tried) for week in weeks),
        terms=tuple(term for term in terms if term.runs),
        year=span("", days[0], days[-1]),
    )


def kit_clashes(department: Department, plans: tuple[Plan, ...]) -> tuple[tuple[Reusable, Cure], ...]:
    """Return what is short because several lessons have it out together, with a cure: once for the same lessons, in its first week."""
    ledger, tried = _opened(Same(department), Same(plans))
    found: dict[tuple[Key, tuple[tuple[str, str], ...]], tuple[Reusable, Cure]] = {}
    for key, own in ledger.moments.items():
        for moment in own:
            if not moment.short or len(moment.uses) < 2:
                continue
            who = tuple(use.run for use in moment.uses)
            week = [each for each in own if _monday(each.date) == _monday(moment.date) and len(each.uses) > 1]
            lack = None if (key, who) in found else reusable(ledger.pools[key], week)
            if lack is not None:
                found[key, who] = (lack, cure_to_write(lack, tried))
    return tuple(found.values())


@lru_cache(maxsize=1)  # checks and pages ask for the same
def _opened(of: Same[Department], plans: Same[tuple[Plan, ...]]) -> tuple[_Ledger, Tried]:
    """Everything that is needed, and where a change of it can be tried."""
    department, planned = of.value, tuple(plan for plan in plans.value if plan.days)
    everything = uses(department, planned)
    pools = make_pools(everything, department.school)
    shares = pools.by_pool(everything)
    together = {key: moments(pools.by_key[key], own) for key, own in shares.items() if not pools.by_key[key].used_up}
    ledger = _Ledger(department, planned, everything, pools.by_key, shares, together)
    return ledger, Tried(department, planned, pools, shares, together)


def _monday(day: date) -> date:
    return day - timedelta(days=day.weekday())


def _span(ledger: _Ledger, name: str, first: date, last: date) -> Span:
    percent = ledger.department.school.settings.defaults.spare_percent
    at_once: list[Reusable] = []
    in_all: list[UsedUp] = []
    for key, pool in ledger.pools.items():
        if pool.used_up:
            own = [share for share in ledger.shares[key] if first <= share.use.date <= last]
            in_all += filter(None, [used_up(pool, own, percent)])
        else:
            at_once += filter(None, [reusable(pool, [each for each in ledger.moments[key] if first <= each.date <= last])])
    plans = [plan for plan in ledger.plans if any(first <= day.date <= last for day in plan.days)]
    begun = [plan for plan in plans if plan.rounds and first <= plan.rounds[0].date <= last]
    return Span(
        name=name,
        first=first,
        last=last,
        runs=tuple(_runs(ledger.department, plans)),
        reusable=tuple(each for each in at_once if not each.pool.device),
        used_up=tuple(in_all),
        devices=tuple(each for each in at_once if each.pool.device),
        purchases=tuple(_purchases((*at_once, *in_all))),
        prints=prints(ledger.department, begun),
    )


def _runs(department: Department, plans: Iterable[Plan]) -> Iterator[RunInSpan]:
    for plan in plans:
        yield RunInSpan(class_id=plan.class_id, unit=plan.unit, teams=headcount_of(department, plan).teams)


def _purchases(needs: Iterable[Reusable | UsedUp]) -> Iterator[Purchase]:
    for each in needs:
        bought = purchase(each.pool, each.missing)
        if bought is not None:
            yield bought


def _with_week(ledger: _Ledger, span: Span) -> Span:
    """Add what only a week has: who sets out what when, and where the passing time is short."""
    own = [use for use in ledger.uses if span.first <= use.date <= span.last]
    return replace(span, tasks=tasks(own), turn_rounds=turn_rounds(own, ledger.department.units))


def _with_cures(span: Span, tried: Tried) -> Span:
    return replace(span, shortages=tuple(Shortage(lack, cures(lack, tried)) for lack in span.short))
