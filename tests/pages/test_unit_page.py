"""What a teacher sees of a unit: the steps, the text and the data of its stations."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from tests.pages.scenario import BUILD, department, plans
from trivet.model.station import DataTable
from trivet.model.unit import Unit
from trivet.pages.student_page import student_pages
from trivet.pages.unit_page import unit_page
from trivet.pages.words import load_words


def unit_body(unit: Unit) -> str:
    """The teacher's page of a unit in the scenario's place."""
    made = department()
    made = replace(made, units={**made.units, unit.slug: unit})
    return unit_page(unit, made, plans(made), BUILD, load_words()).body


def student_body(unit: Unit) -> str:
    """The student cards of a unit in the scenario's place, in English."""
    made = department()
    made = replace(made, units={**made.units, unit.slug: unit})
    return student_pages(unit, made, BUILD)[0].body


def rich(data: DataTable | None) -> Unit:
    """The scenario's unit with these data."""
    unit = department().units["float-or-sink"]
    return replace(unit, teacher_led=replace(unit.teacher_led, data=data))


def test_a_teacher_reads_each_step_with_its_time() -> None:
    """Every step of every station stands on the unit's page with its minutes, in order, with what comes after the last."""
    unit = department().units["float-or-sink"]
    body = unit_body(unit)
    for station in unit.stations:
        part = body.partition(f'<section class="st" id="{station.kind.value.replace("_", "-")}">')[2].partition("</section>")[0]
        said = re.findall(r'<li><p class="say">(.*?)</p> <p class="note">(.*?)</p></li>', part)
        assert [text for text, _ in said] == [step.text for step in station.steps]
        assert all(str(int(step.minutes)) in time for step, (_, time) in zip(station.steps, said, strict=True))
        assert station.finished_early in part
    assert "Dry the solids. Wipe the tray." in body


def test_a_station_with_nothing_to_fold_has_no_fold() -> None:
    """A teacher-led station without steps, and with nothing for those who finish early, has no empty fold."""
    part = unit_body(rich(None)).partition('id="teacher-led">')[2].partition("</section>")[0]
    assert "<details" not in part


def test_the_text_is_a_link_to_where_students_read_it() -> None:
    """The text of the teacher-led station leads to its place on the student cards, which is there."""
    unit = rich(None)
    assert '<a href="student/#reading">a text of 10 words</a>' in unit_body(unit)
    assert 'id="reading"' in student_body(unit)


NUMBERS = DataTable(("time (min)", "temperature (°C)"), (("0", "-18"), ("4", "-2.5"), ("9", "12")))
WORDS = DataTable(("rock", "floats?"), (("pumice", "yes"), ("basalt", "no")))


@pytest.mark.parametrize("data", [NUMBERS, WORDS, replace(NUMBERS, drawn=False)], ids=["numbers", "words", "empty-axes"])
def test_data_always_stand_as_numbers(data: DataTable) -> None:
    """Whatever can be drawn of them, all data stand in a table, for students and for the teacher."""
    unit = rich(data)
    for body in (unit_body(unit), student_body(unit)):
        cells = re.findall(r"<td>(.*?)</td>", body)
        assert [cell for row in data.rows for cell in row] == [cell for cell in cells if cell in {c for row in data.rows for c in row}]
        assert all(f'<th scope="col">{name}</th>' in body for name in data.columns)


def test_a_table_that_is_not_drawn_is_not_folded() -> None:
    """Words have no graph, so their table stands open; a graph has its numbers in a fold below it."""
    assert "<details" not in student_body(rich(WORDS))
    assert 'class="plot"' not in student_body(rich(WORDS))
    assert re.search(r'</svg>\n<details class="fold"><summary>The numbers of the graph</summary>', student_body(rich(NUMBERS)))


def test_a_teacher_sees_the_points_that_students_draw() -> None:
    """Where students get empty axes, their card has no point and the teacher's page has all of them."""
    unit = rich(replace(NUMBERS, drawn=False))
    assert 'class="point"' not in student_body(unit)
    assert unit_body(unit).count('class="point"') == 3
    assert "students get empty axes" in unit_body(unit)


def test_a_line_at_zero_is_drawn_where_numbers_fall_below() -> None:
    """The axis of a column with numbers below 0 has a line at 0, and others have none."""
    assert student_body(rich(NUMBERS)).count('class="zero"') == 1
    assert 'class="zero"' not in student_body(department().units["float-or-sink"])
