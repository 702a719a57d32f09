"""Every timetable there is, tried one by one, as the design says it: the oracle of the dynamic program.

Written from the text alone, with nothing of the planner: minutes are plain numbers, a day is a list of minutes.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import chain, combinations, product


@dataclass(frozen=True)
class Lesson:
    """Minutes of everything but the stations."""

    settle_in: float = 4
    expectations: float = 1
    places: float = 2
    launch: float = 6.5
    clean_up: float = 1
    move: float = 2
    evidence: float = 2
    reflection: float = 5
    reflection_most: float = 10
    pack_up: float = 1
    pack_up_most: float = 3
    write_up: float = 20
    write_up_with_evidence: float = 12
    at_home: bool = False


@dataclass(frozen=True)
class Found:
    """A complete timetable: station minutes, rounds of each meeting, meeting and minutes of the write-up, days with an evidence line."""

    minutes: int
    rounds: tuple[int, ...]
    write_up_on: int | None
    write_up: float
    evidence_on: frozenset[int]


def parts_of_day(lesson: Lesson, minutes: int, rounds: int, *, first: bool, write_up: float, evidence: bool) -> list[float]:
    """The minutes of a day's blocks, before anything left over is dealt."""
    day = [lesson.settle_in]
    if first:
        day.append(lesson.expectations)
    if rounds:
        day.append(lesson.places)
        for number in range(rounds):
            if number:
                day.append(lesson.move)
            day += [lesson.launch, minutes, lesson.clean_up]
    if evidence:
        day.append(lesson.evidence)
    if write_up:
        day.append(write_up)
    return [*day, lesson.reflection, lesson.pack_up]


def all_timetables(periods: list[int], lesson: Lesson, low: int, target: int, rounds_a_day: int) -> list[Found]:
    """Every way to lay three rounds and the write-up on the meetings so that each day fits its period."""
    found = []
    for rounds in product(range(rounds_a_day + 1), repeat=len(periods)):
        if sum(rounds) != 3:
            continue
        round_days = [day for day, count in enumerate(rounds) if count]
        subsets = chain.from_iterable(combinations(round_days, size) for size in range(len(round_days) + 1))
        for minutes, lines in product(range(low, target + 1), list(subsets)):
            write_up = 0.0 if lesson.at_home else lesson.write_up_with_evidence if len(lines) == len(round_days) else lesson.write_up
            for write_up_on in [None] if lesson.at_home else range(round_days[-1], len(periods)):
                if all(
                    sum(
                        parts_of_day(
                            lesson,
                            minutes,
                            count,
                            first=day == round_days[0],
                            write_up=write_up if day == write_up_on else 0,
                            evidence=day in lines,
                        )
                    )
                    <= periods[day]
                    for day, count in enumerate(rounds)
                    if count or day == write_up_on
                ):
                    last = round_days[-1] if write_up_on is None else write_up_on
                    found.append(Found(minutes, rounds[: last + 1], write_up_on, write_up, frozenset(lines)))
    return found


def best(found: list[Found]) -> Found | None:
    """Fewest days, then the longest station up to the target, more rounds earlier, the smaller tuple, most evidence lines."""
    return min(
        found,
        key=lambda t: (
            len(t.rounds),
            -t.minutes,
            sum(day * count for day, count in enumerate(t.rounds)),
            t.rounds,
            -len(t.evidence_on),
        ),
        default=None,
    )
