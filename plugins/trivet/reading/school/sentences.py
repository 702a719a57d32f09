"""Sentence forms that school files use, with the code and the place of what they can't read."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from trivet.model.places import Path, Places
from trivet.model.problem import Problem, Severity
from trivet.reading import forms
from trivet.reading.fault import FormAnswer
from trivet.reading.forms import Unreadable
from trivet.reading.school.sheet import Sheet
from trivet.reading.where import words

FORMS: dict[str, tuple[str, Callable[[object], Any]]] = {
    "date": ("date-unreadable", forms.date_of),
    "days": ("days-unreadable", forms.date_range),
    "term": ("term-unreadable", forms.term),
    "times": ("times-unreadable", forms.clock_range),
    "numbers": ("numbers-unreadable", forms.numbers),
    "late": ("late-unreadable", forms.late),
    "gap": ("gap-unreadable", forms.gap),
    "done": ("done-unreadable", forms.done),
    "half": ("half-unreadable", forms.half_done),
    "order": ("order-unreadable", forms.order),
    "amount": ("amount-unreadable", forms.amount),
    "area": ("area-unreadable", forms.area),
    "share": ("share-unreadable", forms.percent),
}
"""By the name that stands as `x-form` in the schemas: the code of its problem, and its reader."""


def form_answer(places: Places) -> FormAnswer:
    """Return what `validate` asks for a value that should have a sentence form, for a file with these places."""

    def answer(path: Path, form: str, value: Any) -> Problem | None:
        read = FORMS[form][1](value)
        return _problem(form, path, value, places, read) if isinstance(read, Unreadable) else None

    return answer


def read_sentence(sheet: Sheet, path: Path, form: str, value: Any, problems: list[Problem]) -> Any:
    """Return what `value` at `path` says in this form; None, and a problem more, where it can't be so (30 February)."""
    read = FORMS[form][1](value)
    if isinstance(read, Unreadable):
        problems.append(_problem(form, path, value, sheet.places, read))
        return None
    return read


def read_key(sheet: Sheet, path: Path, form: str, problems: list[Problem]) -> Any:
    """Return what the key at the end of `path` says in this form, as `read_sentence` does for a value."""
    read = FORMS[form][1](path[-1])
    if isinstance(read, Unreadable):
        problems.append(Problem(FORMS[form][0], Severity.ERROR, sheet.places.key(*path), read.what, read.remedy, words(path)))
        return None
    return read


def _problem(form: str, path: Path, value: Any, places: Places, said: Unreadable) -> Problem:
    remedy = said.remedy
    # Where one of several is corrected, the line as a whole would lose the others.
    whole = form != "late" or "," not in str(value)
    if said.corrected and whole and remedy.startswith("write "):
        lead = f"{path[-1]}: " if isinstance(path[-1], str) else "- "
        remedy = f"write {lead}{remedy.removeprefix('write ')}"
    return Problem(FORMS[form][0], Severity.ERROR, places.find(*path), said.what, remedy, words(path))
