"""What must never stand on a page."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from tests.pages.scenario import ANSWERS, BUILD, department, pages, plans
from trivet.pages.site import make_site

STUDENT = ("units/float-or-sink/student/", "units/float-or-sink/student/es/")


@pytest.mark.parametrize("address", STUDENT)
def test_no_answer_stands_on_a_student_page(address: str) -> None:
    """Answers, what to listen for, expected values, misconceptions and variables that are not printed stay with the teacher."""
    body = pages()[address].body
    assert [answer for answer in ANSWERS if answer in body] == []


def test_the_answers_are_on_the_teachers_page() -> None:
    """The texts looked for above are real: each stands on the unit's own page."""
    body = pages()["units/float-or-sink/"].body
    assert [answer for answer in ANSWERS if answer not in body] == []


def test_no_student_number_stands_where_groups_are_not_public() -> None:
    """Only the lesson sheet of a drawn plan knows class numbers."""
    for address, page in pages().items():
        found = re.findall(r"\b[a-z0-9]+-\d\d\b(?!-)", re.sub(r"\d{4}-\d\d-\d\d", "", re.sub(r'(?:class|d)="[^"]*"', "", page.body)))
        assert bool(found) == (address == "lesson/p1/float-or-sink/"), (address, found)


@pytest.mark.parametrize("way", ["mixed", "usual", "auto"])
def test_no_page_shows_how_groups_are_made(way: str) -> None:
    """The same unit with another way of grouping gives the same pages, to the byte."""
    made = department()
    units = {slug: replace(unit, group_by=way) for slug, unit in made.units.items()}
    other = make_site(replace(made, units=units), plans(made), (), BUILD, {})
    assert other == make_site(made, plans(made), (), BUILD, {})
    assert not [page.path for page in other.pages if re.search(r"\b(leveled|mixed ability|group by)\b", page.body)]
