"""What is done between the bells."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, time
from fractions import Fraction

import pytest

from tests.planning.stores.test_pools import USE
from tests.support.department import tiny_unit
from trivet.planning.materials import Tally
from trivet.planning.stores.sentences import task_text, turn_round_text
from trivet.planning.stores.tasks import tasks, turn_rounds
from trivet.planning.stores.uses import Use

LAMP = Tally("lamp", "", used_up=False, need=Fraction(3))
WATER = Tally("water", "mL", used_up=True, need=Fraction(180))
FIRST = replace(USE, tallies=(LAMP, WATER), set_out=(LAMP, WATER))


def second(start: tuple[int, int] = (9, 1), **changes: object) -> Use:
    return replace(FIRST, class_id="p2", start=time(*start), end=time(start[0], start[1] + 52), **changes)  # type: ignore[arg-type]


def test_a_kit_stays_between_two_classes_at_one_unit() -> None:
    """It is set out once, filled up with what is used up and with what the larger class needs more, and counted in once."""
    larger = replace(LAMP, need=Fraction(4))
    (day,) = tasks([FIRST, second(set_out=(larger, WATER))])
    assert [(task.kind, task.at, task_text(task, "Float or sink?")) for task in day.tasks] == [
        ("set_out", time(8, 5), "Set out Float or sink? for p1: 3 × lamp, 180 mL water"),
        ("refill", time(9, 1), "The kit stays for p2 (4 min between the classes): add 1 × lamp, 180 mL water"),
        ("take_in", time(9, 53), "Take in Float or sink?, dry it and count it: 4 things"),
    ]


def test_another_unit_needs_a_change_of_kit() -> None:
    """Between two units one kit goes in and the other comes out, in that order."""
    (day,) = tasks([FIRST, second(unit="plates")])
    assert [(task.kind, task.unit, task.minutes) for task in day.tasks] == [
        ("set_out", "float-or-sink", None),
        ("take_in", "float-or-sink", 4),
        ("set_out", "plates", 4),
        ("take_in", "plates", None),
    ]


def test_the_same_on_several_days_is_told_once() -> None:
    """Days of a room on which all is the same are one list with all dates; a day that differs stands apart."""
    days = [date(2026, 11, 30), date(2026, 12, 1), date(2026, 12, 2)]
    meetings = [*(replace(FIRST, date=day) for day in days), replace(second(), date=days[1])]
    assert [(each.dates, len(each.tasks)) for each in tasks(meetings)] == [((days[0], days[2]), 2), ((days[1],), 3)]


def test_rooms_stand_apart() -> None:
    """Two rooms on one day are two lists, the earlier bell first."""
    found = tasks([second(room="r14"), FIRST])
    assert [(each.room, [task.at for task in each.tasks]) for each in found] == [
        ("r12", [time(8, 5), time(8, 57)]),
        ("r14", [time(9, 1), time(9, 53)]),
    ]


def test_without_a_kit_there_is_nothing_to_do() -> None:
    """A meeting at the online station alone asks for nothing on the benches."""
    assert tasks([replace(FIRST, tallies=())]) == ()


@pytest.mark.parametrize(
    ("set_up", "clean_up", "other_unit", "needs"),
    [(2.0, 2.0, False, None), (5.0, 2.0, False, 10), (2.5, 2.0, True, 9), (2.0, 2.0, True, None), (4.0, 9.0, False, None)],
)
def test_turn_round(*, set_up: float, clean_up: float, other_unit: bool, needs: int | None) -> None:
    """Four minutes between two bells hold a set-up of four; another unit's kit has to be cleared away in them too."""
    units = {
        slug: tiny_unit(slug, hands_on={"set_up_minutes": set_up, "clean_up_minutes": clean_up}) for slug in ("float-or-sink", "plates")
    }
    found = turn_rounds([FIRST, second(unit="plates" if other_unit else "float-or-sink")], units)
    assert [short.needs for short in found] == ([] if needs is None else [needs])


def test_turn_round_says_what_would_do() -> None:
    """The advice names the classes, the minutes and three ways out (the design's worked value)."""
    units = {"float-or-sink": tiny_unit(hands_on={"set_up_minutes": 5.5})}
    (short,) = turn_rounds([FIRST, second()], units)
    assert turn_round_text(short, "Float or sink?", "Room 12") == (
        "4 min between p1 and p2 in Room 12 (Monday); Float or sink? needs 5½ to be ready: "
        "a second set, 1½ min more of students' clean-up in p1, or another order of classes"
    )
