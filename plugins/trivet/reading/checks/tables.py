"""Does a table in Markdown carry names of students? What once stood in git stays in its history."""

from __future__ import annotations

from collections.abc import Iterator

from trivet.model.problem import Place, Problem, Severity
from trivet.reading.prose import table_columns
from trivet.reading.school.checks.names import REMEDY, is_name_word


def check(file: str, text: str, first_line: int = 1) -> Iterator[Problem]:
    """Yield an error for each column of a table that is called name or the like; a column of numbers counts people and is let be."""
    for column in table_columns(text, first_line):
        title = column.title.text.strip("*_` ")
        counts = column.cells and all(cell[:1].isdigit() or not cell.strip("-– ") for cell in column.cells)
        if is_name_word(title) and not counts:
            place = Place(file, column.title.line, column.title.column, len(column.title.text))
            remedy = f"{REMEDY}; where it names things, call the column after them (solid, planet)"
            yield Problem("student-names", Severity.ERROR, place, f'a column is called "{title}"', remedy)
