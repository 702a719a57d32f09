"""Do sentences that fit their pattern make sense: the lower grade first, one value for each column?"""

from __future__ import annotations

from collections.abc import Iterator

from trivet.model.problem import Problem
from trivet.reading.draft import Draft
from trivet.reading.form_problems import form_problem

DATA = ("stations", "teacher-led", "data")


def check(draft: Draft) -> Iterator[Problem]:
    """Yield an error for each sentence whose form is right and whose meaning is not."""
    for key in ("grades", "round"):
        typed = draft.value(key)
        if isinstance(typed, str) and (problem := form_problem(draft, (key,), key, typed)):
            yield problem
    columns = [entry.text for entry in draft.listed(*DATA, "columns")]
    for item in draft.items(*DATA, "rows"):
        row = draft.text(*item)
        cells = cells_of(row.text) if row else ()
        if row and columns and len(cells) > 1 and len(cells) != len(columns):
            what = f"this row has {len(cells)} values, and there are {len(columns)} columns"
            yield draft.error("row-length", row, what, f"write one value for each of {', '.join(columns)}")


def cells_of(row: str) -> tuple[str, ...]:
    """Return the values of a row of data."""
    return tuple(part.strip() for part in row.split(","))
