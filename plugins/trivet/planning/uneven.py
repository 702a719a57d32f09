"""Rounds of different lengths, for a unit that prefers minutes: each day gives its rounds as much as it holds.

Objective over the fewest meetings: most minutes at the stations in all; least between the shortest and the longest round; then the ties
of the usual timetable. A day's rounds share its minutes as evenly as whole minutes can, the earlier one longer, which for any sum keeps
both the longest as short and the shortest as long as can be. So only the days of the rounds are left to choose, and all are tried.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations_with_replacement

from trivet.planning.costs import Costs, DayParts, overhead
from trivet.planning.minutes import RoundRange
from trivet.planning.progress import Progress


@dataclass(frozen=True, slots=True)
class Uneven:
    """For each meeting how many rounds it holds, and the minutes of the whole ones among them; `short`: each has its evidence line."""

    rounds: tuple[int, ...]
    minutes: tuple[tuple[int, ...], ...]
    short: bool

    def rank(self) -> tuple[int, int, int, tuple[int, ...], bool]:
        """Return what is smallest for the best one."""
        whole = [minutes for day in self.minutes for minutes in day]
        late = sum(meeting * rounds for meeting, rounds in enumerate(self.rounds))
        return (-sum(whole), max(whole, default=0) - min(whole, default=0), late, self.rounds, not self.short)


def uneven(periods: Sequence[int], allowed: RoundRange, costs: Costs, rounds_a_day: int, so_far: Progress) -> Uneven | None:
    """Return the best rounds over exactly these meetings, the write-up on the last one; None where they do not fit."""
    found = [
        Uneven(rounds, minutes, short)
        for short in ((True, False) if so_far.every_evidence else (False,))
        for rounds in _spreads(len(periods), so_far.rounds_left, rounds_a_day)
        if (minutes := _minutes(periods, rounds, allowed, costs, so_far, short=short)) is not None
    ]
    return min(found, key=Uneven.rank, default=None)


def _spreads(meetings: int, rounds: int, rounds_a_day: int) -> Iterator[tuple[int, ...]]:
    """Yield every way to put so many rounds on meetings."""
    for days in combinations_with_replacement(range(meetings), rounds):
        spread = tuple(days.count(meeting) for meeting in range(meetings))
        if max(spread, default=0) <= rounds_a_day:
            yield spread


def _minutes(
    periods: Sequence[int], rounds: Sequence[int], allowed: RoundRange, costs: Costs, so_far: Progress, *, short: bool
) -> tuple[tuple[int, ...], ...] | None:
    """The most minutes that each whole round can have, None where one has not enough, or the write-up has not."""
    found = []
    done = 0
    for meeting, (period, count) in enumerate(zip(periods, rounds, strict=True)):
        parts = so_far.day_parts(done, count, write_up=so_far.write_up(costs, short=short) if meeting == len(periods) - 1 else 0)
        done += count
        shared = _shared(2 * period, parts, allowed, costs, costs.evidence if short and count else 0)
        if shared is None:
            return None
        found.append(shared)
    return tuple(found)


def _shared(period: int, parts: DayParts, allowed: RoundRange, costs: Costs, line: int) -> tuple[int, ...] | None:
    if not parts.rounds and not parts.write_up:
        return ()
    left = period - overhead(parts, costs) - parts.resumes - line
    whole = parts.rounds - bool(parts.resumes)
    if left < 2 * allowed.low * whole:
        return None
    if not whole:
        return ()
    least, more = divmod(min(left // 2, allowed.target * whole), whole)
    return tuple(least + (place < more) for place in range(whole))
