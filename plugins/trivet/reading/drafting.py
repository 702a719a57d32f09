"""From a file with front matter to a draft: what stands under which key, before any form is read."""

from __future__ import annotations

from pathlib import Path

from trivet.model.places import Places
from trivet.model.problem import Place, Problem, Severity
from trivet.reading.draft import Draft
from trivet.reading.front import read_front
from trivet.reading.source import read_source

NO_KEYS = "write title:, question:, grades:, stations: and write-up: there, or copy a unit that trivet new unit NAME writes"


def read_draft(path: Path, file: str) -> tuple[Draft, list[Problem], dict[str, str]]:
    """Read a file with front matter as far as it can be read; `data` is {} where nothing is to be said about its keys."""
    source = read_source(path, file)
    if not source.readable:
        return Draft("", file, {}, Places(file), ()), list(source.problems), {}
    front = read_front(source.text, file)
    problems = [*source.problems, *front.problems]
    data = front.value if isinstance(front.value, dict) else {}
    if front.readable and not data and not problems:
        problems.append(Problem("no-keys", Severity.ERROR, Place(file), "nothing is written between the two lines ---", NO_KEYS))
    # Line 1 stands for the whole file.
    answered = frozenset(problem.place.line for problem in problems) - {1}
    lines = tuple(source.text.split("\n"))
    draft = Draft("", file, data, front.places, lines, front.body, front.body_line, answered=answered)
    return draft, problems, {file: source.text}
