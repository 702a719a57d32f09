"""What came at short notice: the calendar as it was known before, and the days that stay."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support.department import STARTS, tiny_bells, tiny_calendar, tiny_class, tiny_department, tiny_unit
from trivet.model.department import Department
from trivet.model.plan import Plan
from trivet.model.school import UNSETTLED, Closure, Run, SpecialDay
from trivet.model.station import CheckItem
from trivet.planning.as_known import class_as_known, days_as_known, known_before
from trivet.planning.dates import school_days
from trivet.planning.department import plan_department

CHECK = (CheckItem("What floats?", "what is lighter than its water"),)


def day(number: int) -> date:
    """The date so many days after a Monday without closures near it."""
    return STARTS + timedelta(days=number)


def plans(*runs: Run, pre_check: bool = False, **calendar: Any) -> dict[str, Plan]:
    made: Department = tiny_department(
        units=[tiny_unit(slug, pre_check=CHECK if pre_check else ()) for slug in ("float-or-sink", "circuits")],
        runs=runs,
        bells=tiny_bells(52, short=41, long=95),
        calendar=tiny_calendar(**calendar),
    )
    return {plan.unit: plan for plan in plan_department(made).plans}


def run(unit: str = "float-or-sink", **how: Any) -> Run:
    begins = "date" if "starts" in how else "after" if "after" in how else "by"
    return Run(class_id="p1", unit=unit, begins=begins, **{"starts": UNSETTLED, **how})


def test_the_calendar_as_it_was_known() -> None:
    """A closure is cut where a part of it came at short notice; before that date it was not known, from it on it is."""
    closure, notice = Closure(day(2), day(8), "storm"), (Closure(day(3), day(4)), Closure(day(7), day(7)))
    calendar = tiny_calendar(closures=(closure,), special={day(4): SpecialDay("short"), day(9): SpecialDay("short")}, short_notice=notice)
    first = known_before(calendar, day(3))
    assert first.closures == (Closure(day(2), day(2), "storm"), Closure(day(5), day(6), "storm"), Closure(day(8), day(8), "storm"))
    assert list(first.special) == [day(9)]
    assert known_before(calendar, day(4)).closures == (Closure(day(2), day(6), "storm"), Closure(day(8), day(8), "storm"))
    assert known_before(calendar, day(8)) is calendar


def test_the_days_as_they_were_known() -> None:
    """Two days of short notice make three calendars, the last of which is the one of today; without notice there is but one."""
    calendar = tiny_calendar(closures=(Closure(day(2), day(2)), Closure(day(9), day(9))))
    assert days_as_known(calendar) == ()
    noticed = tiny_calendar(closures=calendar.closures, short_notice=(Closure(day(2), day(2)), Closure(day(9), day(9))))
    known = days_as_known(noticed)
    assert [since for since, _ in known] == [date.min, day(2), day(9)]
    assert [len(days) for _, days in known] == [len(school_days(calendar)) + more for more in (2, 1, 0)]
    met = class_as_known(known, tiny_bells(52), tiny_class())
    assert [len(each.meetings) for each in met] == [len(days) for _, days in known]


def test_a_day_closed_at_short_notice_shortens_no_round_before() -> None:
    """What is left falls on a short day: planned anew all rounds lose a minute, at short notice only the last one."""
    week = {0: "regular", 1: "regular", 2: "regular", 3: "short", 4: "regular"}
    usual = plans(run(starts=STARTS), weekly=week)["float-or-sink"]
    anew = plans(run(starts=STARTS), weekly=week, closures=(Closure(day(2), day(2)),))["float-or-sink"]
    short = plans(run(starts=STARTS), weekly=week, closures=(Closure(day(2), day(2)),), short_notice=(Closure(day(2), day(2)),))
    assert [each.minutes for each in usual.rounds] == [23, 23, 23]
    assert [each.minutes for each in anew.rounds] == [22, 22, 22]
    assert [each.minutes for each in short["float-or-sink"].rounds] == [23, 23, 22]
    assert short["float-or-sink"].days[:2] == usual.days[:2]
    said = " ".join(note.text for note in short["float-or-sink"].notes)
    assert "What was left on Wednesday, December 2 was planned anew" in said and "The days before it stay as they were." in said


def test_a_first_day_stays() -> None:
    """A unit that is to end by a date has begun: at short notice it is late, and its first day stays; known before, it begins earlier."""
    by, closed = day(11), (Closure(day(10), day(10)),)
    usual, known = plans(run(by=by))["float-or-sink"], plans(run(by=by), closures=closed)["float-or-sink"]
    short = plans(run(by=by), closures=closed, short_notice=closed)["float-or-sink"]
    assert usual.days[0].date == short.days[0].date == day(8)
    assert known.days[0].date == day(7)
    assert (known.days[-1].date, short.days[-1].date) == (day(11), day(14))
    assert short.days[:2] == usual.days[:2]


def test_notice_before_the_first_day() -> None:
    """What came at short notice before a unit began counts for its start like any other closed day; there is no start before it."""
    by, closed = day(11), (Closure(day(3), day(3)),)
    assert plans(run(by=by), closures=closed, short_notice=closed) == plans(run(by=by), closures=closed)
    week = (Closure(day(7), day(9)),)
    late = plans(run(by=by), closures=week, short_notice=week)["float-or-sink"]
    assert plans(run(by=by), closures=week)["float-or-sink"].days[0].date == day(3)
    assert late.days[0].date == day(10)


def test_a_pre_check_stays_where_it_was() -> None:
    """The earlier unit loses a day after the pre-check was held: the pre-check does not move back; lost before it, it moves, never back."""
    after = run("circuits", starts=day(7))
    usual = plans(run(starts=day(0)), after, pre_check=True)["circuits"].pre_check
    assert usual is not None and usual.date == day(3)  # at the end of the earlier unit's write-up
    lost = plans(run(starts=day(0), lost=(day(3),)), after, pre_check=True)["circuits"].pre_check
    assert lost is None
    before = plans(run(starts=day(0)), run("circuits", starts=day(9)), pre_check=True)["circuits"].pre_check
    assert before is not None and before.date == day(7)
    later = plans(run(starts=day(0)), run("circuits", starts=day(9), lost=(day(9),)), pre_check=True)["circuits"].pre_check
    assert later == before


def test_no_pre_check_on_a_lost_day() -> None:
    """A day that the class's earlier unit lost holds no pre-check, though nothing is planned there."""
    found = plans(run(starts=day(0), lost=(day(3), day(4))), run("circuits", starts=day(9)), pre_check=True)["circuits"].pre_check
    assert found is not None and found.date == day(7)
    near = plans(run(starts=day(0), lost=(day(3),)), run("circuits", starts=day(7)), pre_check=True)
    assert [note.text for note in near["circuits"].notes if note.code == "pre_check"] == [
        "There is no meeting for the pre-check two school days or more before round 1, so it is left out."
    ]


@settings(max_examples=60, deadline=None)
@given(
    kinds=st.lists(st.sampled_from(("regular", "short", "long")), min_size=5, max_size=5),
    notice=st.integers(0, 20),
    length=st.integers(0, 2),
    what=st.sampled_from(("closed", "short", "long")),
    lost=st.sets(st.integers(0, 12), max_size=2),
    by=st.integers(9, 25),
)
def test_nothing_before_a_short_notice_changes(*, kinds: list[str], notice: int, length: int, what: str, lost: set[int], by: int) -> None:
    """On any week, whatever comes at short notice leaves every day, round and pre-check before it as it was."""
    weekly = dict(enumerate(kinds))
    runs = (
        run(starts=day(0), lost=tuple(sorted(map(day, lost)))),
        run("circuits", by=day(by)) if by > 18 else run("circuits", after="float-or-sink", gap_days=by - 9),
    )
    days = Closure(day(notice), day(notice + length))
    new: dict[str, Any] = {"closures": (days,)}
    if what != "closed":
        spread = [day(notice + each) for each in range(length + 1)]
        new = {"special": {each: SpecialDay(what) for each in spread if each.weekday() < 5}}
    before = plans(*runs, pre_check=True, weekly=weekly)
    after = plans(*runs, pre_check=True, weekly=weekly, short_notice=(days,), **new)
    for unit, old in before.items():
        now = after.get(unit)
        held = [each for each in old.days if each.date < days.first]
        assert [each for each in (now.days if now else ()) if each.date < days.first] == held, unit
        assert [each for each in (now.rounds if now else ()) if each.date < days.first] == [e for e in old.rounds if e.date < days.first]
        if now:
            taken = [each.pre_check for each in (old, now) if each.pre_check and each.pre_check.date < days.first]
            assert len(taken) != 1 and len(set(taken)) < 2, unit


def test_other_bells_at_short_notice() -> None:
    """Bells that change in mid-unit change only what is left."""
    usual = plans(run(starts=STARTS))["float-or-sink"]
    new: dict[str, Any] = {"special": {day(2): SpecialDay("short")}, "short_notice": (Closure(day(2), day(2)),)}
    then = plans(run(starts=STARTS), **new)["float-or-sink"]
    assert then.days[:2] == usual.days[:2]
    assert [each.minutes for each in then.rounds] == [23, 23, 22]
