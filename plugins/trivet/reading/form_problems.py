"""Turn what a sentence form answers into a problem at the exact column of the faulty part."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from trivet.model.places import Path
from trivet.model.problem import Problem
from trivet.reading import forms
from trivet.reading.draft import Draft, Said
from trivet.reading.forms import Unreadable

FORMS: dict[str, tuple[str, Callable[[object], Any]]] = {
    "step": ("step-unreadable", forms.step),
    "material": ("material-unreadable", forms.material),
    "minutes": ("minutes-unreadable", forms.minutes),
    "seconds": ("seconds-unreadable", forms.seconds),
    "grades": ("grades-unreadable", forms.grades),
    "share": ("share-unreadable", forms.percent),
    "round": ("round-unreadable", forms.round_bounds),
}
"""By the name that stands as `x-form` in the schema: the code of its problem, and its reader."""

OPENING, CLOSING = "([{（", ")]}）"


def form_problem(draft: Draft, path: Path, form: str, value: Any) -> Problem | None:
    """Return the problem with a value that should have the named form, None where it has."""
    code, read = FORMS[form]
    answer = read(value)
    return problem_of(draft, path, code, answer) if isinstance(answer, Unreadable) else None


def problem_of(draft: Draft, path: Path, code: str, answer: Unreadable) -> Problem:
    """Return the problem that a form's answer means for the value at `path`."""
    said = draft.text(*path)
    remedy = answer.remedy
    if isinstance(path[-1], str) and remedy == f"write {answer.corrected}":
        remedy = f"write {path[-1]}: {answer.corrected}"
    if said is None:
        return draft.error(code, path, answer.what, remedy)
    return draft.error(code, _part(draft, said, answer.what), answer.what, remedy)


def _part(draft: Draft, said: Said, what: str) -> Said:
    """The part of a text that the answer quotes at its end, without its brackets: there the reader's eye should land."""
    part = what.rpartition(": ")[2]
    at = said.text.rfind(part) if ": " in what else -1
    if at < 0 or part == said.text:
        return said
    inner = part.strip(OPENING + CLOSING)
    at += part.find(inner)
    return Said(said.text, said.path, draft.spot(said, at, len(inner)))
