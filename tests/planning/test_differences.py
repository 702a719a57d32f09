"""What would change if a day were otherwise: supposed departments, and the difference in words."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support.department import STARTS, tiny_bells, tiny_calendar, tiny_class, tiny_department, tiny_unit
from trivet.model.department import Department
from trivet.model.school import UNSETTLED, Closure, Run
from trivet.model.what_if import WhatIf
from trivet.planning.department import plan_department
from trivet.planning.differences import Difference, differences
from trivet.planning.suppose import suppose

WEDNESDAY = date(2026, 12, 2)


def day(**how: Any) -> WhatIf:
    return WhatIf(**{"first": WEDNESDAY, "last": WEDNESDAY, **how})


def compared(made: Department, *changes: WhatIf, class_id: str = "", unit: str = "") -> tuple[Difference, ...]:
    before = plan_department(made)
    return differences(before, plan_department(suppose(made, changes, before.plans, class_id, unit)))


def test_a_lost_day_moves_the_rest() -> None:
    """What stood on the lost day and after it moves, and nothing else is said."""
    (found,) = compared(tiny_department(), day(lost=True))
    assert found.lines == (
        "round 3 moves from Wednesday, December 2 to Thursday, December 3",
        "the write-up moves from Thursday, December 3 to Friday, December 4",
        "the unit ends on Friday, December 4 in place of Thursday, December 3",
    )


def test_lost_equals_closed_for_one_class() -> None:
    """For a single class a lost day and a closed day do the same."""
    assert compared(tiny_department(), day(lost=True))[0].lines == compared(tiny_department(), day(closed="snow"))[0].lines


def test_a_shorter_day_shrinks() -> None:
    """On a day a little shorter the reflection gives what it can, then the round itself; rounds before it stay as they were."""
    bells = tiny_bells(52, early_release=43)
    found = compared(tiny_department(bells=bells), day(day_type="early_release"))[0].lines
    assert found[0] == "Wednesday, December 2 goes from 08:05 to 08:48 (43 min in place of 52)"
    assert any(line.startswith("the reflection of Wednesday, December 2 has ") for line in found)
    shorter = tiny_bells(52, early_release=41)
    found = compared(tiny_department(bells=shorter), day(day_type="early_release"))[0].lines
    assert "round 3: 22 min at each station in place of 23" in found
    assert "Wednesday, December 2 has no time for the written evidence line any more" in found
    assert "the write-up has 20 min in place of 12" in found


def test_a_rotation_day() -> None:
    """A class of A days loses the day when it becomes a B day, and the letters go on from there."""
    calendar = tiny_calendar(rotation=("A", "B"))
    made = tiny_department(classes=[tiny_class(meets=("A",))], calendar=calendar, starts=date(2026, 11, 30))
    first = plan_department(made).plans[0].days[0].date
    found = compared(made, WhatIf(first=first, last=first, rotation_day="B"))[0].lines
    following = first + timedelta(days=1)
    assert found[0].startswith(f"round 1 moves from Monday, {first:%B} {first.day} to Tuesday, {following:%B} {following.day}")


def test_only_the_run_asked_loses_the_day() -> None:
    """A lost day is lost to the class and the unit asked; a closed one to all."""
    two = [tiny_class(), tiny_class("p2", period="P1", room="r14", teacher="teller")]
    runs = [Run(class_id=each, unit="float-or-sink", starts=STARTS) for each in ("p1", "p2")]
    made = tiny_department(classes=two, runs=runs)
    assert [bool(each.lines) for each in compared(made, day(lost=True), class_id="p2")] == [False, True]
    assert [bool(each.lines) for each in compared(made, day(lost=True))] == [True, True]
    assert [bool(each.lines) for each in compared(made, day(closed="snow"), class_id="p2")] == [True, True]


def test_a_unit_after_it_moves_too() -> None:
    """What begins after the unit that loses a day moves with it, and its pre-check."""
    second = Run(class_id="p1", unit="circuits", starts=UNSETTLED, begins="after", after="float-or-sink", gap_days=7)
    runs = [Run(class_id="p1", unit="float-or-sink", starts=STARTS), second]
    checked = replace(tiny_unit("circuits"), pre_check=tiny_unit().teacher_led.quick_check)
    found = compared(tiny_department(units=[checked], runs=runs), day(lost=True))[1].lines
    assert "round 1 moves from Friday, December 11 to Monday, December 14" in found
    assert "the pre-check moves from Wednesday, December 9 to Thursday, December 10" in found


def test_no_room_any_more_and_room_again() -> None:
    """A run that loses all its days says why it has none, and the other way round it has some again."""
    made = tiny_department(calendar=tiny_calendar(last=date(2026, 12, 3)))
    closed = WhatIf(first=STARTS, last=date(2026, 12, 3), closed="flood")
    (found,) = compared(made, closed)
    assert found.lines[0].startswith("it can't be planned any more: Class p1 does not meet from 2026-11-30 on")
    before, after = plan_department(suppose(made, [closed], ())), plan_department(made)
    assert differences(before, after)[0].lines == ("it can be planned now, from Monday, November 30 to Thursday, December 3",)


@settings(max_examples=60, deadline=None)
@given(offset=st.integers(-3, 12), kind=st.sampled_from(("lost", "closed", "short")))
def test_the_lines_say_it_exactly_where_something_is_otherwise(offset: int, kind: str) -> None:
    """Something is said of a run exactly where its days or rounds are otherwise, and nothing before the day changes in number or date."""
    bells = tiny_bells(52, short=40)
    on = STARTS + timedelta(days=offset)
    change = {"lost": {"lost": True}, "closed": {"closed": "snow"}, "short": {"day_type": "short"}}[kind]
    made = tiny_department(bells=bells, calendar=tiny_calendar(closures=(Closure(date(2026, 12, 7), date(2026, 12, 7)),)))
    before = plan_department(made)
    after = plan_department(suppose(made, [WhatIf(first=on, last=on, **change)], before.plans))  # type: ignore[arg-type]
    (found,) = differences(before, after)
    same = (before.plans[0].days, before.plans[0].rounds) == (after.plans[0].days, after.plans[0].rounds)
    assert bool(found.lines) is not same
