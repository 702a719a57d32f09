"""`school/expectations.yml`: the department's few sentences on conduct at stations."""

from __future__ import annotations

from trivet.reading.school.builtin import EXPECTATIONS
from trivet.reading.school.sheet import Sheet


def read_expectations(sheet: Sheet | None) -> tuple[str, ...]:
    """Return the sentences in order, the built-in ones where there is no file."""
    return tuple(sheet.data["expectations"]) if sheet else EXPECTATIONS
