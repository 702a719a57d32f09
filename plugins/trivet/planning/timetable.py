"""Which rounds stand on which meeting and how long a station lasts: the exact optimum.

Objective, in this order: fewest meetings from the start to the last block; one station length for all rounds, as near to
the target as every day of the plan allows; more rounds earlier (the smallest sum of the rounds' meetings); the smaller tuple
of rounds per meeting. The write-up is short only where every round day of the plan holds its evidence line.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from trivet.planning.costs import Costs, DayParts, overhead, shortest_period
from trivet.planning.minutes import RoundRange

ROUNDS = 3


@dataclass(frozen=True, slots=True)
class Timetable:
    """Station minutes, and for each meeting from the first how many rounds it holds, up to the last one used.

    `write_up` are its half minutes (0 at home); it stands on the last meeting. `every_evidence`: each round day has its line.
    """

    station_minutes: int
    rounds: tuple[int, ...]
    write_up: int
    every_evidence: bool

    def day(self, meeting: int) -> DayParts | None:
        """What a meeting holds, None where it holds neither a round nor the write-up."""
        rounds = self.rounds[meeting]
        write_up = self.write_up if meeting == len(self.rounds) - 1 else 0
        if not rounds and not write_up:
            return None
        return DayParts(rounds, first=bool(rounds) and not any(self.rounds[:meeting]), write_up=write_up)


@dataclass(frozen=True, slots=True)
class NoTimetable:
    """No meetings hold the unit. `fits` rounds found a place; `needs` is the shortest period for a first round in half minutes."""

    fits: int
    needs: int
    longest: int


def timetable(periods: Sequence[int], allowed: RoundRange, costs: Costs, rounds_a_day: int) -> Timetable | NoTimetable:
    """Return the best timetable over the meetings whose lengths in minutes are `periods`, in order.

    `rounds_a_day` is at least 1. Longer rounds never finish earlier, so the number of meetings is found with the shortest
    round, and the station minutes by trying the target first.
    """
    plans = [plan for short in (True, False) if (plan := _earliest(periods, allowed.low, costs, rounds_a_day, short=short))]
    if not plans:
        return _why_not(periods, allowed, costs, rounds_a_day)
    meetings = min(len(plan.rounds) for plan in plans)
    for station_minutes in range(allowed.target, allowed.low - 1, -1):
        found = [
            plan for short in (True, False) if (plan := _earliest(periods[:meetings], station_minutes, costs, rounds_a_day, short=short))
        ]
        if found:
            return min(found, key=_rank)
    raise AssertionError("the shortest round fits these meetings")


def _rank(plan: Timetable) -> tuple[int, tuple[int, ...], bool]:
    return (sum(meeting * rounds for meeting, rounds in enumerate(plan.rounds)), plan.rounds, not plan.every_evidence)


def _earliest(periods: Sequence[int], station_minutes: int, costs: Costs, rounds_a_day: int, *, short: bool) -> Timetable | None:
    """Return the plan that ends first, ties by `_rank`; `short` asks for an evidence line on each round day.

    State: rounds done before a meeting. Value: the smallest (sum of the rounds' meetings, rounds per meeting) that reaches it.
    """
    write_up = (costs.write_up_with_evidence if short else costs.write_up) or 0
    reached: dict[int, tuple[int, tuple[int, ...]]] = {0: (0, ())}
    for meeting, minutes in enumerate(periods):
        after: dict[int, tuple[int, tuple[int, ...]]] = {}
        ends: list[tuple[int, tuple[int, ...]]] = []
        for done, (late, before) in reached.items():
            for rounds in range(min(rounds_a_day, ROUNDS - done) + 1):
                parts = DayParts(rounds, first=done == 0 and rounds > 0)
                spare = 2 * minutes - overhead(parts, costs) - 2 * station_minutes * rounds - (costs.evidence if short and rounds else 0)
                if rounds and spare < 0:
                    break
                value = (late + meeting * rounds, (*before, rounds))
                total = done + rounds
                after[total] = min(after.get(total, value), value)
                if total == ROUNDS and spare >= write_up:
                    ends.append(value)
        if ends:
            return Timetable(station_minutes, min(ends)[1], write_up, short)
        reached = after
    return None


def _why_not(periods: Sequence[int], allowed: RoundRange, costs: Costs, rounds_a_day: int) -> NoTimetable:
    """Count the rounds that found a place, one after the other as early as they go."""
    done = 0
    for minutes in periods:
        fitting = [
            rounds
            for rounds in range(1, min(rounds_a_day, ROUNDS - done) + 1)
            if overhead(DayParts(rounds, first=done == 0), costs) + 2 * allowed.low * rounds <= 2 * minutes
        ]
        done += max(fitting, default=0)
    return NoTimetable(done, shortest_period(allowed.low, costs), max(periods, default=0))
