"""Runs that begin after another unit, or as late as they still end by a date."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support.department import STARTS, tiny_bells, tiny_calendar, tiny_department, tiny_unit
from trivet.model.department import Department
from trivet.model.school import UNSETTLED, Closure, Run
from trivet.planning.department import plan_department
from trivet.planning.timed_runs import TimedRun, ends_by_start, settled, time_runs

UNITS = ("float-or-sink", "circuits", "sound", "plates")


def run(unit: str = "float-or-sink", **how: Any) -> Run:
    begins = "date" if "starts" in how else "after" if "after" in how else "by"
    return Run(class_id="p1", unit=unit, begins=begins, **{"starts": UNSETTLED, **how})


def department(*runs: Run, **school: Any) -> Department:
    return tiny_department(units=[tiny_unit(unit) for unit in UNITS[1:]], runs=runs, **school)


def spans(made: Department) -> dict[str, tuple[date, date] | str]:
    return {each.run.unit: (each.days[0].date, each.days[-1].date) if isinstance(each, TimedRun) else each.code for each in time_runs(made)}


def test_after_a_unit() -> None:
    """A unit begins on the first meeting after the other's last day and the gap, whatever the order of the rows."""
    made = department(run("circuits", after="float-or-sink", gap_days=14), run(starts=STARTS))
    found = spans(made)
    assert found["float-or-sink"] == (date(2026, 11, 30), date(2026, 12, 3))
    assert found["circuits"] == (date(2026, 12, 18), date(2026, 12, 23))
    without = spans(department(run(starts=STARTS), run("circuits", after="float-or-sink")))
    assert without["circuits"] == (date(2026, 12, 4), date(2026, 12, 9))


def test_a_chain_moves_as_a_whole() -> None:
    """A lost day of the first unit moves all units that begin after one another."""
    chain = (run("circuits", after="float-or-sink", gap_days=3), run("sound", after="circuits", gap_days=3))
    before = spans(department(run(starts=STARTS), *chain))
    after = spans(department(run(starts=STARTS, lost=(date(2026, 12, 3),)), *chain))
    assert before["sound"] == (date(2026, 12, 14), date(2026, 12, 17))
    assert after["sound"] == (date(2026, 12, 15), date(2026, 12, 18))


def test_as_late_as_it_ends_by_a_date() -> None:
    """A unit that ends by a date begins as late as that allows: a day later it would end too late."""
    made = department(run(by=date(2026, 12, 18)))
    assert spans(made)["float-or-sink"] == (date(2026, 12, 15), date(2026, 12, 18))
    later = department(run(starts=date(2026, 12, 16)))
    assert spans(later)["float-or-sink"][1] == date(2026, 12, 21)


def test_by_a_date_it_moves_no_other_unit() -> None:
    """Where another unit stands before the date, the unit goes before that one; two of them share what is left."""
    made = department(run("circuits", starts=date(2026, 12, 14)), run(by=date(2026, 12, 18)), run("sound", by=date(2026, 12, 18)))
    found = spans(made)
    assert found["circuits"] == (date(2026, 12, 14), date(2026, 12, 17))
    assert found["sound"] == (date(2026, 12, 8), date(2026, 12, 11))
    assert found["float-or-sink"] == (date(2026, 12, 2), date(2026, 12, 7))


def test_after_a_unit_that_ends_by_a_date() -> None:
    """The two ways combine: one unit ends by a date, the next begins a week after it."""
    found = spans(department(run("circuits", after="float-or-sink", gap_days=7), run(by=date(2026, 12, 18))))
    assert found["circuits"] == (date(2026, 12, 28), date(2026, 12, 31))


def test_what_finds_no_room() -> None:
    """A date too early, a unit that has no days and a circle are told apart by their codes."""
    assert spans(department(run(by=date(2026, 8, 25))))["float-or-sink"] == "no-room-before"
    assert spans(department(run("circuits", after="float-or-sink")))["circuits"] == "waits-for-unit"
    circle = spans(department(run(after="circuits"), run("circuits", after="float-or-sink")))
    assert set(circle.values()) == {"waits-for-unit"}


def test_too_late_for_a_long_enough_day() -> None:
    """Where days before the start were long enough, the remedy is an earlier date; where none is, it says what to cut."""
    short = tiny_calendar(weekly={0: "regular", 1: "regular", 2: "regular", 3: "regular", 4: "short"})
    for regular, words in ((52, "write an earlier date, or cut "), (38, "cut ")):
        made = department(run(starts=date(2027, 6, 4)), calendar=short, bells=tiny_bells(regular, short=38))
        assert [each.remedy[: len(words)] for each in time_runs(made) if not isinstance(each, TimedRun)] == [words]


def test_settled() -> None:
    """A settled department gives every run its date, settles to itself, and has the same plans."""
    made = department(run("circuits", after="float-or-sink", gap_days=14), run(by=date(2026, 12, 18)), run("sound", after="plates"))
    once = settled(made)
    assert [each.starts for each in once.school.runs] == [date(2027, 1, 4), date(2026, 12, 15), UNSETTLED]
    assert settled(once) == once
    assert plan_department(once).plans == plan_department(made).plans
    dated = department(run(starts=STARTS))
    assert settled(dated) is dated


def test_a_settled_start_is_the_first_day() -> None:
    """Where the first meeting after a unit is too short for a round, the settled start is the day on which there is one."""
    calendar = tiny_calendar(weekly={0: "regular", 1: "regular", 2: "regular", 3: "regular", 4: "short"})
    made = department(run(starts=STARTS), run("circuits", after="float-or-sink"), calendar=calendar, bells=tiny_bells(52, short=38))
    assert spans(made)["circuits"] == (date(2026, 12, 7), date(2026, 12, 10))
    assert settled(made).school.runs[1].starts == date(2026, 12, 7)


def test_a_unit_that_waits_is_told() -> None:
    """A run without a start is named with its reason, and an error stands at it."""
    plans = plan_department(department(run("circuits", after="float-or-sink")))
    assert [each.reason for each in plans.not_planned] == [
        "Class p1 does not run float-or-sink; mend float-or-sink first, or write `starts:` with a date."
    ]
    assert [each.code for each in plans.problems if each.severity == "error"] == ["waits-for-unit"]


def test_latest_start_for_a_deadline() -> None:
    """The latest start that keeps a deadline is the start of a run written with it."""
    made = department(run(starts=STARTS), run("circuits", starts=date(2026, 12, 14)))
    timed = next(each for each in time_runs(made) if isinstance(each, TimedRun) and each.run.unit == "float-or-sink")
    assert ends_by_start(made, timed, date(2026, 12, 18)) == date(2026, 12, 8)
    assert ends_by_start(made, timed, date(2026, 8, 25)) is None


@settings(max_examples=60, deadline=None)
@given(
    by=st.integers(5, 60),
    others=st.lists(st.integers(0, 50), max_size=2, unique=True),
    closed=st.sets(st.integers(0, 60), max_size=6),
)
def test_by_a_date_is_as_late_as_can_be(by: int, others: list[int], closed: set[int]) -> None:
    """On any calendar, a unit that ends by a date does so, begins later than every start that would do, and moves no other one."""
    calendar = tiny_calendar(closures=tuple(Closure(day, day) for day in sorted(STARTS + timedelta(days=n) for n in closed)))
    fixed = [run(unit, starts=STARTS + timedelta(days=n)) for unit, n in zip(UNITS[1:], others, strict=False)]
    deadline = STARTS + timedelta(days=by)
    alone = spans(department(*fixed, calendar=calendar))
    found = spans(department(run(by=deadline), *fixed, calendar=calendar))
    span = found.pop("float-or-sink")
    assert not isinstance(span, str)
    assert span[1] <= deadline
    assert {unit: each[0] for unit, each in found.items()} == {unit: each[0] for unit, each in alone.items()}
    for later in range((deadline - span[0]).days, 0, -1):
        start = span[0] + timedelta(days=later)
        tried = spans(department(run(starts=start), *fixed, calendar=calendar))
        own = tried.pop("float-or-sink")
        assert not isinstance(own, str)
        assert own[0] != start or own[1] > deadline or any(tried[unit][0] != each[0] for unit, each in alone.items())
