"""How long can a class go? Weeks of teams for a class of some size, with nobody's name, level or rule."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from trivet.planning.grouping.board import board
from trivet.planning.grouping.feasible import Answer, Placement
from trivet.planning.grouping.ledger import Ledger, meetings
from trivet.planning.grouping.letters import in_seat_order
from trivet.planning.grouping.request import Request
from trivet.planning.grouping.rules import tables_of
from trivet.planning.grouping.seat import best_seating, partition

MOST_UNITS = 60
"""More than a school year holds; a class in pairs could go on longer."""

SEARCHED, PATIENCE = 6, 2
"""Years tried at most without the skeleton, and how many in vain: for some sizes it pays to go without."""


@dataclass(frozen=True, slots=True)
class WeekOfTeams:
    """One unit: teams of students from 1, station groups as indexes of teams (() for a whole class), and what is proved about it."""

    teams: tuple[tuple[int, ...], ...]
    station_groups: tuple[tuple[int, ...], ...]
    repeats: int
    proved_minimum: int
    unavoidable: bool


def weeks(students: int, team_size: int = 4, units: int | None = None, *, whole_class: bool = False) -> tuple[WeekOfTeams, ...]:
    """Return units one after another, each as good as it can be after the earlier ones.

    Without `units` it goes on until the first unit with a repeat, which is the last one returned. Several ways are tried; the
    one with the fewest repeats, or the longest, is taken.
    """
    plain = Request(class_id="", seats=tuple(range(1, students + 1)), seed="", team_size=team_size, whole_class=whole_class)
    fewest = counting_bound(students, [team for group in plain.shape(students) for team in group], units or 0)
    best: list[WeekOfTeams] = []
    waited = 0
    for way in range(1 + SEARCHED):
        year = _no_worse(replace(plain, skeleton=way == 0, seed=f"weeks {students} {team_size} {way}"), units, best)
        waited += 1
        if not best or _worth(year, units) < _worth(best, units):
            best, waited = year, 0
        if waited == PATIENCE or (units is not None and _worth(best, units) == fewest):
            break
    return tuple(best)


def counting_bound(students: int, sizes: Sequence[int], units: int) -> int:
    """Return the least sum of repeats that any year of `units` can have: the meetings spread over all pairs as evenly as can be."""
    pairs = students * (students - 1) // 2
    each, more = divmod(units * sum(size * (size - 1) // 2 for size in sizes), max(1, pairs))
    return (pairs - more) * each * (each - 1) // 2 + more * each * (each + 1) // 2


def _no_worse(asked: Request, units: int | None, best: list[WeekOfTeams]) -> list[WeekOfTeams]:
    """Return the year of one way, or its beginning once it is no better than the best."""
    year: list[WeekOfTeams] = []
    for unit in _year(asked, units):
        year.append(unit)
        if best and units is not None and _worth(year, units) >= _worth(best, units):
            break
    return year


def _worth(year: list[WeekOfTeams], units: int | None) -> int:
    """Return what a way costs: its repeats, or how early it ends."""
    return sum(unit.repeats for unit in year) if units is not None else -len(year)


def _year(asked: Request, units: int | None) -> Iterator[WeekOfTeams]:
    """Yield the units of one way; history is all that came before."""
    tables = tables_of(asked.shape(len(asked.seats)))
    ledger = Ledger()
    for number in range(units if units is not None else MOST_UNITS):
        request = replace(asked, seed=f"{asked.seed} {number}", ledger=ledger)
        costs = board(request.seats, tables, met=ledger.teams)
        seating, proof = best_seating(request, costs, Placement(Answer.YES))
        groups = [group for group in in_seat_order(partition(request.seats, tables, seating.team)) if group]
        teams = tuple(team for group in groups for team in group)
        yield WeekOfTeams(
            teams=teams,
            station_groups=() if asked.whole_class else _indexes([len(group) for group in groups]),
            repeats=seating.cost,
            proved_minimum=max(proof.bound.repeats, proof.within),
            unavoidable=proof.within == seating.cost,
        )
        if units is None and seating.cost:
            return
        met = dict(ledger.teams)
        for two in meetings(teams):
            met[two] = met.get(two, 0) + 1
        ledger = Ledger(teams=met)


def _indexes(sizes: list[int]) -> tuple[tuple[int, ...], ...]:
    starts = [sum(sizes[:place]) for place in range(len(sizes))]
    return tuple(tuple(range(start, start + size)) for start, size in zip(starts, sizes, strict=True))
