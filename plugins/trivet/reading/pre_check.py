"""Read what students scored in pre-checks: `pre-check-<class>.csv` in the private folder, with columns unit, seat and score.

Only commands may ask: what is published never hangs on a score.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from pathlib import Path

from trivet.model.problem import Problem, in_order
from trivet.model.school import SchoolClass
from trivet.reading.near import nearest
from trivet.reading.source import read_source
from trivet.reading.table import Cell, Findings, rows

Scores = Mapping[str, Mapping[int, int]]
"""Unit to seat to score, in percent."""

COLUMNS = ("unit", "seat", "score")
SHARE = re.compile(r"([0-9]{1,3})\s*(?:/|of)\s*([0-9]{1,3})")
PERCENT = re.compile(r"([0-9]{1,3})\s*%?")
WHOLE = 100


def read_pre_checks(folder: Path, school_class: SchoolClass, units: Collection[str]) -> tuple[Scores, tuple[Problem, ...]]:
    """Return the scores of each unit, {} where there is no list, and what is wrong in it; never raises."""
    path = folder / f"pre-check-{school_class.id}.csv"
    if not path.exists() and not path.is_symlink():
        return {}, ()
    source = read_source(path, path.as_posix())
    return ({}, source.problems) if source.problems else pre_checks_of(source.text, path.as_posix(), school_class, units)


def pre_checks_of(text: str, file: str, school_class: SchoolClass, units: Collection[str]) -> tuple[Scores, tuple[Problem, ...]]:
    """Return the scores in the text of a list. Empty scores are those who did not take it; other lines that can't be read are told."""
    table = rows(text) or [[Cell("", 1, 1, 1)]]
    found = Findings(file)
    titles = {cell.text.casefold(): index for index, cell in enumerate(table[0])}
    if any(column not in titles for column in COLUMNS):
        found.error("missing-column", table[0][0], "the first line needs three titles", "write unit,seat,score in the first line")
        return {}, in_order(found.problems)
    scores: dict[str, dict[int, int]] = {}
    for row in table[1:]:
        unit, seat, score = (row[titles[column]] if titles[column] < len(row) else Cell("", row[0].line, 1, 1) for column in COLUMNS)
        number, percent = _seat(seat, school_class, found), _percent(score, found)
        if unit.text not in units:
            near = nearest(unit.text, units)
            found.error(
                "unknown-unit", unit, "no unit of this name is there", f"write {near or 'the name of its folder under units/'}", "unit"
            )
        elif number is not None and number in scores.get(unit.text, {}):
            found.error("seat-twice", seat, "this number has a score for this unit already", "keep one of the two lines", "seat")
        elif number is not None and percent is not None:
            scores.setdefault(unit.text, {})[number] = percent
    return scores, in_order(found.problems)


def _seat(cell: Cell, school_class: SchoolClass, found: Findings) -> int | None:
    digits = cell.text.removeprefix(f"{school_class.id}-")
    if digits.isascii() and digits.isdigit() and len(digits) <= 2 and int(digits) in (*school_class.seats, *school_class.gone):
        return int(digits)
    found.error("unknown-seat", cell, f"no number of class {school_class.id} stands here", "write a class number, such as 7", "seat")
    return None


def _percent(cell: Cell, found: Findings) -> int | None:
    """Return a score in whole percent, rounded down; None where it is empty or can't be read."""
    share, percent = SHARE.fullmatch(cell.text), PERCENT.fullmatch(cell.text)
    if share is not None and 0 < int(share[2]) >= int(share[1]):
        return WHOLE * int(share[1]) // int(share[2])
    if percent is not None and int(percent[1]) <= WHOLE:
        return int(percent[1])
    if cell.text:
        found.error("unreadable-score", cell, "no score stands here", "write a share such as 4/5, or percent from 0 to 100", "score")
    return None
