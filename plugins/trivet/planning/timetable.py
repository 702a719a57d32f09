"""Which rounds stand on which meeting and how long a station lasts: the exact optimum.

Objective, in this order: fewest meetings from the start to the last block; one station length for all rounds, as near to
the target as every day of the plan allows; more rounds earlier (the smallest sum of the rounds' meetings); the smaller tuple
of rounds per meeting. The write-up is short only where every round day of the plan holds its evidence line.
What a run has behind it stays: then the target is the length of the rounds already held, so that every group gets the same.
A unit that prefers minutes has rounds of different lengths instead (`uneven`).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from trivet.planning.costs import Costs, DayParts, overhead
from trivet.planning.minutes import RoundRange
from trivet.planning.progress import NOTHING, ROUNDS, Progress
from trivet.planning.uneven import uneven

__all__ = ["ROUNDS", "NoTimetable", "Timetable", "timetable"]


@dataclass(frozen=True, slots=True)
class Timetable:
    """Station minutes, and for each meeting from the first how many rounds it holds, up to the last one used.

    `write_up` are its half minutes (0 at home); it stands on the last meeting. `every_evidence`: each round day has its line.
    `resumes` are the half minutes of a stopped round, with which the first meeting with a round begins; `begun` as for `Progress`.
    `uneven` gives each meeting the minutes of its whole rounds where they may differ; `station_minutes` are then those of the shortest.
    """

    station_minutes: int
    rounds: tuple[int, ...]
    write_up: int
    every_evidence: bool
    resumes: int = 0
    begun: bool = False
    uneven: tuple[tuple[int, ...], ...] = ()

    def lengths(self, meeting: int) -> tuple[int, ...]:
        """Return the half minutes at the stations in each round of a meeting."""
        parts = self.day(meeting)
        if parts is None:
            return ()
        if not self.uneven:
            return parts.lengths(self.station_minutes)
        whole = tuple(2 * minutes for minutes in self.uneven[meeting])
        return (parts.resumes, *whole) if parts.resumes else whole

    def day(self, meeting: int) -> DayParts | None:
        """What a meeting holds, None where it holds neither a round nor the write-up."""
        rounds = self.rounds[meeting]
        write_up = self.write_up if meeting == len(self.rounds) - 1 else 0
        if not rounds and not write_up:
            return None
        opens = bool(rounds) and not any(self.rounds[:meeting])
        return DayParts(rounds, first=opens and not self.begun, write_up=write_up, resumes=self.resumes if opens else 0)


@dataclass(frozen=True, slots=True)
class NoTimetable:
    """No meetings hold what is left. `fits` of `rounds_left` rounds found a place; `needs` is the shortest period for the next round in
    half minutes, and `first` whether that round is the unit's first.
    """  # fmt: skip

    fits: int
    needs: int
    longest: int
    rounds_left: int = ROUNDS
    first: bool = True


def timetable(
    periods: Sequence[int], allowed: RoundRange, costs: Costs, rounds_a_day: int, so_far: Progress = NOTHING
) -> Timetable | NoTimetable:
    """Return the best timetable over the meetings whose lengths in minutes are `periods`, in order.

    `rounds_a_day` is at least 1. Longer rounds never finish earlier, so the number of meetings is found with the shortest
    round, and the station minutes by trying the target first.
    """
    return _timetable(tuple(periods), allowed, costs, rounds_a_day, so_far)


@lru_cache(maxsize=4096)  # a change is tried by timing all runs of a class anew, most of them as they were
def _timetable(periods: tuple[int, ...], allowed: RoundRange, costs: Costs, rounds_a_day: int, so_far: Progress) -> Timetable | NoTimetable:
    if not so_far.rounds_left and (so_far.written or costs.write_up is None):
        return Timetable(so_far.minutes or allowed.target, (), 0, so_far.every_evidence, begun=True)
    search = _Search(allowed, costs, rounds_a_day, so_far)
    plans = search.all(periods, allowed.low)
    if not plans:
        return search.why_not(periods)
    meetings = min(len(plan.rounds) for plan in plans)
    if allowed.differ:
        return search.uneven(periods[:meetings])
    target = allowed.target if so_far.minutes is None else max(allowed.low, so_far.minutes)
    for station_minutes in range(target, allowed.low - 1, -1):
        found = search.all(periods[:meetings], station_minutes)
        if found:
            return min(found, key=_rank)
    raise AssertionError("the shortest round fits these meetings")


def _rank(plan: Timetable) -> tuple[int, tuple[int, ...], bool]:
    return (sum(meeting * rounds for meeting, rounds in enumerate(plan.rounds)), plan.rounds, not plan.every_evidence)


@dataclass(frozen=True, slots=True)
class _Search:
    allowed: RoundRange
    costs: Costs
    rounds_a_day: int
    so_far: Progress

    def all(self, periods: Sequence[int], station_minutes: int) -> list[Timetable]:
        """Return the plans that end first, with and without an evidence line on each round day."""
        choices = (True, False) if self.so_far.every_evidence else (False,)
        found = (self.earliest(periods, station_minutes, short=short) for short in choices)
        return [plan for plan in found if plan is not None]

    def earliest(self, periods: Sequence[int], station_minutes: int, *, short: bool) -> Timetable | None:
        """Return the plan that ends first, ties by `_rank`; `short` asks for an evidence line on each round day.

        State: rounds done before a meeting. Value: the smallest (sum of the rounds' meetings, rounds per meeting) that reaches it.
        """
        costs, most = self.costs, self.so_far.rounds_left
        write_up = self.so_far.write_up(costs, short=short)
        reached: dict[int, tuple[int, tuple[int, ...]]] = {0: (0, ())}
        for meeting, minutes in enumerate(periods):
            after: dict[int, tuple[int, tuple[int, ...]]] = {}
            ends: list[tuple[int, tuple[int, ...]]] = []
            for done, (late, before) in reached.items():
                for rounds in range(min(self.rounds_a_day, most - done) + 1):
                    parts = self.so_far.day_parts(done, rounds)
                    line = costs.evidence if short and rounds else 0
                    spare = 2 * minutes - overhead(parts, costs) - sum(parts.lengths(station_minutes)) - line
                    if rounds and spare < 0:
                        break
                    value = (late + meeting * rounds, (*before, rounds))
                    total = done + rounds
                    after[total] = min(after.get(total, value), value)
                    if total == most and spare >= write_up:
                        ends.append(value)
            if ends:
                return Timetable(station_minutes, min(ends)[1], write_up, short, self.so_far.resumes, self.so_far.begun)
            reached = after
        return None

    def uneven(self, periods: Sequence[int]) -> Timetable:
        """Return the plan with most minutes over these meetings, which hold the shortest rounds."""
        found = uneven(periods, self.allowed, self.costs, self.rounds_a_day, self.so_far)
        if found is None:
            raise AssertionError("the shortest round fits these meetings")
        return Timetable(
            station_minutes=min((minutes for day in found.minutes for minutes in day), default=self.allowed.target),
            rounds=found.rounds,
            write_up=self.so_far.write_up(self.costs, short=found.short),
            every_evidence=found.short,
            resumes=self.so_far.resumes,
            begun=self.so_far.begun,
            uneven=found.minutes,
        )

    def why_not(self, periods: Sequence[int]) -> NoTimetable:
        """Count the rounds that found a place, one after the other as early as they go."""
        done, left = 0, self.so_far.rounds_left
        for minutes in periods:
            fitting = [rounds for rounds in range(1, min(self.rounds_a_day, left - done) + 1) if self._needs(done, rounds) <= 2 * minutes]
            done += max(fitting, default=0)
        return NoTimetable(done, self._needs(0, min(1, left)), max(periods, default=0), left, not self.so_far.begun)

    def _needs(self, done: int, rounds: int) -> int:
        parts = self.so_far.day_parts(done, rounds)
        return overhead(parts, self.costs) + sum(parts.lengths(self.allowed.low))
