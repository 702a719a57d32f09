"""A unit as it goes: whatever happens on whichever day, what was held stays, and only the rest is planned anew."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from itertools import combinations, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.planning.test_catch_up import least_rounds
from tests.planning.test_replay import check
from tests.support.department import STARTS, tiny_bells, tiny_calendar, tiny_class, tiny_department, tiny_unit
from tests.support.lock import tiny_lock
from trivet.model.department import Department
from trivet.model.plan import Day, Plan, Round
from trivet.model.school import Done, HalfDone, Run
from trivet.model.station import Kind
from trivet.planning.catch_up import places
from trivet.planning.department import plan_department
from trivet.planning.where import latin_squares

LETTERS = "ABC"
SETTINGS = ("daily", "two rounds", "A/B", "not drawn", "whole class", "with short days", "prefers minutes")


@dataclass(frozen=True)
class Going:
    """A run with what is recorded of it so far."""

    setting: str
    run: Run

    def department(self) -> Department:
        short = {1: "short", 3: "short"}
        weekly = {day: short.get(day, "regular") if self.setting == "with short days" else "regular" for day in range(5)}
        rotation = ("A", "B") if self.setting == "A/B" else ()
        return tiny_department(
            unit=tiny_unit(prefer="minutes" if self.setting == "prefers minutes" else "equal"),
            runs=(self.run,),
            classes=[tiny_class(meets=("A",) if self.setting == "A/B" else ())],
            bells=tiny_bells(85 if self.setting == "two rounds" else 52, short=43),
            calendar=tiny_calendar(weekly=weekly, rotation=rotation),
            locks=[] if self.setting == "not drawn" else [tiny_lock(tiny_class())],
        )

    def plan(self) -> Plan:
        plans = plan_department(self.department())
        assert plans.plans, plans.not_planned
        return plans.plans[0]

    def after(self, day: Day, what: str, letters: Sequence[str], stopped: int) -> Going:
        """The run with one day that came so."""
        numbers = tuple(block.round for block in day.blocks if block.kind == "station" and block.round is not None)
        lengths = [int(block.minutes) for block in day.blocks if block.kind == "station"]
        run = self.run
        if what == "half" and numbers:
            done = (Done(date=day.date, rounds=numbers[:-1]),) if numbers[:-1] else ()
            half = HalfDone(day.date, numbers[-1], min(stopped, lengths[-1] - 1) or 1)
            return replace(self, run=replace(run, half=(*run.half, half), done=(*run.done, *done)))
        if what == "first" and len(numbers) > 1:
            return replace(self, run=replace(run, done=(*run.done, Done(date=day.date, rounds=numbers[:1]))))
        if what == "without" and numbers and self.setting != "whole class":
            done = (Done(date=day.date, rounds=numbers, without=tuple(letters)),)
            return replace(self, run=replace(run, done=(*run.done, *done)))
        if what == "lost":
            return replace(self, run=replace(run, lost=(*run.lost, day.date)))
        return self


@settings(max_examples=100, deadline=None)
@given(
    setting=st.sampled_from(SETTINGS),
    story=st.lists(
        st.tuples(
            st.sampled_from(("planned", "planned", "lost", "half", "first", "without")),
            st.sampled_from([tuple(letters) for count in (1, 2) for letters in combinations(LETTERS, count)]),
            st.integers(1, 22),
        ),
        max_size=5,
    ),
)
def test_what_was_held_stays(setting: str, story: list[tuple[str, tuple[str, ...], int]]) -> None:
    """Day by day one thing happens; every day before it, its rounds, and the pre-check stay, to the minute and the place."""
    way = "whole_class" if setting == "whole class" else "rotate"
    going = Going(setting, Run(class_id="p1", unit="float-or-sink", starts=STARTS, way=way))
    plan, today = going.plan(), date.min
    for what, letters, stopped in story:
        coming = [day for day in plan.days if day.date > today]
        if not coming:
            break
        today = coming[0].date
        going = going.after(coming[0], what, letters, stopped)
        then = going.plan()
        assert [day for day in then.days if day.date < today] == [day for day in plan.days if day.date < today]
        assert [each for each in then.rounds if each.date < today] == [each for each in plan.rounds if each.date < today]
        assert then.pre_check == plan.pre_check
        if what == "planned":
            assert then == plan
        if what == "lost":
            assert today not in {day.date for day in then.days}
        plan = then
    if setting == "whole class":
        by_round = {each.round: set((each.stations or {}).values()) for each in plan.rounds}
        assert by_round == {1: {Kind.ONLINE}, 2: {Kind.HANDS_ON}, 3: {Kind.TEACHER_LED}}
    else:
        check(replace(plan, rounds=without_parts_that_were_missed(plan, going.run)))
    for number in {each.round for each in plan.rounds}:
        parts = [each for each in plan.rounds if each.round == number]
        assert [each.half for each in parts] == [True] * (len(parts) - 1) + [False]
        # A round goes on at the same places; who missed the rest of it is at none.
        assert all((parts[0].stations or {}).items() >= (each.stations or {}).items() for each in parts)
    assert any(block.kind == "write_up" for day in plan.days for block in day.blocks)


def without_parts_that_were_missed(plan: Plan, run: Run) -> tuple[Round, ...]:
    """The rounds, where the part of one that was stopped does not count for a group that then missed the rest."""
    missed = {number: each.without for each in run.done for number in each.rounds}
    return tuple(
        replace(each, stations={letter: kind for letter, kind in each.stations.items() if letter not in missed.get(each.round, ())})
        if each.half and each.stations
        else each
        for each in plan.rounds
    )


def test_all_patterns_of_groups_that_missed_three_rounds() -> None:
    """For each of the 512 ways in which groups may miss the first three rounds, what is left takes the fewest rounds that there are.

    The least is found by dealing, without König's theorem; the square is the first of the twelve.
    """
    square = latin_squares()[0]
    subsets = [letters for count in range(4) for letters in combinations(LETTERS, count)]
    for pattern in product(subsets, repeat=3):
        missed = {number: letters for number, letters in enumerate(pattern, start=1) if letters}
        rounds = places(square, missed)
        behind = max(missed, default=0)
        met = {(letter, kind) for each in rounds[:behind] for letter, kind in each.items()}
        left = [(letter, kind) for letter in LETTERS for kind in Kind if (letter, kind) not in met]
        assert len(rounds) - behind == least_rounds(left), pattern
        if behind and behind < len(rounds):
            # Of those who missed the last recorded round, as many as can be are at that station in the next one.
            planned = places(square, {number: letters for number, letters in missed.items() if number < behind})[behind - 1]
            owed = {letter: planned[letter] for letter in missed[behind] if letter in planned}
            assert len(set(owed.values())) == len(owed)
            assert all(rounds[behind].get(letter) is kind for letter, kind in owed.items()) or least_without(left, owed) > least_rounds(
                left
            )


def least_without(left: list[tuple[str, Kind]], now: dict[str, Kind]) -> int:
    """The fewest rounds where the first of them holds these places, and whoever else fits beside them."""
    others = [edge for edge in left if edge[0] not in now and edge[1] not in now.values()]
    best = 99
    for count in range(len(others) + 1):
        for more in combinations(others, count):
            if len({letter for letter, _ in more}) == len({kind for _, kind in more}) == count:
                rest = [edge for edge in left if edge not in more and edge not in now.items()]
                best = min(best, 1 + least_rounds(rest))
    return best


def run_with(**record: object) -> list[str]:
    plans = plan_department(Going("daily", Run(class_id="p1", unit="float-or-sink", starts=STARTS, **record)).department())  # type: ignore[arg-type]
    return [note.text for plan in plans.plans for note in plan.notes] + [each.reason for each in plans.not_planned]


def day(number: int) -> date:
    return STARTS + timedelta(days=number)


def test_notes_say_what_is_so() -> None:
    """A day whose write-up came early is not called too short; two missed rounds of a group are one sentence; who waits is named."""
    early = " ".join(run_with(done=(Done(date=day(1), write_up=True),)))
    assert "too short" not in early
    twice = run_with(done=(Done(date=day(0), rounds=(1,), without=("B",)), Done(date=day(1), rounds=(2,), without=("B",))))
    assert [text for text in twice if "missed" in text] == [
        "Group B missed rounds 1 and 2 and goes to those stations first; what is left takes as few rounds as it can."
    ]
    waiting = [text for text in twice if "no station to go to" in text]
    assert waiting[0].startswith("Groups A and C have no station to go to in round 3: ")
    two = run_with(done=(Done(date=day(0), rounds=(1,), without=("A", "B")),))
    assert "Groups A and B missed round 1 and go to that station first" in " ".join(two)


@pytest.mark.parametrize(
    ("record", "reason"),
    [
        (
            {"done": tuple(Done(date=day(number), rounds=(number + 1,)) for number in range(4))},
            "Round 4 stands on Thursday, December 3, and the unit has 3 rounds; write `write-up` there, or take the line out.",
        ),
        (
            {"lost": tuple(day(number) for number in range(190))},
            "Class p1 meets from 2026-11-30 on, but all those days are lost; write an earlier date, or take a day out of `lost`.",
        ),
    ],
)
def test_records_that_leave_nothing_to_plan(record: dict[str, object], reason: str) -> None:
    """A round that the unit does not have, and a year of lost days, are told as what they are."""
    assert run_with(**record) == [reason]


def test_a_pre_check_that_was_taken_stays() -> None:
    """A lost first day moves the rounds and not the pre-check, which lay before it."""
    made = Going("daily", Run(class_id="p1", unit="float-or-sink", starts=STARTS)).department()
    unit = replace(made.units["float-or-sink"], pre_check=made.units["float-or-sink"].teacher_led.quick_check)
    made = replace(made, units={unit.slug: unit})
    before = plan_department(made).plans[0].pre_check
    lost = replace(made.school.runs[0], lost=(STARTS,))
    after = plan_department(replace(made, school=replace(made.school, runs=(lost,)))).plans[0].pre_check
    assert before is not None and before == after
