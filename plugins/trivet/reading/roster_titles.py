"""Which column of a roster is which? A title that is not known is never repeated: without a title line it would be a name."""

from __future__ import annotations

from trivet.reading.near import nearest
from trivet.reading.table import Cell, Findings

COLUMNS = ("seat", "name", "level", "table", "rules", "needs", "avoid", "agreement", "adult")
MEANT = {
    "number": "seat",
    "class number": "seat",
    "no": "seat",
    "no.": "seat",
    "student": "name",
    "score": "level",
    "group": "table",
    "seats apart": "rules",
    "keep apart": "rules",
    "apart": "rules",
    "together": "rules",
    "allergy": "avoid",
    "allergies": "avoid",
    "support": "needs",
    "signed": "agreement",
}
"""What people call a column where no slip of a letter would explain it."""


def titles_of(row: list[Cell], found: Findings) -> dict[str, int]:
    """Return the position of each known column in the first line."""
    columns: dict[str, int] = {}
    for index, cell in enumerate(row):
        title = " ".join(cell.text.casefold().split())
        if title in columns:
            found.error("column-twice", cell, "this column stands here twice", "keep one of the two", title)
        elif title in COLUMNS:
            columns[title] = index
        elif title:
            _unknown(cell, title, index, found)
    if "seat" not in columns:
        remedy = f"write the titles in the first line: {','.join(COLUMNS)}; only seat must be there"
        found.error("missing-column", row[0], "no column of the first line is called seat", remedy)
    return columns


def _unknown(cell: Cell, title: str, index: int, found: Findings) -> None:
    what = f"the title of column {index + 1} is not known"
    near = MEANT.get(title) or nearest(title, COLUMNS)
    if near:
        found.error("unknown-column", cell, what, f"write {near} if that is meant, else leave the column out")
    else:
        found.warning(
            "unknown-column", cell, f"{what}, so nothing in it is read", f"write one of {', '.join(COLUMNS)}, or leave the column out"
        )
