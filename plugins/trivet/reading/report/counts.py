"""Which problems are shown, and how many of each there are."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from trivet.model.problem import Problem, Severity, in_order

WORDS = {
    Severity.ERROR: ("error", "errors"),
    Severity.WARNING: ("warning", "warnings"),
    Severity.ADVICE: ("piece of advice", "pieces of advice"),
}


def shown(problems: Iterable[Problem], *, advice: bool) -> tuple[Problem, ...]:
    """Return the problems in the order of files, without advice unless it is asked for."""
    return tuple(problem for problem in in_order(list(problems)) if advice or problem.severity is not Severity.ADVICE)


def printable(text: str) -> str:
    """Return a text, such as the name of a file, with a sign in place of each character that would break a line or can't be written."""
    return "".join(each if each.isprintable() else "\ufffd" for each in text)


def tally(problems: Iterable[Problem]) -> dict[Severity, int]:
    """Return how many problems of each severity there are."""
    found = Counter(problem.severity for problem in in_order(list(problems)))
    return {severity: found[severity] for severity in Severity}


def counted(problems: Iterable[Problem], *, advice: bool = True) -> str:
    """Return the line that ends a report: "2 errors, 1 warning in 2 files"; advice that is not shown is named with the way to see it."""
    problems = tuple(problems)
    found = tally(problems)
    hidden = 0 if advice else found.pop(Severity.ADVICE)
    said = [f"{number} {WORDS[severity][number != 1]}" for severity, number in found.items() if number]
    files = len({problem.place.file for problem in shown(problems, advice=advice)})
    line = f"{', '.join(said)} in {files} {'file' if files == 1 else 'files'}" if said else "no problems"
    return f"{line} ({hidden} {WORDS[Severity.ADVICE][hidden != 1]} with --all)" if hidden else line
