"""Runs over the year: terms, testing days, last dates, lessons at one time, classes that drift apart, kit at one time."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal
from typing import Any

import pytest

from tests.support.department import STARTS, tiny_bells, tiny_calendar, tiny_class, tiny_department, tiny_room, tiny_unit
from trivet.model.department import Department
from trivet.model.school import Closure, Defaults, Done, Run, SpecialDay, StockItem, Term
from trivet.planning.department import plan_department

UNITS = ("float-or-sink", "circuits")


def run(class_id: str = "p1", unit: str = "float-or-sink", starts: date = STARTS, **how: Any) -> Run:
    return Run(class_id=class_id, unit=unit, starts=starts, **how)


def department(*runs: Run, **school: Any) -> Department:
    return tiny_department(units=[tiny_unit(unit) for unit in UNITS[1:]], runs=runs, **school)


def said(made: Department, code: str) -> list[str]:
    return [problem.sentence for problem in plan_department(made).problems if problem.code == code]


def rewritten(made: Department, place: int, sentence: str) -> Department:
    """The department with the first date of a remedy written into a run, as its words say."""
    line = sentence.split("`starts: ")[1][:10]
    changed = replace(made.school.runs[place], starts=date.fromisoformat(line), begins="date", after="", gap_days=0)
    runs = tuple(changed if at == place else each for at, each in enumerate(made.school.runs))
    return replace(made, school=replace(made.school, runs=runs))


def test_past_the_term() -> None:
    """A unit that begins in a term and ends after it is told once, and the remedy's date ends it on the term's last day or before."""
    terms = (Term("Fall", date(2026, 8, 24), date(2026, 12, 2)), Term("Spring", date(2026, 12, 3), date(2027, 6, 4)))
    made = department(run(), calendar=tiny_calendar(terms=terms))
    (sentence,) = said(made, "past-term")
    assert "ends on Thursday, December 3, after Fall has ended on Wednesday, December 2" in sentence
    mended = rewritten(made, 0, sentence)
    assert said(mended, "past-term") == []
    assert plan_department(mended).plans[0].days[-1].date == date(2026, 12, 2)


def test_a_term_that_holds_it_and_a_gap_between_terms() -> None:
    """A unit that ends on the term's last day is fine, and so is one that begins between two terms."""
    terms = (Term("Fall", date(2026, 8, 24), date(2026, 12, 3)), Term("Spring", date(2027, 1, 4), date(2027, 6, 4)))
    assert said(department(run(), calendar=tiny_calendar(terms=terms)), "past-term") == []
    assert said(department(run(starts=date(2026, 12, 14)), calendar=tiny_calendar(terms=terms)), "past-term") == []


@pytest.mark.parametrize("meets", [True, False])
def test_into_testing_days(meets: bool) -> None:
    """Testing days between a unit's first and last day are told, whether the class meets on them or not; each remedy avoids them."""
    bells = tiny_bells(52, state_testing=50)
    if not meets:
        bells["state_testing"] = replace(bells["state_testing"], periods={})
    special = {date(2026, 12, day): SpecialDay("state_testing") for day in (2, 3)}
    made = department(run(), bells=bells, calendar=tiny_calendar(special=special))
    (sentence,) = said(made, "into-testing")
    assert "2 testing days begin on Wednesday, December 2" in sentence
    assert said(rewritten(made, 0, sentence), "into-testing") == []
    assert "`starts: 2026-12-04` to begin after that" in sentence
    assert said(department(run(starts=date(2026, 12, 4)), bells=bells, calendar=tiny_calendar(special=special)), "into-testing") == []


def test_a_missed_last_date() -> None:
    """A unit that ends after its last date is told at that date, with the latest start that keeps it."""
    made = department(run(by=date(2026, 12, 2)))
    (sentence,) = said(made, "by-missed")
    assert "ends on Thursday, December 3, after its last date, Wednesday, December 2; write `starts: 2026-11-27`" in sentence
    assert said(rewritten(made, 0, sentence), "by-missed") == []
    assert said(department(run(by=date(2026, 12, 3))), "by-missed") == []


def test_a_lost_day_misses_the_last_date_and_moves_no_first_day() -> None:
    """A unit that ends by a date keeps its first day when a day of it is lost: the date is missed, and that is told."""
    by = date(2026, 12, 3)
    whole = department(run(starts=date.max, begins="by", by=by))
    lost = department(run(starts=date.max, begins="by", by=by, lost=(date(2026, 12, 1),)))
    assert [plan_department(made).plans[0].days[0].date for made in (whole, lost)] == [STARTS, STARTS]
    assert plan_department(lost).plans[0].days[0] == plan_department(whole).plans[0].days[0]
    assert said(whole, "by-missed") == []
    assert "what is behind it stays" in said(lost, "by-missed")[0]


def test_what_has_begun_waits_for_nothing() -> None:
    """A unit whose first round is recorded begins on that date, whatever is later written for the unit before it or the calendar."""
    first = run()
    then = run(unit="circuits", starts=date.max, begins="after", after="float-or-sink", done=(Done(date=date(2026, 12, 4), rounds=(1,)),))
    closed = tiny_calendar(closures=(Closure(date(2026, 11, 16), date(2026, 11, 16)),))
    for made in (department(first, then), department(first, then, calendar=closed)):
        assert [plan.days[0].date for plan in plan_department(made).plans] == [STARTS, date(2026, 12, 4)]
        assert said(made, "record-unused") == []


def test_a_record_while_the_class_is_at_another_unit() -> None:
    """A round recorded for a day that belongs to another unit is an error that names the line to write."""
    first = run(lost=(date(2026, 12, 3),))
    then = run(unit="circuits", starts=date(2026, 12, 4), done=(Done(date=date(2026, 12, 4), rounds=(1,)),))
    (sentence,) = said(department(first, then), "record-unused")
    assert "by the plan p1 is at float-or-sink then; write `- 2026-12-04` under `lost` of float-or-sink" in sentence
    mended = department(replace(first, lost=(date(2026, 12, 3), date(2026, 12, 4))), then)
    assert said(mended, "record-unused") == []
    one, two = plan_department(mended).plans
    assert [day.date.day for day in one.days] == [30, 1, 2, 7]  # the write-up is still to come
    assert [day.date.day for day in two.days] == [4, 8, 9, 10]


def classes(**other: Any) -> list[Any]:
    return [tiny_class(), tiny_class("p2", **{"period": "P1", **other})]


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


def stock(cylinders: int) -> list[StockItem]:
    return [StockItem(item="graduated cylinder 25 mL", have=Decimal(cylinders)), StockItem(item="balance 0.1 g", have=Decimal(20))]


def test_kit_at_one_time() -> None:
    """Two classes that have more of a thing out together than there is are told once, and the line of the remedy cures it."""
    rooms = [tiny_room(), tiny_room("r14")]
    two = classes(room="r14", teacher="teller")
    made = department(run(), run("p2"), classes=two, rooms=rooms, inventory=stock(5))
    (sentence,) = said(made, "kit-clash")
    assert "short of 1 × graduated cylinder 25 mL on Monday, November 30: p1 and p2 need 3 each at the same time" in sentence
    assert said(rewritten(made, 1, sentence), "kit-clash") == []
    assert said(department(run(), run("p2"), classes=two, rooms=rooms, inventory=stock(6)), "kit-clash") == []


def test_too_little_for_one_class() -> None:
    """What a run alone has not enough of is a warning for kit and advice for devices, which students can share."""
    made = department(run(), inventory=stock(2), rooms=[tiny_room(devices=3)])
    found = {problem.sentence: str(problem.severity) for problem in plan_department(made).problems if problem.code == "kit-short"}
    assert list(found.values()) == ["warning", "advice"]
    assert "needs 3 × graduated cylinder 25 mL, and there are 2" in next(iter(found))
    assert said(made, "kit-clash") == []
