from __future__ import annotations

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.reading.table import rows, separator_of

TEXT = st.text(st.characters(codec="ascii", categories=["L", "N", "P", "S", "Zs"], include_characters='\n",;'), max_size=8)


def texts(text: str) -> list[list[str]]:
    """The texts of all cells."""
    return [[cell.text for cell in row] for row in rows(text)]


@given(st.lists(st.lists(TEXT, min_size=2, max_size=4), min_size=1, max_size=5))
def test_what_the_standard_library_writes_is_read_back(table: list[list[str]]) -> None:
    """Cells with commas, quotes and line ends come back as `csv` wrote them (RFC 4180), but for outer blanks and empty rows."""
    written = io.StringIO()
    csv.writer(written, quoting=csv.QUOTE_ALL, lineterminator="\n").writerows([["seat", "rules"], *table])
    stripped = [[cell.strip() for cell in row] for row in table]
    assert texts(written.getvalue())[1:] == [row for row in stripped if any(row)]


def test_each_cell_knows_its_line_and_column() -> None:
    """Columns count characters from 1, also behind a quoted cell with a comma and below one with a line end."""
    table = rows('seat,name,level\n1,"a, b",3\n2,"c\nd",4\n3,e,5\n')
    assert [(cell.line, cell.column) for cell in table[1]] == [(2, 1), (2, 3), (2, 10)]
    assert [(cell.line, cell.column) for cell in table[2]] == [(3, 1), (3, 3), (4, 4)]
    assert [(cell.line, cell.column) for cell in table[3]] == [(5, 1), (5, 3), (5, 5)]


@pytest.mark.parametrize("separator", [",", ";", "\t"])
def test_the_first_line_tells_the_separator(separator: str) -> None:
    """A spreadsheet of another country writes semicolons, and a copied range has tabs."""
    text = f"seat{separator}rules{separator}level\n1{separator}x{separator}2\n"
    assert separator_of(text) == separator
    assert texts(text) == [["seat", "rules", "level"], ["1", "x", "2"]]


def test_empty_rows_are_left_out_and_a_last_line_needs_no_end() -> None:
    """Rows of commas alone, as spreadsheets leave them, are no students."""
    assert texts("seat,level\n\n1,2\n,\n 2 , 3 ") == [["seat", "level"], ["1", "2"], ["2", "3"]]


def test_a_quote_that_does_not_close_is_told() -> None:
    """The rest of the file is in that cell, and it says so."""
    assert [cell.closed for cell in rows('seat,name\n1,"a\n2,b\n')[1]] == [True, False]
