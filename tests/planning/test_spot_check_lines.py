"""The questions a team can be asked, built from the unit itself."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.support.department import ROLES, tiny_unit
from trivet.model.hazard import HAZARDS
from trivet.model.station import Kind, Record, SpotCheckLine, Step
from trivet.model.unit import Unit
from trivet.planning.spot_check_lines import SPOT_CHECK_KINDS, Line, lines, safety

LEADER, RECORDER = ROLES[:2]


def kinds(unit: Unit, kind: Kind) -> list[str]:
    return [line.kind for line in lines(unit, kind, (LEADER,))]


def heard(unit: Unit, kind: Kind, about: str, duties: tuple[str, ...] = ("leader",)) -> str:
    roles = tuple(role for role in ROLES if role.id in duties)
    return next(line.listen_for for line in lines(unit, kind, roles) if line.kind == about)


def test_kinds_come_in_their_order() -> None:
    """Own lines first, then first step, record, job, done and safety, so that the list is taken from the front."""
    unit = tiny_unit(
        hands_on={"record": Record(("mass (g)",), ("", ""))},
        spot_checks=(SpotCheckLine(Kind.HANDS_ON, "Where is eye level?", "crouches"), SpotCheckLine(Kind.ONLINE, "Why two?", "to compare")),
    )
    assert kinds(unit, Kind.HANDS_ON) == ["own", "first_step", "record", "your_job", "done", "safety", "safety"]
    assert list(dict.fromkeys(kinds(unit, Kind.HANDS_ON))) == list(SPOT_CHECK_KINDS)
    assert kinds(unit, Kind.ONLINE) == ["own", "first_step", "record", "done"]
    assert kinds(unit, Kind.TEACHER_LED) == ["first_step", "done"]


@pytest.mark.parametrize("kind", list(Kind))
def test_a_bare_station_still_has_one_question(kind: Kind) -> None:
    """Where a station has no steps, table, duty, end or hazard, its goal is what to listen for."""
    bare = {"steps": (), "record": None, "done_when": ""}
    unit = tiny_unit(online=dict(bare), hands_on=bare | {"hazards": ()}, teacher_led=bare | {"start_alone": "", "read": None})
    (line,) = lines(unit, kind, ())
    station = next(each for each in unit.stations if each.kind is kind)
    assert (line.kind, line.listen_for) == ("first_step", station.goal)
    assert line.ask.endswith((".", "?"))


def test_the_teacher_led_group_starts_alone_before_it_reads() -> None:
    """The task to start alone comes before the text, the text before the steps."""
    unit = tiny_unit(teacher_led={"steps": (Step("Sort the cards.", 2),)})
    assert heard(unit, Kind.TEACHER_LED, "first_step") == "Underline what they changed."
    reads = replace(unit, teacher_led=replace(unit.teacher_led, start_alone=""))
    assert heard(reads, Kind.TEACHER_LED, "first_step") == "reads the text first"
    sorts = replace(reads, teacher_led=replace(reads.teacher_led, read=None))
    assert heard(sorts, Kind.TEACHER_LED, "first_step") == "Sort the cards."


@pytest.mark.parametrize(("times", "text"), [(1, "Weigh it."), (2, "Weigh it. (2 times)")])
def test_a_step_done_more_than_once_says_so(times: int, text: str) -> None:
    """Only a step of two or more times carries its count."""
    assert heard(tiny_unit(hands_on={"steps": (Step("Weigh it.", 1, times),)}), Kind.HANDS_ON, "first_step") == text


@pytest.mark.parametrize(
    ("record", "text"),
    [
        (Record(("mass (g)", "floats?"), ()), "mass (g), floats?"),
        (Record(("mass (g)", "floats?"), ("",)), "mass (g), floats?"),
        (Record(("mass (g)", "floats?"), ("", "")), "mass (g), floats?; 2 rows"),
    ],
)
def test_rows_are_counted_from_two_on(record: Record, text: str) -> None:
    """One row is the table itself; two or more are said."""
    assert heard(tiny_unit(online={"record": record}), Kind.ONLINE, "record") == text


def test_rows_without_columns_ask_for_nothing() -> None:
    """A table that has no columns yet gives no question about them."""
    assert "record" not in kinds(tiny_unit(online={"record": Record((), ("a", "b"))}), Kind.ONLINE)


@pytest.mark.parametrize(
    ("kind", "work_in", "asked"),
    [
        (Kind.HANDS_ON, "", True),
        (Kind.HANDS_ON, "team", True),
        (Kind.HANDS_ON, "pairs", False),
        (Kind.ONLINE, "", False),
        (Kind.ONLINE, "team", True),
        (Kind.TEACHER_LED, "", False),
        (Kind.TEACHER_LED, "team", True),
    ],
)
def test_duties_are_asked_where_students_work_as_a_team(kind: Kind, work_in: str, *, asked: bool) -> None:
    """At the hands-on station unless it says otherwise, and at the two others only where they work in teams."""
    name = kind.value
    assert ("your_job" in kinds(tiny_unit(**{name: {"work_in": work_in}}), kind)) == asked


def test_two_duties_are_both_listened_for() -> None:
    """A student of a team of three who holds two duties is asked about both; one without a duty is not asked about any."""
    said = heard(tiny_unit(), Kind.HANDS_ON, "your_job", ("leader", "recorder"))
    assert said == f"Leader: {LEADER.does} Recorder: {RECORDER.does}"
    assert "your_job" not in [line.kind for line in lines(tiny_unit(), Kind.HANDS_ON, ())]


def test_words_of_an_author_are_never_filled_in() -> None:
    """Braces in a step or a duty are text, not a place to fill in."""
    unit = tiny_unit(hands_on={"steps": (Step("Weigh {times} {0}.", 1, 2),)})
    assert heard(unit, Kind.HANDS_ON, "first_step") == "Weigh {times} {0}. (2 times)"
    odd = lines(unit, Kind.HANDS_ON, (replace(LEADER, does="Says {name}."),))
    assert "Leader: Says {name}." in [line.listen_for for line in odd]


def test_safety_is_asked_at_the_hands_on_station_alone() -> None:
    """One question a hazard there, none at the stations without hazards, and each closed or open question ends as one."""
    unit = tiny_unit(hands_on={"hazards": HAZARDS})
    asked = safety(unit, Kind.HANDS_ON)
    assert len(set(asked)) == len(HAZARDS)
    assert safety(unit, Kind.ONLINE) == safety(unit, Kind.TEACHER_LED) == ()
    assert all(isinstance(line, Line) and line.ask.endswith((".", "?")) and line.listen_for for line in asked)
