"""Sentences that fit their pattern make sense too."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.reading.unit_files import answers, draft_of
from trivet.reading.checks.sentences import cells_of, check

CELL = st.text(alphabet="ab 1.", max_size=4).map(str.strip)


@pytest.mark.parametrize(
    ("key", "value", "remedy"),
    [
        ("grades", "8-6", "write grades: 6-8"),
        ("grades", "6-8", None),
        ("grades", "7", None),
        ("round", "25-20 min", "write round: 20-25 min"),
        ("round", "20-25 min", None),
        ("round", "25 min", None),
    ],
)
def test_the_lower_one_comes_first(key: str, value: str, remedy: str | None) -> None:
    """Grades and the length of a round that are the wrong way round are turned; those in order and single ones pass."""
    assert [said for _, said in answers(check(draft_of({key: value})))] == ([remedy] if remedy else [])


@given(st.lists(CELL, min_size=1, max_size=4), st.lists(CELL, min_size=2, max_size=4).filter(any))
def test_a_row_has_a_value_for_each_column(columns: list[str], row: list[str]) -> None:
    """A row of two or more values is answered exactly where it has not one for each column."""
    named = [f"column {place}" for place, _ in enumerate(columns)]
    data = {"stations": {"teacher-led": {"data": {"columns": ", ".join(named), "rows": [", ".join(row)]}}}}
    remedy = f"write one value for each of {', '.join(named)}"
    assert answers(check(draft_of(data))) == ([] if len(row) == len(columns) else [("row-length", remedy)])


@given(st.lists(CELL, min_size=1, max_size=5))
def test_cells_come_back(cells: list[str]) -> None:
    """Cells that are joined by commas are read as they were."""
    assert cells_of(" ,  ".join(cells)) == tuple(cells)
