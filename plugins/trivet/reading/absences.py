"""Read who was absent when: `absences-<class>.csv` in the private folder, with columns date and seat. Only commands may ask."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from pathlib import Path

from trivet.model.problem import Problem, in_order
from trivet.model.school import SchoolClass
from trivet.reading.forms.dates import date_of
from trivet.reading.forms.unreadable import Unreadable
from trivet.reading.source import read_source
from trivet.reading.table import Cell, Findings, rows

Absences = Mapping[date, frozenset[int]]
COLUMNS = ("date", "seat")


def read_absences(folder: Path, school_class: SchoolClass) -> tuple[Absences, tuple[Problem, ...]]:
    """Return the seats absent on each date, {} where there is no list, and what is wrong in it; never raises."""
    path = folder / f"absences-{school_class.id}.csv"
    if not path.exists() and not path.is_symlink():
        return {}, ()
    source = read_source(path, path.as_posix())
    return ({}, source.problems) if source.problems else absences_of(source.text, path.as_posix(), school_class)


def absences_of(text: str, file: str, school_class: SchoolClass) -> tuple[Absences, tuple[Problem, ...]]:
    """Return the seats absent on each date from the text of a list; a line that can't be read is left out and told."""
    table = rows(text) or [[Cell("", 1, 1, 1)]]
    found = Findings(file)
    titles = {cell.text.casefold(): index for index, cell in enumerate(table[0])}
    if any(column not in titles for column in COLUMNS):
        found.error("missing-column", table[0][0], "the first line needs two titles", "write date,seat in the first line")
        return {}, in_order(found.problems)
    absent: dict[date, set[int]] = {}
    for row in table[1:]:
        cells = [row[titles[column]] if titles[column] < len(row) else Cell("", row[0].line, 1, 1) for column in COLUMNS]
        day, seat = date_of(cells[0].text), _seat(cells[1].text, school_class)
        if isinstance(day, Unreadable):
            found.error("unreadable-date", cells[0], "no date stands here", "write the date as year-month-day, such as 2026-11-30", "date")
        if seat is None:
            found.error(
                "unknown-seat", cells[1], f"no number of class {school_class.id} stands here", "write a class number, such as 7", "seat"
            )
        if not isinstance(day, Unreadable) and seat is not None:
            absent.setdefault(day, set()).add(seat)
    return {day: frozenset(absent[day]) for day in sorted(absent)}, in_order(found.problems)


def _seat(text: str, school_class: SchoolClass) -> int | None:
    digits = text.removeprefix(f"{school_class.id}-")
    if not (digits.isascii() and digits.isdigit() and len(digits) <= 2):
        return None
    return int(digits) if int(digits) in (*school_class.seats, *school_class.gone) else None
