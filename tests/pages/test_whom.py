"""Who has worked with whom: the picture, the list and the sentences say the same, from public kept groups alone."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from tests.pages.scenario import BUILD, department, pages, plans
from trivet.model.department import Department
from trivet.pages.quality import sentence
from trivet.pages.site import make_site
from trivet.pages.whom_drawing import CELL, FROM, field
from trivet.pages.words import load_words
from trivet.planning.grouping.ledger import ledger_of

WORDS = load_words()


def marks(path: str) -> set[tuple[int, int]]:
    """The cells that a path marks, as numbers of column and row from 1."""
    return {((int(x) - FROM) // CELL + 1, (int(y) - FROM) // CELL + 1) for x, y in re.findall(r"M(\d+) (\d+)", path)}


def test_every_meeting_is_marked_on_both_sides() -> None:
    """A pair stands at both crossings: once a dot, twice a dot in a square, more often a full square; seats that left are not drawn."""
    drawn = field((1, 2, 3, 5), {(1, 2): 1, (2, 3): 2, (1, 5): 4, (4, 5): 1})
    assert marks(drawn.once) == {(1, 2), (2, 1), (2, 3), (3, 2)}
    assert marks(drawn.twice) == {(2, 3), (3, 2)}
    assert marks(drawn.often) == {(1, 4), (4, 1)}


@pytest.mark.parametrize("students", [1, 12, 31, 40])
def test_numbers_can_be_read_on_a_phone(students: int) -> None:
    """Scaled to the width of a phone the numbers stay at 13 pixels or more, and every fifth is there."""
    drawn = field(tuple(range(1, students + 1)), {})
    assert drawn.font * 340 >= 13 * drawn.size
    assert [each.text for each in drawn.numbers] == [f"{seat:02d}" for seat in range(1, students + 1) if seat == 1 or seat % 5 == 0]


def test_list_and_picture_say_the_same() -> None:
    """The list under the picture names for each student exactly those who were teammates in the kept groups."""
    page = pages()["whom/p1/"].body
    met = ledger_of(lock.groups for (class_id, _), lock in department().locks.items() if class_id == "p1").teams
    listed = dict(re.findall(r"<div><dt>(\d\d)</dt><dd>([^<]*)</dd></div>", page))
    assert set(listed) == {f"{seat:02d}" for seat in department().school.classes["p1"].seats}
    for number, others in listed.items():
        mine = {low + high - int(number) for low, high in met if int(number) in (low, high)}
        assert {int(each) for each in re.findall(r"\b\d\d\b", others)} == mine


def test_only_classes_with_kept_groups_have_the_page_and_it_is_linked_from_their_sheets() -> None:
    """A class whose groups are leveled or not drawn has no page and no link; the two look alike."""
    found = {path for path in pages() if path.startswith("whom/")}
    assert found == {"whom/p1/"}
    linked = {path for path, page in pages().items() if "whom/" in page.body and not path.startswith("whom/")}
    assert linked == {"lesson/p1/float-or-sink/"}


def test_a_proof_stands_with_its_numbers() -> None:
    """Where a minimum above 0 is proved, the page gives the integers and how to count again; else it claims nothing."""
    of = department()
    lock = of.locks["p1", "float-or-sink"]
    numbers = sorted(number for group in lock.groups.values() for number in group.students)
    proved = replace(lock, repeats=3, proved_minimum=3, certificate=dict.fromkeys(numbers, 1250))
    page = _page(replace(of, locks={**of.locks, ("p1", "float-or-sink"): proved}))
    assert "3 pairs have worked together before; fewer is not possible." in page
    assert "Why no groups could have fewer than 3" in page
    assert page.count("<dd>1250</dd>") == len(numbers)
    assert "trivet groups --check school/groups/p1/float-or-sink.yml" in page
    plain = pages()["whom/p1/"].body
    assert "Why no groups could" not in plain and "not possible" not in plain


def _page(of: Department) -> str:
    site = make_site(of, plans(of), (), BUILD, {})
    return next(page.body for page in site.pages if page.path == "whom/p1/")


def test_sentences() -> None:
    """The sentence counts pairs, says how often in all where one met more than once, and claims only what is proved."""
    assert sentence(0, 0, 0, WORDS).startswith("All teammates are new")
    assert sentence(3, 3, 3, WORDS) == "3 pairs have worked together before; fewer is not possible."
    assert sentence(4, 2, 1, WORDS) == "2 pairs have worked together before, 4 times in all; no arrangement has fewer than 1."
    assert sentence(1, 1, 0, WORDS) == "1 pair has worked together before."
    assert sentence(1, 1, None, WORDS) == "1 pair has worked together before."
