"""The guide's answers on how long a class can go are the ones that are worked out."""

from __future__ import annotations

import os
import re
from collections.abc import Sequence

import pytest

from tests.support.how_long import DRAWING, PAGE, SIZES, Row, drawing, page, row, table_line, teams_in_words
from trivet.planning.grouping.ledger import meetings
from trivet.planning.grouping.weeks import weeks
from trivet.planning.team_sizes import class_shape

AGAIN = "write it again: TRIVET_REFRESH=1 python -m pytest tests/planning/grouping/test_how_long.py"
QUICK = (18, 19, 21, 24, 27, 33, 36)
"""Sizes whose last unit takes no long proof: worked out whole in every test run."""

LINE = re.compile(r"^\| (\d+) \| ([^|]+) \| (\d+) \| (\d+) \| (?:(\d+) pairs have|(one) pair has) worked together; (.+) \|$", re.MULTILINE)


def written() -> list[Row]:
    """The rows as the page says them."""
    return [
        Row(
            int(students),
            tuple(sorted((size for group in class_shape(int(students)) for size in group), reverse=True)),
            int(new),
            int(ceiling),
            int(many or 1),
            said == "fewer is not possible",
        )
        for students, _, new, ceiling, many, _, said in LINE.findall(PAGE.read_text(encoding="utf-8"))
    ]


def test_page_and_drawing_say_the_same() -> None:
    """Page and drawing are exactly what is made from the same rows, one for each size from 18 to 40."""
    if os.environ.get("TRIVET_REFRESH"):
        rows: Sequence[Row] = [row(students) for students in SIZES]
        PAGE.write_text(page(rows), encoding="utf-8")
        DRAWING.write_text(drawing(rows), encoding="utf-8")
    found = written()
    assert [each.students for each in found] == list(SIZES)
    assert PAGE.read_text(encoding="utf-8") == page(found), AGAIN
    assert DRAWING.read_text(encoding="utf-8") == drawing(found), AGAIN


@pytest.mark.parametrize("students", QUICK)
def test_rows_are_worked_out(students: int) -> None:
    """A row of the page is the one that the computation gives, proof included."""
    assert table_line(row(students)) in PAGE.read_text(encoding="utf-8"), AGAIN


@pytest.mark.parametrize("students", [size for size in SIZES if size not in QUICK])
def test_as_many_new_units_can_be_had(students: int) -> None:
    """For the other sizes there are as many units as the page says, counted pair by pair, in which nobody meets again."""
    said = next(each for each in written() if each.students == students)
    met = [two for unit in weeks(students, units=said.new) for two in meetings(unit.teams)]
    assert len(met) == len(set(met)) == said.new * sum(size * (size - 1) // 2 for size in said.teams)
    assert said.new <= said.ceiling


def test_teams_are_said_as_people_say_them() -> None:
    """Sizes are counted, the larger first."""
    assert teams_in_words((4, 4, 3)) == "2 fours and 1 three"
