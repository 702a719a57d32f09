"""Runs over the year: terms, testing days, last dates, what is recorded for another day."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from tests.planning.checks.two_units import department, rewritten, run, said
from tests.support.department import STARTS, tiny_bells, tiny_calendar
from trivet.model.school import Closure, Done, SpecialDay, Term
from trivet.planning.department import plan_department


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
