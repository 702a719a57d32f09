"""The planner's days against full enumeration by an oracle that knows nothing of it (`every_timetable`)."""

from __future__ import annotations

import random
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

import pytest

from tests.planning.every_timetable import Blocks, Lesson, Result, run
from tests.support.department import tiny_bells, tiny_calendar, tiny_department, tiny_unit, words
from trivet.model.department import Department
from trivet.model.school import Defaults, Done, HalfDone, Run, SpecialDay
from trivet.model.station import Step
from trivet.model.unit import WriteUp
from trivet.planning.timed_runs import time_runs

MONDAY = date(2026, 11, 30)
CASES = 2000
BLOCKS = 10
MEETINGS = (1, 2, 3, 4, 4, 5, 5, 6, 6)
SHORT = "Look and write."
"""Three words: the words of a card's one step."""
LENGTHS = ((38, 45, 52), (45, 52, 60, 90), (30, 52, 80), (40, 41, 42, 43, 44), (52,), (50, 55, 75, 100, 110), tuple(range(30, 101)))


@dataclass(frozen=True)
class Case:
    """A run of one class in numbers. `stopped` gives, for a meeting, the whole rounds done there and the minutes of the one stopped."""

    lesson: Lesson
    periods: list[int]
    lost: set[int]
    stopped: dict[int, tuple[int, int]]
    first_round: dict[int, int]


def some_lesson(chance: random.Random, *, prefer: bool) -> Lesson:
    longest = chance.randint(10, 30)
    hands_on, online, teacher_led = chance.sample((longest, chance.randint(3, longest), chance.randint(3, longest)), 3)
    least = chance.choice((20, 20, 15, 18))
    most = chance.choice((30, least + 6))
    if prefer:  # few lengths to try
        most = max(least, longest + 1) + chance.randint(1, 3)
    return Lesson(
        online=online + chance.choice((0, 0.5)),
        hands_on=hands_on,
        teacher_led=teacher_led,
        card_words=chance.randint(8, 500),
        grade=chance.choice((6, 7, 8)),
        students=chance.randint(1, 48),
        whole_class=chance.random() < 0.3,
        at_home=chance.random() < 0.2,
        stretch=prefer or chance.random() < 0.1,
        prefer_minutes=prefer,
        known=chance.random() < 0.5,
        least=least,
        most=most,
        rounds_a_day=chance.choice((1, 2, 2, 2, 3)),
        evidence=chance.choice((2, 2, 1.5, 4, 0)),
        settle_in=chance.choice((4, 3.5)),
        move=chance.choice((2, 2.5)),
        write_up=chance.choice((20, 15.5)),
        write_up_with_evidence=chance.choice((12, 9.5)),
    )


def some_case(chance: random.Random) -> Case:
    """A run over one to six meetings; some are lost, and in some a round that the plan so far expects there is stopped."""
    prefer = chance.random() < 0.15
    lesson, lengths = some_lesson(chance, prefer=prefer), chance.choice(LENGTHS)
    if prefer:  # days that hold one or two rounds, and not the same in each
        lengths = tuple(each * lesson.most + more for each, more in ((1, 18), (1, 20), (1, 21), (1, 22), (2, 28), (2, 32)))
    periods = [chance.choice(lengths) for _ in range(chance.choice(MEETINGS))]
    lost = {meeting for meeting in range(len(periods)) if chance.random() < 0.15}
    stopped: dict[int, tuple[int, int]] = {}
    first_round: dict[int, int] = {}
    for meeting in range(len(periods)):
        if meeting in lost or chance.random() > 0.2:
            continue
        blocks, _ = run(lesson, periods, {each for each in lost if each < meeting}, stopped).days.get(meeting, ([], 0))
        stations = [(number, minutes) for kind, minutes, number in blocks if kind == "station" and number is not None]
        if stations:
            whole = chance.randrange(len(stations))
            if stations[whole][1] > 1:
                stopped[meeting] = (whole, chance.randint(1, int(stations[whole][1]) - 1))
                first_round[meeting] = stations[0][0]
    return Case(lesson, periods, lost, stopped, first_round)


def department_of(case: Case) -> Department:
    """The same in a department's own values."""
    lesson = case.lesson
    unit = tiny_unit(
        online={"steps": (Step(SHORT, lesson.online),), "explore_minutes": 0.0, "goal": words(lesson.card_words - 3), **NO_USE},
        hands_on={"steps": (Step(SHORT, lesson.hands_on),), "set_up_minutes": 0.0, "clean_up_minutes": 0.0, "goal": "x", **NOTHING_MORE},
        teacher_led={"steps": (Step(SHORT, lesson.teacher_led),), "read": None, "questions": (), "quick_check": (), **NOTHING_MORE},
        grades=(lesson.grade, 8),
        round_minutes=(lesson.least, lesson.most),
        stretch=lesson.stretch,
        prefer="minutes" if lesson.prefer_minutes else "equal",
        write_up=WriteUp(at_home=lesson.at_home),
    )
    defaults = Defaults(
        rounds_a_day=lesson.rounds_a_day,
        evidence=lesson.evidence,
        settle_in=lesson.settle_in,
        move=lesson.move,
        write_up=lesson.write_up,
        write_up_with_evidence=lesson.write_up_with_evidence,
        runs_with_full_expectations=0 if lesson.known else 2,
    )
    on = [MONDAY + timedelta(days=place) for place in range(len(case.periods))]
    bells = tiny_bells(52, **{f"of_{minutes}": minutes for minutes in set(case.periods)})
    special = {day: SpecialDay(f"of_{minutes}") for day, minutes in zip(on, case.periods, strict=True)}
    calendar = tiny_calendar(first=MONDAY, last=on[-1], weekly={0: "regular"}, special=special)
    record = Run(
        class_id="p1",
        unit=unit.slug,
        starts=MONDAY,
        way="whole_class" if lesson.whole_class else "rotate",
        lost=tuple(on[meeting] for meeting in sorted(case.lost)),
        done=tuple(
            Done(date=on[meeting], rounds=tuple(range(case.first_round[meeting], case.first_round[meeting] + whole)))
            for meeting, (whole, _) in case.stopped.items()
            if whole
        ),
        half=tuple(HalfDone(on[meeting], case.first_round[meeting] + whole, minutes) for meeting, (whole, minutes) in case.stopped.items()),
    )
    return tiny_department(size=lesson.students, unit=unit, runs=(record,), bells=bells, calendar=calendar, defaults=defaults)


NOTHING_MORE = {"title": "", "done_when": "", "finished_early": ""}
NO_USE = {**NOTHING_MORE, "use": "", "leave_alone": ""}


def days_of(timed: Any) -> dict[int, tuple[Blocks, float]]:
    """The planner's days by the number of the meeting, () where there are none."""
    return {
        (day.date - MONDAY).days: ([(block.kind, block.minutes, block.round) for block in day.blocks], day.surplus_minutes)
        for day in getattr(timed, "days", ())
    }


@pytest.mark.parametrize("block", range(BLOCKS))
def test_against_full_enumeration(block: int) -> None:
    """On 2,000 random runs the planner lays out, block by block, the days that trying every timetable finds, or finds none as it does.

    They have 1 to 6 meetings of mixed bells, both ways, evidence lines and write-ups that may be left out, lost days, stopped rounds.
    """
    chance = random.Random(20261130 + block)
    seen = {"whole": 0, "none": 0, "lost": 0, "stopped": 0, "two rounds": 0, "broken off": 0, "lengths differ": 0}
    for _ in range(CASES // BLOCKS):
        case = some_case(chance)
        expected: Result = run(case.lesson, case.periods, case.lost, case.stopped)
        timed: Any = time_runs(department_of(case))[0]
        assert days_of(timed) == expected.days, case
        assert (hasattr(timed, "days") and timed.unfinished is None) == expected.whole, case
        seen["whole"] += expected.whole
        seen["none"] += not expected.days
        seen["lost"] += bool(case.lost)
        seen["stopped"] += bool(case.stopped)
        seen["two rounds"] += any(sum(kind == "station" for kind, *_ in blocks) > 1 for blocks, _ in expected.days.values())
        stations = {minutes for blocks, _ in expected.days.values() for kind, minutes, _ in blocks if kind == "station"}
        seen["lengths differ"] += case.lesson.prefer_minutes and not case.stopped and len(stations) > 1
        seen["broken off"] += bool(expected.days) and not expected.whole
    assert min(seen.values()) >= 2, seen
