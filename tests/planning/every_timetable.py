"""A run laid out by trying every timetable there is, as the design says it: the oracle of the planner's days.

Written from the text of "Time" in the design alone, with nothing of the planner and nothing of the model: minutes are plain numbers,
a class meets in a list of periods, and a day is a list of (kind, minutes, round).
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from itertools import chain, combinations, product

Blocks = list[tuple[str, float, int | None]]

READING_RATE = {6: 128, 7: 133, 8: 134}
"""Words a minute, silent, 25th percentile (Spichtig et al. 2016)."""


@dataclass(frozen=True, kw_only=True)
class Lesson:
    """What a unit, a class and a department bring: minutes unless the name says otherwise."""

    online: float
    hands_on: float
    teacher_led: float
    card_words: int
    grade: int
    students: int
    whole_class: bool = False
    at_home: bool = False
    stretch: bool = False
    prefer_minutes: bool = False
    known: bool = False
    least: int = 20
    most: int = 30
    rounds_a_day: int = 2
    evidence: float = 2
    settle_in: float = 4
    move: float = 2
    write_up: float = 20
    write_up_with_evidence: float = 12


@dataclass(frozen=True)
class Choice:
    """One complete timetable of what is left: minutes of each whole round, rounds of each day, the write-up at its end."""

    minutes: tuple[int, ...]
    rounds: tuple[int, ...]
    write_up: float
    lines: frozenset[int]


@dataclass
class Result:
    """The days that are laid out, by the number of the meeting, and whether all of the unit has its place."""

    days: dict[int, tuple[Blocks, float]] = field(default_factory=dict)
    whole: bool = False


def half_up(minutes: float) -> float:
    """Up to a half minute."""
    return math.ceil(2 * minutes - 1e-9) / 2


def teams_of(students: int) -> list[int]:
    """How many teams each station group has: as few as hold four each, none under three unless the group itself is as small."""
    groups = [students // 3 + (1 if place < students % 3 else 0) for place in range(3)]
    counts = []
    for group in groups:
        fitting = [n for n in range(1, group + 1) if group // n >= 3 and -(-group // n) <= 4]
        counts.append(min(fitting) if fitting else 1 if group else 0)
    return counts


class Unit:
    """The numbers of one run, and all ways to lay it out."""

    def __init__(self, lesson: Lesson, periods: list[int]) -> None:
        self.lesson, self.periods = lesson, periods
        teams = teams_of(lesson.students)
        asked = 0 if lesson.whole_class else sum(teams) - min(teams)
        read = max(1, half_up(lesson.card_words / READING_RATE[lesson.grade]))
        self.launch = read + 1 + 1 + half_up(asked * 30 / 60)
        self.reflection = max(5, half_up(sum(teams) * 0.5))
        self.expectations = 1 if lesson.known else 3
        needed = max(lesson.online, lesson.hands_on, lesson.teacher_led)
        self.possible = needed <= lesson.most
        self.low = max(lesson.least, math.ceil(needed))
        self.target = lesson.most if lesson.stretch else min(lesson.most, max(self.low, math.floor(needed + 2)))
        self.known_fits: dict[object, bool] = {}
        # what is behind the run
        self.done = 0
        self.left_of_round = 0
        self.begun = False
        self.minutes: int | None = None
        self.every_line = True
        self.written = lesson.at_home

    def fixed(self, lengths: list[int], *, resumed: bool, first: bool, write_up: float) -> Blocks:
        """The blocks of a day before anything left over is dealt."""
        row: Blocks = [("settle_in", self.lesson.settle_in, None)]
        if first:
            row.append(("expectations", self.expectations, None))
        if lengths:
            row.append(("places", 2, None))
        for place, length in enumerate(lengths):
            number = self.done + 1 + place
            if place:
                row.append(("move", self.lesson.move, None))
            row.append(("recap", 1, number) if resumed and place == 0 else ("launch", self.launch, number))
            row += [("station", length, number), ("clean_up", 1, number)]
        if write_up:
            row.append(("write_up", write_up, None))
        return [*row, ("reflection", self.reflection, None), ("pack_up", 1, None)]

    def lay(self, meeting: int, lengths: list[int], *, write_up: float = 0) -> tuple[Blocks, float]:
        """Lay out one day, deal what is left over, and keep what it means for the rest."""
        resumed = self.left_of_round > 0 and bool(lengths)
        row = self.fixed(lengths, resumed=resumed, first=bool(lengths) and not self.begun, write_up=write_up)
        left = self.periods[meeting] - sum(minutes for _, minutes, _ in row)
        assert left >= 0
        line = self.lesson.evidence if lengths and left >= self.lesson.evidence else 0
        if lengths:
            self.every_line = self.every_line and line > 0
        left -= line
        reflection = min(left, max(10, self.reflection) - self.reflection)
        pack_up = min(left - reflection, 2)
        left -= reflection + pack_up
        last = next((place for place, each in reversed(list(enumerate(row))) if each[0] == "clean_up"), None)
        if line and last is not None:
            row.insert(last + 1, ("evidence", line, None))
        longer = {"reflection": reflection, "pack_up": pack_up}
        self.begun = self.begun or bool(lengths)
        self.done += len(lengths)
        self.left_of_round = 0 if lengths else self.left_of_round
        self.written = self.written or write_up > 0
        return [(kind, minutes + longer.get(kind, 0), number) for kind, minutes, number in row if minutes], left

    def choices(self, meetings: list[int]) -> Iterator[Choice]:
        """Every timetable of what is left over exactly these meetings, in which the last one is used."""
        left = 3 - self.done
        target = self.target if self.minutes is None else max(self.low, self.minutes)
        for rounds in product(range(min(left, self.lesson.rounds_a_day) + 1), repeat=len(meetings)):
            if sum(rounds) != left or (self.written and not (rounds and rounds[-1])):
                continue
            held = [place for place, count in enumerate(rounds) if count]
            for lines in chain.from_iterable(combinations(held, size) for size in range(len(held) + 1)):
                all_lines = self.every_line and len(lines) == len(held)
                write_up = 0 if self.written else self.lesson.write_up_with_evidence if all_lines else self.lesson.write_up
                for minutes in self.all_minutes(left - (self.left_of_round > 0), target):
                    choice = Choice(minutes, rounds, write_up, frozenset(lines))
                    if all(self.fits(meetings[place], place, choice) for place in range(len(meetings))):
                        yield choice

    def all_minutes(self, whole: int, target: int) -> Iterator[tuple[int, ...]]:
        """The minutes that so many whole rounds may have: all the same, or each its own where the unit prefers minutes."""
        if self.lesson.prefer_minutes:
            yield from product(range(self.low, self.target + 1), repeat=whole)
        else:
            yield from ((minutes,) * whole for minutes in range(self.low, target + 1))

    def lengths(self, choice: Choice, place: int) -> list[int]:
        """The minutes at the stations in each round of a day."""
        all_rounds = [*([self.left_of_round] if self.left_of_round else []), *choice.minutes]
        before = sum(choice.rounds[:place])
        return all_rounds[before : before + choice.rounds[place]]

    def fits(self, meeting: int, place: int, choice: Choice) -> bool:
        """Whether one day of a choice fits its period."""
        write_up = choice.write_up if place == len(choice.rounds) - 1 else 0
        lengths = self.lengths(choice, place)
        if not lengths and not write_up:
            return True
        opens = bool(lengths) and not any(choice.rounds[:place])
        resumed, first, line = (
            opens and self.left_of_round > 0,
            opens and not self.begun,
            self.lesson.evidence if place in choice.lines else 0,
        )
        asked = (meeting, tuple(lengths), resumed, first, write_up, line)
        if asked not in self.known_fits:
            row = self.fixed(lengths, resumed=resumed, first=first, write_up=write_up)
            self.known_fits[asked] = sum(minutes for _, minutes, _ in row) + line <= self.periods[meeting]
        return self.known_fits[asked]

    def best(self, meetings: list[int]) -> Choice | None:
        """Fewest days, then most minutes up to the target (all the same, or as near as can be), then the ties.

        Ties: more rounds earlier, the smaller tuple of rounds, most evidence lines, the longer round earlier.
        """
        for count in range(1, len(meetings) + 1):
            found = list(self.choices(meetings[:count]))
            if found:
                late = {choice: sum(place * rounds for place, rounds in enumerate(choice.rounds)) for choice in found}
                return min(found, key=lambda each: (*_most(each.minutes), late[each], each.rounds, -len(each.lines), _down(each.minutes)))
        return None


def _most(minutes: tuple[int, ...]) -> tuple[int, int]:
    return -sum(minutes), max(minutes, default=0) - min(minutes, default=0)


def _down(minutes: tuple[int, ...]) -> tuple[int, ...]:
    return tuple(-each for each in minutes)


def run(lesson: Lesson, periods: list[int], lost: set[int], stopped: Mapping[int, tuple[int, int]]) -> Result:
    """Lay a run out. `lost` are meetings; `stopped` gives, for a meeting, whole rounds done there and the minutes of the one stopped."""
    unit, result = Unit(lesson, periods), Result()
    if not unit.possible:
        return result
    ahead = list(range(len(periods)))
    for mark in sorted({*lost, *stopped}):
        choice = _plan(unit, ahead)
        if choice is not None:
            _keep(unit, result, choice, [meeting for meeting in ahead[: len(choice.rounds)] if meeting < mark])
        ahead = [meeting for meeting in ahead if meeting >= mark]
        if mark in stopped:
            _stop(unit, result, ahead, *stopped[mark])
        ahead = ahead[1:]
    choice = _plan(unit, ahead)
    result.whole = choice is not None or (unit.done == 3 and unit.written)
    if choice is not None:
        _keep(unit, result, choice, ahead[: len(choice.rounds)])
    return result


def _plan(unit: Unit, ahead: list[int]) -> Choice | None:
    """The best timetable of what is left, None where there is none or nothing is left."""
    return None if unit.done == 3 and unit.written else unit.best(ahead)


def _keep(unit: Unit, result: Result, choice: Choice, meetings: list[int]) -> None:
    lengths = [unit.lengths(choice, place) for place in range(len(meetings))]
    for place, meeting in enumerate(meetings):
        write_up = choice.write_up if place == len(choice.rounds) - 1 else 0
        if lengths[place] or write_up:
            result.days[meeting] = unit.lay(meeting, lengths[place], write_up=write_up)
        if lengths[place]:
            unit.minutes = min(choice.minutes, default=unit.minutes)


def _stop(unit: Unit, result: Result, ahead: list[int], whole: int, minutes: int) -> None:
    """On the first day ahead, hold `whole` rounds, and stop the next after some minutes: what is left of it opens the next day."""
    choice = _plan(unit, ahead)
    usual = min(choice.minutes) if choice is not None and choice.minutes else unit.minutes or unit.target
    planned = unit.lengths(choice, 0) if choice is not None and choice.rounds and unit.lesson.prefer_minutes else []
    asked = [
        unit.left_of_round if place == 0 and unit.left_of_round else (planned[place : place + 1] or [usual])[0]
        for place in range(whole + 1)
    ]
    left = asked[-1] - minutes
    result.days[ahead[0]] = unit.lay(ahead[0], [*asked[:-1], minutes])
    unit.minutes = usual
    unit.done -= 1
    unit.left_of_round = left
