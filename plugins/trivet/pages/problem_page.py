"""What is wrong in a file, in the live preview: the word, the place, the line to write, three lines of the source."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from trivet.model.department import Department
from trivet.model.page import Page
from trivet.model.problem import Problem, Severity, in_order
from trivet.pages.links import HOME, unit_address
from trivet.pages.render import render
from trivet.pages.words import Words

_UNIT_FILE = re.compile(r"units/([a-z][a-z0-9-]{1,39})/")
WRITE = "write "
"""How a remedy begins that gives the corrected line."""


@dataclass(frozen=True, slots=True)
class SourceLine:
    """A line of the file: its number and its text, with the part that is wrong in the middle where it is this line."""

    number: int
    before: str
    wrong: str = ""
    after: str = ""


@dataclass(frozen=True, slots=True)
class ProblemView:
    """A problem as the page shows it. `write` is the corrected line, `remedy` what to do where there is no such line."""

    severity: str
    place: str
    says: str
    write: str
    remedy: str
    lines: tuple[SourceLine, ...]


def problem_pages(department: Department, problems: Sequence[Problem], sources: Mapping[str, str], words: Words) -> tuple[Page, ...]:
    """Return a page for each unit that could not be read, in the place of its own."""
    found: dict[str, list[Problem]] = {}
    for problem in problems:
        match = _UNIT_FILE.match(problem.place.file)
        if match and match[1] not in department.units:
            found.setdefault(match[1], []).append(problem)
    broken = {slug: some for slug, some in found.items() if any(p.severity is Severity.ERROR for p in some)}
    return tuple(_page(unit_address(slug), slug, broken[slug], sources, words) for slug in sorted(broken))


def school_problem_page(problems: Sequence[Problem], sources: Mapping[str, str], words: Words) -> Page:
    """Return the home page of a department whose own files could not be read."""
    return _page(HOME, words("problem.school"), problems, sources, words)


def _page(address: str, what: str, problems: Sequence[Problem], sources: Mapping[str, str], words: Words) -> Page:
    ordered = in_order(list(problems))
    counts = {severity: sum(p.severity is severity for p in ordered) for severity in Severity}
    title = words(
        "problem.title",
        errors=_counted("errors", counts[Severity.ERROR], words),
        warnings=_counted("warnings", counts[Severity.WARNING], words),
        advice=_counted("advice", counts[Severity.ADVICE], words),
        what=what,
    )
    body = render("problem.html", words, title=title, problems=tuple(_view(p, sources, words) for p in ordered))
    return Page(address, {"title": title, "kind": "problem", "lang": words.language, "search": False}, body)


def _counted(kind: str, count: int, words: Words) -> str:
    return words(f"problem.{kind}", n=count) if count else words(f"problem.no_{kind}")


def _view(problem: Problem, sources: Mapping[str, str], words: Words) -> ProblemView:
    place = problem.place
    says = f"{problem.where}: {problem.what}" if problem.where else problem.what
    corrected = problem.remedy.startswith(WRITE)
    return ProblemView(
        severity=problem.severity.value,
        place=f"{place.file}:{place.line}:{place.column}",
        says=says[:1].upper() + says[1:],
        write=problem.remedy.removeprefix(WRITE) if corrected else "",
        remedy="" if corrected else problem.remedy,
        lines=source_lines(problem, sources.get(place.file, "")),
    )


def source_lines(problem: Problem, source: str) -> tuple[SourceLine, ...]:
    """Return the line of the problem between its neighbors, () where the file is not at hand."""
    lines = source.splitlines()
    number, start = problem.place.line, problem.place.column - 1
    if not 1 <= number <= len(lines):
        return ()
    found = []
    for each in range(max(1, number - 1), min(len(lines), number + 1) + 1):
        text = lines[each - 1]
        if each == number:
            end = min(len(text), start + problem.place.length)
            found.append(SourceLine(each, text[:start], text[start:end], text[end:]))
        else:
            found.append(SourceLine(each, text))
    return tuple(found)
