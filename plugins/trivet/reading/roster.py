"""Read a class's private list. A problem tells the line, the column and its title, and never what stands there.

Only commands may ask: what is published never hangs on a roster.
"""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from trivet.model.problem import Problem, Severity, in_order
from trivet.model.roster import Roster, Student
from trivet.model.school import SchoolClass
from trivet.reading.pair_rules import Told, contradictions, is_fixed, rules_of
from trivet.reading.roster_titles import titles_of
from trivet.reading.source import read_source
from trivet.reading.table import Cell, Findings, rows

YES_NO = {"": None, "yes": True, "y": True, "x": True, "no": False, "n": False}
LEVEL_MOST = 100


def read_roster(folder: Path, school_class: SchoolClass) -> tuple[Roster | None, tuple[Problem, ...]]:
    """Return the roster of a class from the private folder, None where there is none or it holds an error; never raises."""
    path = folder / f"roster-{school_class.id}.csv"
    if not path.exists() and not path.is_symlink():
        return None, ()
    file = path.as_posix()
    source = read_source(path, file)
    if source.problems:
        return None, tuple(_impersonal(problem) for problem in source.problems)
    return roster_of(source.text, file, school_class)


def roster_of(text: str, file: str, school_class: SchoolClass) -> tuple[Roster | None, tuple[Problem, ...]]:
    """Return the roster that a text holds. Columns may stand in any order, and all but `seat` may be missing."""
    table = rows(text) or [[Cell("", 1, 1, 1)]]
    found = Findings(file)
    titles = titles_of(table[0], found)
    students: dict[int, Student] = {}
    told: list[Told] = []
    lines: dict[int, int] = {}
    for row in table[1:] if "seat" in titles else []:
        cells = _by_title(row, titles, len(table[0]), found)
        seat = _seat(cells.get("seat", row[0]), school_class, lines, found)
        student = _student(seat or 0, cells, found)
        rules = rules_of(seat, cells.get("rules"), school_class, found)
        if seat is not None:
            students[seat] = student
            told += rules
    if "seat" in titles:
        _missing(students, school_class, table[0][0], found)
        contradictions(told, found)
    problems = in_order(found.problems)
    if any(problem.severity is Severity.ERROR for problem in problems):
        return None, problems
    kept = tuple(students[seat] for seat in sorted(students))
    return Roster(class_id=school_class.id, students=kept, rules=tuple(sorted({rule for rule, _ in told}))), problems


def _impersonal(problem: Problem) -> Problem:
    """Word a problem of the file itself anew where it would show a character of a name."""
    if problem.code != "file-not-utf8":
        return problem
    what = "a letter of this line is not saved as UTF-8"
    return Problem(problem.code, problem.severity, problem.place, what, "save the list as CSV UTF-8 (in a spreadsheet: Save As)")


def _by_title(row: list[Cell], titles: Mapping[str, int], width: int, found: Findings) -> dict[str, Cell]:
    for cell in row:
        if not cell.closed:
            found.error("quote-not-closed", cell, "a quote opens here and does not close", 'write " at the end of the cell')
    if any(cell.text for cell in row[width:]):
        remedy = 'write " before and after a cell that has a comma in it'
        found.error("too-many-cells", row[width], "this line has more cells than the first line has titles", remedy)
    return {title: row[index] for title, index in titles.items() if index < len(row)}


def _seat(cell: Cell, school_class: SchoolClass, lines: dict[int, int], found: Findings) -> int | None:
    text = cell.text.removeprefix(f"{school_class.id}-")
    if not (text.isascii() and text.isdigit() and 1 <= int(text) <= 99):
        found.error("unreadable-seat", cell, "no class number stands here", "write a number from 1 to 99, such as 7", "seat")
        return None
    seat = int(text)
    if seat in lines:
        found.error("seat-twice", cell, f"this number stands on line {lines[seat]} too", "keep one of the two lines", "seat")
        return None
    lines[seat] = cell.line
    if seat in school_class.gone:
        what = "the student with this number has left the class"
        found.warning("seat-gone", cell, what, f"take this line out, or take the number out of `gone` of {school_class.id}", "seat")
        return None
    if seat not in school_class.seats:
        remedy = f"mend the number, or add it to `numbers` of {school_class.id} in school/classes.yml"
        found.error("unknown-seat", cell, f"this is no number of class {school_class.id}", remedy, "seat")
        return None
    return seat


def _student(seat: int, cells: Mapping[str, Cell], found: Findings) -> Student:
    def text(title: str) -> str:
        return cells[title].text if title in cells else ""

    return Student(
        seat=seat,
        name=text("name"),
        level=_level(cells.get("level"), found),
        table=text("table"),
        needs=text("needs"),
        avoid=text("avoid"),
        agreement=_yes_or_no(cells.get("agreement"), "agreement", found),
        adult=_yes_or_no(cells.get("adult"), "adult", found) or False,
        fixed=is_fixed(cells.get("rules")),
    )


def _level(cell: Cell | None, found: Findings) -> int | None:
    if cell is None or not cell.text:
        return None
    remedy = "write a level from 1 to 4 or a score from 0 to 100, whole, or leave it empty"
    if not (cell.text.isascii() and cell.text.isdigit()):
        found.error("unreadable-level", cell, "no whole number stands here", remedy, "level")
        return None
    if len(cell.text) > 3 or int(cell.text) > LEVEL_MOST:
        found.error("level-out-of-range", cell, "this is more than a level or a score can be", remedy, "level")
        return None
    return int(cell.text)


def _yes_or_no(cell: Cell | None, title: str, found: Findings) -> bool | None:
    said = cell.text.casefold() if cell else ""
    if cell and said not in YES_NO:
        found.error("not-yes-or-no", cell, "neither yes nor no stands here", "write yes, no, or nothing", title)
    return YES_NO.get(said)


def _missing(students: Mapping[int, Student], school_class: SchoolClass, corner: Cell, found: Findings) -> None:
    missing = sum(seat not in students for seat in school_class.seats)
    if missing and not found.problems:
        said = "1 number of the class has" if missing == 1 else f"{missing} numbers of the class have"
        found.warning("seats-missing", corner, f"{said} no line here", "add a line for each, empty but for the seat where nothing is known")
