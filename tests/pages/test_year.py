"""The year page: weeks, closures, runs, and the same in words."""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date
from pathlib import Path

from playwright.sync_api import Browser

from tests.conftest import EPOCH
from tests.support.department import tiny_calendar, tiny_class, tiny_department, tiny_unit
from trivet.model.department import Department
from trivet.model.school import Closure, Run, Term
from trivet.pages.build_info import BuildInfo
from trivet.pages.words import load_words
from trivet.pages.year_page import year_page
from trivet.pages.year_strip import MOST_CLASSES, Strip, mondays_of, strips, unit_numbers
from trivet.planning.class_years import class_years
from trivet.planning.department import plan_department
from trivet.planning.timed_runs import time_runs

BREAK = Closure(date(2026, 12, 21), date(2027, 1, 1), "winter break")


def strip_of(department: Department) -> Strip:
    (found,) = strips_of(department)
    return found


def strips_of(department: Department) -> tuple[Strip, ...]:
    plans = plan_department(department)
    return strips(department, plans, unit_numbers(plans.plans), class_years(department, time_runs(department)), load_words())


def body_of(department: Department) -> str:
    return year_page(department, plan_department(department), BuildInfo(date(2026, 11, 25)), load_words()).body


def text_of(html: str) -> str:
    return " ".join(re.sub(r"<[^>]+>", " ", html).split())


def test_weeks_of_the_year() -> None:
    """The year has a week for each Monday from its first day's to its last day's, and weeks are numbered from 1."""
    assert len(mondays_of(tiny_calendar())) == 41
    assert mondays_of(tiny_calendar(first=date(2026, 8, 26)))[0] == date(2026, 8, 24)
    numbers = strip_of(tiny_department()).numbers
    assert [cell.text for cell in numbers] == [str(number) for number in range(1, 42)]
    assert (numbers[14].first, numbers[14].last) == ("2026-11-30", "2026-12-06")


def test_months_begin_with_the_week_of_their_first() -> None:
    """A month's name stands over the week that holds its first day, and the names cover all weeks."""
    months = strip_of(tiny_department()).months
    assert [(cell.text, cell.css) for cell in months][:4] == [
        ("Aug", "wk-1 sp-1"), ("Sep", "wk-2 sp-4"), ("Oct", "wk-6 sp-4"), ("Nov", "wk-10 sp-5"),
    ]  # fmt: skip
    assert sum(int(cell.css.rpartition("-")[2]) for cell in months) == 41


def test_closed_weeks_and_terms() -> None:
    """Weeks in which every school day is closed stand as one band with the reason; a week with one closed day does not."""
    closures = (Closure(date(2026, 9, 7), date(2026, 9, 7), "Labor Day"), BREAK)
    terms = (Term("Fall", date(2026, 8, 24), date(2027, 1, 15)), Term("Spring", date(2027, 1, 19), date(2027, 6, 4)))
    found = strip_of(tiny_department(calendar=tiny_calendar(closures=closures, terms=terms)))
    assert [(cell.text, cell.css) for cell in found.closed] == [("winter break", "wk-18 sp-2 sc-1")]
    assert [cell.text for cell in found.numbers if cell.css.endswith(" begins")] == ["1", "22"]
    assert [(cell.text, cell.css) for cell in found.terms] == [("Fall", "wk-1 sp-21"), ("Spring", "wk-22 sp-20")]


def test_many_classes_stand_in_parts() -> None:
    """More classes than a narrow phone can show side by side stand in parts of about one size, each with its weeks, none left out."""
    classes = [tiny_class(f"c{number}") for number in range(20)]
    found = strips_of(tiny_department(classes=classes, runs=()))
    assert [len(part.classes) for part in found] == [7, 7, 6]
    assert [cell.text for part in found for cell in part.classes] == [each.id for each in classes]
    assert [part.classes[0].css for part in found] == ["cl-1"] * 3
    assert all(len(part.numbers) == 41 for part in found)
    assert len(strips_of(tiny_department(classes=classes[:MOST_CLASSES], runs=()))) == 1
    assert strips_of(tiny_department(classes=[], runs=())) == ()


def test_terms_of_several_kinds() -> None:
    """Where terms lie over each other, as quarters and semesters do, the shorter ones stand on the strip; all stand in words below."""
    terms = (
        Term("First semester", date(2026, 8, 24), date(2027, 1, 15)),
        Term("Quarter 1", date(2026, 8, 24), date(2026, 10, 23)),
        Term("Quarter 2", date(2026, 10, 26), date(2027, 1, 15)),
        Term("Second semester", date(2027, 1, 19), date(2027, 6, 4)),
        Term("A day before the year", date(2026, 8, 1), date(2026, 8, 1)),
    )
    department = tiny_department(calendar=tiny_calendar(terms=terms))
    assert [cell.text for cell in strip_of(department).terms] == ["Quarter 1", "Quarter 2", "Second semester"]
    assert "First semester" in text_of(body_of(department))


def test_runs_stand_in_their_weeks() -> None:
    """A run stands in the weeks of its days with its unit's number; a class's first unit is marked; two units in a week share a cell."""
    classes = [tiny_class(), tiny_class("p2")]
    runs = (
        Run(class_id="p1", unit="float-or-sink", starts=date(2026, 9, 17), way="whole_class"),
        Run(class_id="p1", unit="circuits", starts=date(2026, 9, 23)),
        Run(class_id="p2", unit="circuits", starts=date(2026, 12, 18)),
    )
    calendar = tiny_calendar(closures=(BREAK,))
    found = strip_of(tiny_department(units=(tiny_unit("circuits"),), classes=classes, runs=runs, calendar=calendar))
    assert [(cell.css, cell.text, cell.first, cell.last) for cell in found.runs] == [
        ("wk-4 sp-1 cl-1 first", "1", "2026-09-17", "2026-09-18"),
        ("wk-5 sp-1 cl-1 first", "1 2", "2026-09-21", "2026-09-25"),
        ("wk-6 sp-1 cl-1", "2", "2026-09-28", "2026-09-28"),
        ("wk-17 sp-1 cl-2", "2", "2026-12-18", "2026-12-18"),
        ("wk-20 sp-1 cl-2", "2", "2027-01-04", "2027-01-06"),
    ]


def test_the_same_in_words() -> None:
    """Each class stands in words with its shortest period, its units and dates, and its calendar file."""
    text = text_of(body_of(tiny_department(way="whole_class")))
    assert "p1 Science 7, period 1 Ms. Rowan 205 meetings, 10,660 min in the year Period that a first round needs: 40" in text
    assert "1 Float or sink? Nov 30 to Dec 2, whole class Calendar file" in text
    assert 'href="../calendar/p1.ics"' in body_of(tiny_department())


def test_each_class_has_its_shortest_period_on_the_strip() -> None:
    """Beside each class stand the minutes of the shortest period that holds a first round, as long as the blocks of such a day.

    The first day of the tiny unit as a whole class: 4 settle in + 3 expectations + 2 places + 3 launch + 21 at the stations + 1 clean up
    + 5 reflection + 1 pack up = 40. A class without a unit has none.
    """
    classes = [tiny_class(), tiny_class("p2")]
    runs = (Run(class_id="p1", unit="float-or-sink", starts=date(2026, 9, 17), way="whole_class"),)
    department = tiny_department(classes=classes, runs=runs)
    assert [(cell.text, cell.note) for cell in strip_of(department).classes] == [("p1", "40"), ("p2", "")]
    assert "<small>40</small>" in body_of(department)
    assert "with each class: minutes of the shortest period that holds a first round" in body_of(department)


def test_days_of_school_are_counted() -> None:
    """The year and each term say how many days of school they have, closures left out."""
    terms = (Term("Fall", date(2026, 8, 24), date(2027, 1, 15)), Term("Spring", date(2027, 1, 19), date(2027, 6, 4)))
    text = text_of(body_of(tiny_department(calendar=tiny_calendar(closures=(BREAK,), terms=terms))))
    assert "195 school days 1 run" in text
    assert "Fall Aug 24 to Jan 15, 95 school days Spring Jan 19 to Jun 4, 99 school days" in text


def test_lost_days_stand_beside_their_unit() -> None:
    """A unit that lost days says which, up to its last day."""
    lost = (date(2026, 12, 2), date(2026, 12, 3))
    made = tiny_department(lost=(*lost, date(2027, 2, 2)))
    assert "Nov 30 to Dec 7; lost: Dec 2 and Dec 3 " in text_of(body_of(made))
    assert "lost:" not in text_of(body_of(tiny_department()))


def test_what_asks_for_a_decision() -> None:
    """A run that begins while the one before it goes on stands under what is to decide, with the remedy; nothing stands there otherwise."""
    runs = (
        Run(class_id="p1", unit="float-or-sink", starts=date(2026, 9, 14)),
        Run(class_id="p1", unit="circuits", starts=date(2026, 9, 16)),
    )
    body = body_of(tiny_department(units=(tiny_unit("circuits"),), runs=runs))
    assert "write <code>starts: 2026-09-18</code>" in body
    assert 'id="decide"' not in body_of(tiny_department())


def test_a_year_without_a_plan() -> None:
    """Without a run the page says how to write one."""
    body = body_of(tiny_department(runs=()))
    assert "No unit is planned yet" in body and "strip-of-year" not in body


def test_this_week_is_marked(built_site: Path, serve: Callable[[Path], str], chromium: Browser) -> None:
    """The script marks this week, what is over and what is on, by the clock of the device."""
    assert EPOCH
    context = chromium.new_context()
    page = context.new_page()
    page.clock.set_fixed_time("2026-12-01T08:25:00")
    page.goto(f"{serve(built_site)}/year/")
    assert page.inner_text(".year-top .now") == "week 15 of 41"
    assert page.inner_text(".strip-of-year .wn.cur") == "15"
    on = page.eval_on_selector_all(".strip-of-year .run.cur", "all => all.map(each => [each.dataset.first, each.dataset.last])")
    assert on and all(first <= "2026-12-01" <= last for first, last in on)
    over = page.eval_on_selector_all(".strip-of-year .run.done", "all => all.map(each => each.dataset.last)")
    assert over and all(last < "2026-12-01" for last in over)
    context.close()


def test_the_strip_turns_on_a_phone(built_site: Path, serve: Callable[[Path], str], chromium: Browser) -> None:
    """On a laptop weeks run to the right, on a phone downward, on paper to the right; nothing is wider than its screen."""
    page = chromium.new_page(viewport={"width": 1280, "height": 720})
    page.goto(f"{serve(built_site)}/year/")
    where = "() => ['1', '41'].map(n => [...document.querySelectorAll('.wn')].find(e => e.textContent === n).getBoundingClientRect())"

    def turned() -> bool:
        first, last = page.evaluate(where)
        return bool(last["top"] > first["top"])

    assert not turned()
    for width in (390, 320):
        page.set_viewport_size({"width": width, "height": 844})
        assert turned()
        assert page.evaluate("document.documentElement.scrollWidth") == width
    page.emulate_media(media="print")
    assert not turned()
    page.close()
