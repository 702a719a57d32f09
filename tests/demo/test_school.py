"""The demo school hangs together: classes, lists, runs, kit, reading level."""

from __future__ import annotations

from pathlib import Path

import pytest

from trivet.model.department import Department
from trivet.model.problem import Severity
from trivet.model.roster import RuleKind
from trivet.planning.department import plan_department
from trivet.reading.cards import card_texts
from trivet.reading.level import level
from trivet.reading.roster import read_roster


def test_eight_classes_from_five_to_thirty_seven_students(demo: Department) -> None:
    """The sizes are those that show every shape: a handful, odd and even, one team more or less."""
    assert sorted(one.size for one in demo.school.classes.values()) == [5, 23, 28, 31, 31, 34, 36, 37]
    assert {room for one in demo.school.classes.values() for room in [one.room]} <= set(demo.school.rooms)


def test_every_class_has_an_invented_list_that_fits_it(demo: Department, root: Path) -> None:
    """Each list reads without a problem, holds each number of its class once, and no name twice in the school."""
    names: list[str] = []
    for school_class in demo.school.classes.values():
        roster, problems = read_roster(root / "private/example", school_class)
        assert [problem.sentence for problem in problems] == []
        assert roster is not None
        assert tuple(student.seat for student in roster.students) == school_class.seats
        names += [student.name for student in roster.students]
    assert len(names) == len(set(names)) == 225


def test_the_list_of_p1_holds_every_kind_of_wish(demo: Department, root: Path) -> None:
    """Six pairs not in one team, two in the same team, one not in the same station group; needs, an agreement not signed, an adult."""
    roster, _ = read_roster(root / "private/example", demo.school.classes["p1"])
    assert roster is not None
    kinds = [rule.kind for rule in roster.rules]
    assert [kinds.count(kind) for kind in (RuleKind.NOT_ONE_TEAM, RuleKind.SAME_TEAM, RuleKind.NOT_ONE_GROUP)] == [6, 2, 1]
    assert {student.needs for student in roster.students} > {"large print", "Spanish"}
    assert [student.seat for student in roster.students if student.agreement is False] == [16]
    assert [student.seat for student in roster.students if student.adult] == [28]


def test_every_run_can_be_planned(demo: Department) -> None:
    """No run is left without dates, and nothing is an error or a warning."""
    plans = plan_department(demo)
    assert plans.not_planned == ()
    assert [problem.sentence for problem in plans.problems if problem.severity is not Severity.ADVICE] == []
    assert len(plans.plans) == len(demo.school.runs) >= 10


def test_the_runs_show_what_a_year_brings(demo: Department) -> None:
    """Whole-class first units, rotating ones, a day with two rounds, a short day, an A/B class and a lost day are all there."""
    plans = plan_department(demo)
    days = [day for plan in plans.plans for day in plan.days]
    assert {plan.way for plan in plans.plans} == {"whole_class", "rotate"}
    assert max(sum(block.kind == "station" for block in day.blocks) for day in days) == 2
    assert {day.day_type for day in days} >= {"regular", "early_release", "block_odd", "block_even", "assembly"}
    assert {plan.class_id for plan in plans.plans} == set(demo.school.classes)
    assert sum(len(run.lost) for run in demo.school.runs) == 2
    assert {run.begins for run in demo.school.runs} == {"date", "after", "by"}
    assert not [problem for problem in plans.problems if problem.code in ("by-missed", "past-term", "into-testing", "drift", "kit-clash")]


@pytest.mark.parametrize("slug", ["float-or-sink", "moving-plates", "beaks-and-seeds"])
def test_cards_and_texts_are_at_or_below_grade_six(demo: Department, slug: str) -> None:
    """Flesch-Kincaid grade (Kincaid and others 1975) of each student card and of the text to read, new words left out."""
    unit = demo.units[slug]
    assert unit.teacher_led.read is not None
    for texts in [*(card_texts(station) for station in unit.stations), (unit.teacher_led.read.text,)]:
        found = level(texts, unit.new_words)
        assert found is not None
        assert found.grade <= unit.grades[0]


def test_all_kit_that_a_unit_names_is_in_the_inventory(demo: Department) -> None:
    """Each line of materials has its item in the north store and in the south one."""
    stored = {(item.item, item.store) for item in demo.school.inventory}
    for unit in demo.units.values():
        for line in unit.hands_on.materials:
            assert {(line.item, "north prep room"), (line.item, "south prep room")} <= stored, line.item
