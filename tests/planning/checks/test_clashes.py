"""Lessons at one time, and classes that drift apart."""

from __future__ import annotations

from datetime import timedelta

import pytest

from tests.planning.checks.two_units import classes, department, rewritten, run, said
from tests.support.department import STARTS
from trivet.model.school import Defaults


def test_one_teacher_at_two_lessons() -> None:
    """Lessons of one teacher at one time are told once a pair of runs; another teacher in another room is fine."""
    runs = (run(), run("p2"))
    (sentence,) = said(department(*runs, classes=classes(room="r14")), "two-at-once")
    assert "Ms. Rowan has lessons of p1 and p2 at the same time on Monday, November 30" in sentence
    assert said(rewritten(department(*runs, classes=classes(room="r14")), 1, sentence), "two-at-once") == []
    assert said(department(*runs, classes=classes(room="r14", teacher="teller")), "two-at-once") == []
    (room,) = said(department(*runs, classes=classes(teacher="teller")), "two-at-once")
    assert "Room 12 has lessons of p1 and p2" in room


@pytest.mark.parametrize(("later", "told"), [(14, False), (15, True)])
def test_classes_that_drift_apart(later: int, told: bool) -> None:
    """Ten school days apart are fine, eleven are told with a date within them; a grade apart is another matter; the number can be set."""
    runs = (run(), run("p2", starts=STARTS + timedelta(days=later)))
    made = department(*runs, classes=classes(room="r14"))
    found = said(made, "drift")
    assert bool(found) is told
    if told:
        assert "11 school days apart in this unit, more than 10" in found[0]
        assert said(rewritten(made, 1, found[0]), "drift") == []
        assert said(department(*runs, classes=classes(room="r14", grade=8)), "drift") == []
        assert said(department(*runs, classes=classes(room="r14"), defaults=Defaults(drift_days=11)), "drift") == []


def test_lost_days_let_classes_drift() -> None:
    """Two classes that began together drift by the days that one of them lost, and then no first day is offered any more."""
    lost = tuple(STARTS + timedelta(days=day) for day in (1, 2, 3, 4))
    made = department(run(), run("p2", lost=lost), classes=classes(room="r14"), defaults=Defaults(drift_days=3))
    (sentence,) = said(made, "drift")
    assert "4 school days apart" in sentence
    assert "p1 ends it on Thursday, December 3, p2 on Wednesday, December 9" in sentence
    assert "starts:" not in sentence
