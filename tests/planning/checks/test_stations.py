"""Whether a unit's stations fit its round."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.support.department import tiny_unit
from trivet.model.problem import Problem, Severity
from trivet.model.school import Defaults
from trivet.model.station import Question, Step
from trivet.model.unit import Unit
from trivet.planning.checks.stations import check_unit
from trivet.planning.minutes import needed
from trivet.reading import forms

NOTHING = {
    "hands_on": {"steps": (), "set_up_minutes": 0.0, "clean_up_minutes": 0.0},
    "teacher_led": {"read": None, "questions": (), "quick_check": ()},
}


def sized(online: float, **changes: Any) -> Unit:
    """A unit whose online station needs so many minutes and the others nothing."""
    steps = tuple(Step("Try.", 30.0) for _ in range(int(online // 30))) + (((Step("Try.", online % 30)),) if online % 30 else ())
    return tiny_unit(online={"steps": steps, "explore_minutes": 0.0}, **NOTHING, **changes)


def told(unit: Unit, code: str, defaults: Defaults | None = None) -> list[Problem]:
    return [problem for problem in check_unit(unit, defaults or Defaults()) if problem.code == code]


def written(problem: Problem) -> tuple[int, int] | None:
    """The bounds that the remedy gives, read back as a unit file would be; None where it gives none."""
    if "`round: " not in problem.remedy:
        return None
    bounds = forms.round_bounds(problem.remedy.split("`round: ")[1].split("`")[0])
    assert not isinstance(bounds, forms.Unreadable), problem.remedy
    return bounds


@pytest.mark.parametrize(
    ("minutes", "too_long"), [(0, False), (0.5, False), (29.5, False), (30, False), (30.5, True), (119.5, True), (240, True)]
)
def test_half_a_minute_over_is_too_long(minutes: float, *, too_long: bool) -> None:
    """The longest round itself fits; half a minute more is an error, and no more is then said of that unit's minutes."""
    problems = list(check_unit(sized(minutes), Defaults()))
    assert ("station-too-long" in [problem.code for problem in problems]) == too_long
    if too_long:
        assert [(problem.code, problem.severity, problem.where) for problem in problems] == [("station-too-long", Severity.ERROR, "online")]


@given(st.integers(0, 500).map(lambda halves: halves / 2))
def test_the_bounds_to_write_can_be_read_and_cure(minutes: float) -> None:
    """Whatever `round:` a remedy gives is read by the unit's own form, and with it the problem is gone."""
    unit = sized(minutes)
    for problem in check_unit(unit, Defaults()):
        bounds = written(problem)
        if bounds is not None:
            assert problem.code not in [each.code for each in check_unit(replace(unit, round_minutes=bounds), Defaults())]


@pytest.mark.parametrize(("minutes", "bounds"), [(31, (20, 31)), (119.5, (20, 120)), (120, (20, 120)), (120.5, None)])
def test_no_round_longer_than_can_be_written_is_offered(minutes: float, bounds: tuple[int, int] | None) -> None:
    """Up to two hours the longer round is offered; past that only the minutes to cut."""
    (problem,) = told(sized(minutes), "station-too-long")
    assert written(problem) == bounds
    assert problem.remedy.startswith("cut ")


@pytest.mark.parametrize(("minutes", "bounds"), [(19, (19, 30)), (18.5, (19, 30)), (5, (5, 30)), (4.5, (5, 30)), (4, None), (0, None)])
def test_no_round_shorter_than_can_be_written_is_offered(minutes: float, bounds: tuple[int, int] | None) -> None:
    """Down to five minutes the shorter round is offered; below that only more to do is left to say."""
    (problem,) = told(sized(minutes), "round-short")
    assert problem.severity is Severity.ADVICE
    assert written(problem) == bounds
    assert problem.remedy.startswith("add something for early finishers")


@pytest.mark.parametrize("minutes", [19.5, 20])
def test_rounds_last_whole_minutes(minutes: float) -> None:
    """A station of 19½ min fills a round of 20: no whole-minute round is shorter and holds it."""
    assert told(sized(minutes), "round-short") == []


def test_parts_are_named_with_what_they_cost() -> None:
    """The parts in the message are all the parts, in the author's words, and add up to what is needed."""
    unit = tiny_unit(teacher_led={"questions": tuple(Question(f"Why {n}?", "x") for n in range(7)), "steps": (Step("Sort.", 1.5, 2),)})
    (problem,) = told(unit, "station-too-long")
    assert problem.what == (
        "this station needs 38½ min, more than the longest round of 30: reading 4½ + step 1 3 (1½ min, 2 times) + "
        + " + ".join(f"question {n} 4" for n in range(1, 8))
        + " + quick check item 1 3"
    )
    assert needed(unit, Defaults()).minutes == 38.5


@pytest.mark.parametrize(("idle", "count"), [(6, 2), (6.5, 1), (7.5, 1), (8, 0)])
def test_how_much_is_idle_is_the_departments(idle: float, count: int) -> None:
    """A department may find less or more worth saying: the tiny unit's stations are idle for 6 and 7½ of its 23 min."""
    problems = told(tiny_unit(), "station-idle", replace(Defaults(), idle=idle))
    assert [problem.where for problem in problems] == ["online", "teacher-led"][2 - count :]
    assert all(problem.severity is Severity.ADVICE for problem in problems)
