"""One finding of the schema library, with what is needed to word it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from trivet.model.places import Path, Places
from trivet.model.problem import Problem, Severity
from trivet.reading.outline import example_of, part_at
from trivet.reading.where import words

FormAnswer = Callable[[Path, str, Any], Problem | None]
"""Asked for a value that should have a sentence form (path, name of the form, value); answers with the corrected line."""


@dataclass(frozen=True, slots=True)
class Fault:
    """`keyword` of the schema says `said`, and `value` at `path` does not hold to it; `rules` is the whole schema."""

    path: Path
    keyword: str
    said: Any
    value: Any
    schema: dict[str, Any]
    rules: dict[str, Any]
    places: Places
    form: FormAnswer | None = None

    @property
    def lead(self) -> str:
        """What stands before the value on its line: `goal: `, `- `, or nothing for the whole file."""
        if not self.path:
            return ""
        return "- " if isinstance(self.path[-1], int) else f"{self.path[-1]}: "

    @property
    def remedy(self) -> str:
        """What to write instead of this value."""
        return self.remedy_for(self.path, self.lead)

    def remedy_for(self, path: Path, lead: str) -> str:
        """Return what to write at `path`: the schema's own hint, else its first example."""
        part = part_at(self.rules, path)
        if "x-hint" in part:
            return str(part["x-hint"])
        # The whole file has no key to stand under.
        return f"write {lead}" + (example_of(part, self.rules) if lead else example_of(part, self.rules).removeprefix("and under it "))

    def at_value(self, code: str, what: str, remedy: str, *below: str | int) -> Problem:
        """Make a problem that points at the value, or at the one `below` it."""
        return Problem(code, Severity.ERROR, self.places.find(*self.path, *below), what, remedy, words(self.path))

    def at_key(self, code: str, what: str, remedy: str, *below: str | int) -> Problem:
        """Make a problem that points at the key of the value, or at the one `below` it."""
        return Problem(code, Severity.ERROR, self.places.key(*self.path, *below), what, remedy, words(self.path))


def shown(value: Any) -> str:
    """Return a value as the author would recognize it, at most 60 characters."""
    said = "true" if value is True else "false" if value is False else str(value)
    return said if len(said) <= 60 else said[:57] + "..."
