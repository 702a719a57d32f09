"""Who has worked with whom, counted over kept groups."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import combinations

from trivet.model.lock import Groups, Lock

Two = tuple[int, int]
"""Two seats, the lower first."""

MAIN_DUTIES = ("leader", "recorder", "materials")
"""The three cards that every team has."""


@dataclass(frozen=True, slots=True)
class Ledger:
    """What earlier units of this school year count for.

    `teams`: in how many units two seats were teammates. `pairs`: in how many they were partners online.
    `duties`: how often a seat held each card, by (seat, role id); an extra card counts only where it was a card of its own.
    """

    teams: Mapping[Two, int] = field(default_factory=dict)
    pairs: Mapping[Two, int] = field(default_factory=dict)
    duties: Mapping[tuple[int, str], int] = field(default_factory=dict)

    def plus(self, groups: Groups, together: Callable[[Two], bool] | None = None) -> Ledger:
        """Return the ledger with one more unit in it; with `together`, only those count who were there (a seat alone as two of it)."""
        teams, pairs, duties = Counter(self.teams), Counter(self.pairs), Counter(self.duties)
        teams.update(two for two in team_meetings(groups) if together is None or together(two))
        pairs.update(two for two in pair_meetings(groups) if together is None or together(two))
        duties.update(held for held in duties_held(groups) if together is None or together((held[0], held[0])))
        return Ledger(dict(teams), dict(pairs), dict(duties))


def seat_of(number: str) -> int:
    """Return the seat of a student's number: 7 for `p1-07`."""
    return int(number.rpartition("-")[2])


def meetings(sets: Iterable[Sequence[int]]) -> list[Two]:
    """Return every two seats that share one of `sets`, once for each set they share."""
    return [two for members in sets for two in combinations(sorted(members), 2)]


def team_meetings(groups: Groups) -> list[Two]:
    """Return the teammates of one unit."""
    return meetings([seat_of(n) for n in team] for group in groups.values() for team in group.teams.values())


def pair_meetings(groups: Groups) -> list[Two]:
    """Return the partners of one unit; a trio is three meetings."""
    return meetings([seat_of(n) for n in pair] for group in groups.values() for pair in group.pairs)


def duties_held(groups: Groups) -> list[tuple[int, str]]:
    """Return the cards held in one unit, by seat and role id.

    The three main duties count wherever they are held; reporter and timekeeper count only as somebody's own card.
    """
    return [
        (seat_of(number), role)
        for group in groups.values()
        for team in group.teams.values()
        for number, roles in team.items()
        for place, role in enumerate(roles)
        if role in MAIN_DUTIES or place == 0
    ]


def ledger_of(groups: Iterable[Groups]) -> Ledger:
    """Return the ledger of several units."""
    ledger = Ledger()
    for each in groups:
        ledger = ledger.plus(each)
    return ledger


def repeats(groups: Groups, before: Ledger) -> int:
    """Return the sum, over today's teammates, of the units in which they were teammates before.

    Summed over the units of a year this is Σ c(c-1)/2 over all pairs, c = times two students were teammates.
    """
    return sum(before.teams.get(two, 0) for two in team_meetings(groups))


def repeated_pairs(groups: Groups, before: Ledger) -> int:
    """Return how many of today's teammates were teammates before, however often."""
    return sum(before.teams.get(two, 0) > 0 for two in team_meetings(groups))


def pair_repeats(groups: Groups, before: Ledger) -> int:
    """Return the sum, over today's partners, of the units in which they were partners before."""
    return sum(before.pairs.get(two, 0) for two in pair_meetings(groups))


def role_spread(groups: Groups, before: Ledger) -> int:
    """Return the largest difference, over the students of `groups`, between how often one held each of the three main cards."""
    held = before.plus(groups).duties
    seats = {seat_of(n) for group in groups.values() for n in group.students}
    counts = [[held.get((seat, role), 0) for role in MAIN_DUTIES] for seat in sorted(seats)]
    return max((max(each) - min(each) for each in counts), default=0)


def counted_ledger(lock: Lock, locks: Mapping[str, Lock]) -> Ledger:
    """Return the ledger that a lock was counted against: the units it names, from the class's `locks` by unit."""
    return ledger_of(locks[unit].groups for unit in lock.counted if unit in locks)
