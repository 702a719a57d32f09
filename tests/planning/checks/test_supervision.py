"""An adult near enough to each hazard, or an error that says how to get one."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from tests.support.department import STARTS, tiny_class, tiny_department, tiny_room, tiny_unit
from trivet.model.department import Department
from trivet.model.hazard import HAZARDS as WORDS
from trivet.model.places import Places
from trivet.model.problem import Place, Problem, Severity
from trivet.model.school import Run
from trivet.model.station import Kind
from trivet.planning.checks.supervision import check_supervision
from trivet.planning.hazards import HAZARDS


def department(hazards: tuple[str, ...], **changes: Any) -> Department:
    return tiny_department(size=24, unit=tiny_unit(hands_on={"hazards": hazards}), **changes)


def found(given: Department) -> list[Problem]:
    return list(check_supervision(given))


def codes(given: Department) -> list[str]:
    return [problem.code for problem in found(given)]


@pytest.mark.parametrize("word", WORDS)
def test_each_hazard_by_its_own_supervision(word: str) -> None:
    """A hazard that needs an adult at hand is an error in a rotating run; any other is quiet where the station is seen."""
    assert codes(department((word,))) == ["second-adult-needed"] * HAZARDS[word].at_hand


@pytest.mark.parametrize("word", WORDS)
def test_any_hazard_wants_to_be_seen(word: str) -> None:
    """Where the teacher does not see the hands-on station, every hazard is an error there."""
    assert "hands-on-not-seen" in codes(department((word,), rooms=[tiny_room(sees=(Kind.ONLINE,))]))


def test_what_the_message_says() -> None:
    """It names only the hazards that need the adult, stands at the run, and gives the line to write and three other ways."""
    given = department(("glass", "pressure", "open flame"))
    places = Places("school/runs.yml", {("runs", 0): Place("school/runs.yml", 2, 5)})
    (problem,) = found(replace(given, places={"school/runs.yml": places}))
    assert (problem.severity, problem.place, problem.where) == (Severity.ERROR, Place("school/runs.yml", 2, 5), "p1, float-or-sink")
    assert problem.what == "an adult must be at hand for open flame and pressure, and the teacher sits at her own station"
    assert problem.remedy.startswith("write `second adult: hands-on` if one will stand there; else ")


def test_a_posted_adult_answers_both() -> None:
    """An adult posted at the hands-on station is at hand and sees it; one posted elsewhere does neither."""
    unseen = [tiny_room(sees=())]
    assert codes(department(("open flame",), rooms=unseen, second_adult=Kind.HANDS_ON)) == []
    assert codes(department(("open flame",), rooms=unseen, second_adult=Kind.TEACHER_LED)) == ["second-adult-needed", "hands-on-not-seen"]


def test_in_a_whole_class_round_the_teacher_walks() -> None:
    """A whole-class run needs no second adult and no view from the teacher-led station."""
    assert codes(department(("open flame",), rooms=[tiny_room(sees=())], way="whole_class")) == []


def test_one_room_is_told_once_and_each_run_once() -> None:
    """Two classes in an unseen room with an at-hand hazard: one error for the room, one for each run."""
    runs = [Run(class_id=name, unit="float-or-sink", starts=day) for name in ("p1", "p2") for day in (STARTS, date(2027, 2, 1))]
    classes = [tiny_class("p1", 24), tiny_class("p2", 24), tiny_class("p3", 24, room="r14")]
    runs.append(Run(class_id="p3", unit="float-or-sink", starts=STARTS))
    given = department(("heat",), runs=runs, classes=classes, rooms=[tiny_room(sees=()), tiny_room("r14", name="Room 14", sees=())])
    assert codes(given) == ["second-adult-needed"] * 5 + ["hands-on-not-seen"] * 2
    assert [problem.where for problem in found(given)[-2:]] == ["Room 12", "Room 14"]


def test_what_is_told_elsewhere_is_not_told_here() -> None:
    """A run of a unit or a class that does not exist, or in a room nobody described, gives nothing here."""
    runs = [Run(class_id="p1", unit="no-such", starts=STARTS), Run(class_id="p9", unit="float-or-sink", starts=STARTS)]
    assert codes(department(("heat",), runs=runs)) == []
    assert codes(department(("glass",), rooms=[])) == []


def test_the_line_to_write_cures() -> None:
    """`teacher sees: hands-on` and `second adult: hands-on`, as the remedies give them, leave nothing to say."""
    given = department(("heat",), rooms=[tiny_room(sees=())])
    told = {problem.code: problem.remedy for problem in found(given)}
    assert "`teacher sees: hands-on`" in told["hands-on-not-seen"]
    assert "`second adult: hands-on` in every run" in told["hands-on-not-seen"]
    assert codes(department(("glass",), rooms=[tiny_room(sees=(Kind.HANDS_ON,))])) == []
    assert codes(department(("heat",), rooms=[tiny_room(sees=())], second_adult=Kind.HANDS_ON)) == []
