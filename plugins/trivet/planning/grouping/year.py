"""All units of a class's year at once: kept ones stay, the others are drawn together."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from trivet.model.department import Department
from trivet.model.lock import Groups, Lock
from trivet.model.roster import Roster
from trivet.model.school import Run
from trivet.planning.grouping.draw import draw
from trivet.planning.grouping.experience import Experience
from trivet.planning.grouping.for_class import Unseated, counted_before, request_for, runs_in_order
from trivet.planning.grouping.kept import replace_lock
from trivet.planning.grouping.ledger import Ledger, ledger_of, role_spread, seat_of
from trivet.planning.grouping.request import Conflict, Draw, Request
from trivet.planning.grouping.roles import Card
from trivet.planning.grouping.share_roles import share

Keeper = Callable[[Draw, Request, Run, Sequence[Lock]], Lock]
"""Makes a lock of a draw: the caller knows the date and the key."""

WITHOUT_SKELETON = 2
"""Years tried without the skeleton: for some sizes it pays to go without."""


@dataclass(frozen=True, slots=True)
class YearUnit:
    """One unit of the year. `drawn` and `request` are None where its groups were kept before; `private` where these are leveled."""

    run: Run
    lock: Lock
    request: Request | None = None
    drawn: Draw | None = None
    private: bool = False


Year = tuple[YearUnit, ...]


def draw_year(
    department: Department,
    class_id: str,
    roster: Roster | None,
    own: Experience,
    keeper: Keeper,
    *,
    past: frozenset[str] = frozenset(),
) -> Year | Conflict | Unseated:
    """Return all units that the class runs, in order of date.

    The skeleton is tried, and some years without it; the year with the fewest repeats is taken. Duties are
    dealt last, over all drawn units together. Units in `past` began without kept groups: they are left out.
    """
    runs = [run for run in runs_in_order(department, class_id) if run.unit not in past]
    drawing = _Drawing(department, runs, roster, own, keeper)
    best: Year | None = None
    for way in range(1 + WITHOUT_SKELETON):
        year = drawing.go(way)
        if not isinstance(year, tuple):
            return year
        if best is None or _repeats(year) < _repeats(best):
            best = year
        if not _repeats(best):
            break
    return _with_cards(best or ())


def _repeats(year: Year) -> int:
    return sum(unit.lock.repeats for unit in year)


@dataclass(frozen=True, slots=True)
class _Drawing:
    department: Department
    runs: Sequence[Run]
    roster: Roster | None
    own: Experience
    keeper: Keeper

    def go(self, way: int) -> Year | Conflict | Unseated:
        """Draw the missing units one after another, each with all before it as history; way 0 is with the skeleton."""
        department = self.department
        units: list[YearUnit] = []
        for run in self.runs:
            leveled = self.own.leveled.get(run.unit)
            kept = leveled or department.locks.get((run.class_id, run.unit))
            if kept is not None:
                units.append(YearUnit(run, kept, private=leveled is not None))
                continue
            asked = request_for(department, run, self.roster, own=self.own)
            if isinstance(asked, Unseated):
                return asked
            request = replace(asked, skeleton=way == 0, seed=f"{asked.seed} {way}" if way else asked.seed)
            drawn = draw(request)
            if isinstance(drawn, Conflict):
                return drawn
            lock = self.keeper(drawn, request, run, counted_before(department, run))
            department = replace_lock(department, lock)
            units.append(YearUnit(run, lock, request, drawn))
        return tuple(units)


def _with_cards(year: Year) -> Year:
    """Deal the duties of all drawn units together, after what the kept ones dealt."""
    new = [unit for unit in year if unit.request is not None and unit.request.deal_roles]
    held = ledger_of(unit.lock.groups for unit in year if unit.drawn is None).duties
    teams = [[tuple(map(seat_of, team)) for group in unit.lock.groups.values() for team in group.teams.values()] for unit in new]
    dealt = {unit.run.unit: cards for unit, cards in zip(new, share(teams, held), strict=True)}
    return tuple(_replaced(unit, dealt[unit.run.unit]) if unit.run.unit in dealt else unit for unit in year)


def _replaced(unit: YearUnit, cards: dict[int, Card]) -> YearUnit:
    return replace(unit, lock=replace(unit.lock, groups=_dealt(unit.lock.groups, cards)))


def _dealt(groups: Groups, cards: dict[int, Card]) -> Groups:
    return {
        letter: replace(group, teams={code: {n: cards[seat_of(n)] for n in team} for code, team in group.teams.items()})
        for letter, group in groups.items()
    }


def year_ledger(year: Year, *, public: bool = True) -> Ledger:
    """Return who has worked with whom over the whole year."""
    return ledger_of(unit.lock.groups for unit in year if not (public and unit.private))


def year_role_spread(year: Year) -> int:
    """Return the largest difference, over the students, between how often one holds each of the three main cards in the year."""
    if not year:
        return 0
    return role_spread(year[-1].lock.groups, ledger_of(unit.lock.groups for unit in year[:-1]))


def not_yet_together(year: Year, seats: Sequence[int]) -> dict[int, tuple[int, ...]]:
    """Return for each student those who have not been a teammate over the year."""
    return not_met(year_ledger(year, public=False), seats)


def not_met(ledger: Ledger, seats: Sequence[int]) -> dict[int, tuple[int, ...]]:
    """Return for each student those with whom there was no team yet."""
    met = ledger.teams
    return {seat: tuple(other for other in seats if other != seat and not met.get((min(seat, other), max(seat, other)))) for seat in seats}
