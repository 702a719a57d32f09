"""What a lesson sheet keeps ready for a teacher's own device."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest

from tests.support.department import tiny_department
from trivet.model.station import Kind
from trivet.pages.lesson_blanks import blank_boards, blank_checks, for_script
from trivet.pages.lesson_run import LessonRun
from trivet.pages.words import load_words
from trivet.planning.department import plan_department

WORDS = load_words()


@pytest.fixture(scope="module")
def run() -> LessonRun:
    department = tiny_department()
    plan = plan_department(department).plans[0]
    return LessonRun(plan, department.units[plan.unit], department.school, WORDS)


def test_scripts_get_sentences_and_duties(run: LessonRun) -> None:
    """The JSON holds every sentence with its places, and each duty by its id; no duty where students choose them."""
    found = json.loads(for_script(run))
    assert found["opened"] == WORDS.table["names.opened"]
    assert "{n}" in found["students"]["other"]
    assert found["roles"] == {role.id: role.name.lower() for role in run.school.roles}
    assert json.loads(for_script(replace(run, unit=replace(run.unit, roles="students"))))["roles"] == {}


def test_blanks_name_nobody(run: LessonRun) -> None:
    """One board a station and one spot check a station, without letter, student, team or question; devices at the online one alone."""
    boards = blank_boards(run)
    assert [board.station.css for board in boards] == [kind.value.replace("_", "-") for kind in Kind]
    assert [bool(board.pairs) for board in boards] == [kind is Kind.ONLINE for kind in Kind]
    for board in boards:
        assert {each.seat for team in board.teams for each in team.members} == {""}
        assert (board.letter, board.count) == ("", "")
    assert all((check.seat, check.team, check.ask) == ("", "", "") for check in blank_checks(WORDS))
