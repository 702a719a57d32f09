"""The prep page: one square a thing, the first words say what is short, and nothing private shows."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from tests.planning.test_department_materials import planned, scene, week_of
from tests.support.department import STARTS, tiny_class, tiny_department, tiny_room, tiny_unit
from tests.support.lock import tiny_lock
from trivet.model.department import Department
from trivet.model.school import StockItem
from trivet.model.station import Material, Per
from trivet.pages.build_info import BuildInfo
from trivet.pages.prep_chart import MOST, chart
from trivet.pages.prep_page import prep_page
from trivet.pages.words import load_words
from trivet.planning.department import plan_department

WORDS = load_words()


def body(department: Department) -> str:
    return prep_page(department, plan_department(department), BuildInfo(date(2026, 11, 22)), WORDS).body


def text(html: str) -> str:
    return re.sub(r"\s+", " ", re.sub(r"<[^>]*>", " ", html))


def test_one_square_a_thing() -> None:
    """Of six cylinders against four, four squares are filled and two hollow on each day that clashes; other days have only filled ones."""
    week = week_of(scene())
    drawn = chart(week.reusable[0], week.first, WORDS)
    assert drawn.css == "n-6 at-4"
    assert [(day.name, day.hot, [(stack.who, stack.filled, stack.hollow, stack.need) for stack in day.stacks]) for day in drawn.days] == [
        ("Mon", False, [("p1", 3, 0, 3), ("p2", 3, 0, 3)]),
        ("Tue", True, [("p1", 3, 0, 3), ("p2 r2", 4, 2, 6)]),
        ("Wed", True, [("p1", 3, 0, 3), ("p2 r2", 4, 2, 6)]),
        ("Thu", False, [("r2", 3, 0, 3)]),
        ("Fri", False, []),
    ]
    html = body(scene())
    assert len(re.findall(r'<i class="over"></i>', html)) == 4
    assert len(re.findall(r"<i></i>", html)) == 3 * 5 + 4 * 2


@pytest.mark.parametrize(("per_student", "have", "each"), [(1, 10, 1), (4, 30, 1), (8, 20, 2), (9, 20, 3)])
def test_many_things_share_a_square(per_student: int, have: int, each: int) -> None:
    """Where more things are needed than squares fit side by side, a square stands for several, and the caption says so."""
    unit = tiny_unit(hands_on={"materials": (Material(Decimal(per_student), "cup", Per.STUDENT),)})
    stock = [StockItem(item="cup", have=Decimal(have))]
    department = tiny_department(size=36, unit=unit, inventory=stock)
    week = week_of(department)
    drawn = chart(week.reusable[0], week.first, WORDS)
    (stack,) = drawn.days[0].stacks
    assert stack.filled + stack.hollow <= MOST
    assert stack.filled + stack.hollow == -(-12 * per_student // each)
    assert stack.filled == -(-have // each)
    assert (f"a square is {each}" in drawn.caption) == (each > 1)


def test_first_words_of_a_week_say_what_is_short() -> None:
    """Right under its name and its runs a week says what is short, or that nothing is."""
    words = text(body(scene()))
    assert (
        "Week of Nov 30 Float or sink? in p1, p2, r2: 27 teams Short of 2 × graduated cylinder 25 mL on Tuesday and Wednesday, P2" in words
    )
    assert "Week of Nov 30 Float or sink? in p1: 9 teams Nothing is short" in text(body(tiny_department()))


def test_everything_is_on_the_page() -> None:
    """Kit, totals, devices, cures with lines and places, cost, paper and tasks stand on it as text."""
    words = text(body(scene()))
    for part in (
        "North prep room",
        "Graduated cylinder 25 mL need 6 have 4 short 2 p2 and r2 at once, Tue and Wed, P2",
        "Water need 1,782 mL have 1,000 mL short 782 mL used up: p1 540 + p2 540 + r2 540, and 162 spare",
        "Room 12 need 6 have 18",
        "Start Float or sink? in r2 on Thursday, December 3 need 3, have 4",
        "write starts: 2026-12-03 at school/runs.yml:1:1",
        "Shopping list item get cost for, in packs Graduated cylinder 25 mL 2 $13.00",
        "together $15.00",
        "Write-ups need 95 pages 95 p1 31 + p2 36 + r2 28: one a student",
        "before 8:05 Set out Float or sink? for p1: 3 × graduated cylinder 25 mL, 2 × balance 0.1 g, 180 mL water",
        "glass: ",
        "Everything planned: Nov 30 to Dec 4",
    ):
        assert part in words, part


def test_a_passing_time_that_is_too_short_is_told() -> None:
    """Two classes four minutes apart in one room with a set-up of six minutes get advice."""
    department = scene(unit=tiny_unit(hands_on={"set_up_minutes": 6.0}))
    assert "4 min between p1 and p2 in Room 12 (Monday, Tuesday and Wednesday); Float or sink? needs 6 to be ready" in text(
        body(department)
    )


def test_a_department_without_plans_says_what_to_write() -> None:
    """Nothing planned is the first line of the work: write a run."""
    assert "Write a run into school/runs.yml" in text(body(tiny_department(runs=[])))


def test_what_is_not_counted_is_said() -> None:
    """An item that the inventory does not know is not called short, and says that nobody counted it."""
    assert "Water need 594 mL have not counted" in text(body(tiny_department(inventory=[])))


def test_a_leveled_unit_looks_like_one_not_drawn() -> None:
    """The page of a department with a leveled lock is that of one without."""
    own = tiny_class(size=31)
    assert body(tiny_department(locks=[replace(tiny_lock(own), leveled=True)])) == body(tiny_department())


def test_weeks_carry_their_last_lesson_for_the_script() -> None:
    """The script can tell which week's lessons are over: a weekend belongs to the week to come."""
    html = body(scene())
    assert re.findall(r'id="(week-[\d-]+)" data-last="([\d-]+)"', html)[0] == ("week-2026-11-30", "2026-12-04")
    assert planned(scene())[1].weeks[0].first == STARTS


def test_stores_stand_apart_and_shared_things_together() -> None:
    """Each store has its own list; what stands in no store is one list for all."""
    rooms = [tiny_room("r12"), tiny_room("r14", store="south prep room")]
    words = text(body(scene(rooms=rooms)))
    assert words.index("North prep room need: most") < words.index("South prep room need: most")
    assert "All stores need: most" in text(body(scene(inventory=[StockItem(item="balance 0.1 g", have=Decimal(9))])))


def test_every_column_has_a_name() -> None:
    """No table of the page has an empty header cell, or a row with more cells than the header has names."""
    tables = re.findall(r"<table class=\"need.*?</table>", body(scene()), flags=re.DOTALL)
    assert len(tables) > 3
    for table in tables:
        head, *rows = re.findall(r"<tr.*?</tr>", table, flags=re.DOTALL)
        names = re.findall(r"<th scope=\"col\".*?>(.*?)</th>", head)
        assert all(names)
        assert "<td" not in head
        assert {len(re.findall(r"<t[hd]\b", row)) for row in rows} == {len(names)}
