"""What is wrong in a file, where, and what to write instead."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Severity(StrEnum):
    """How much a problem matters: only errors stop a build."""

    ERROR = "error"
    WARNING = "warning"
    ADVICE = "advice"


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """A spot in a file: path from the project's root with `/`, line and column from 1, length in characters."""

    file: str
    line: int = 1
    column: int = 1
    length: int = 1


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that is wrong, as a value that any reporter can print.

    `where` says it in the reader's words ("hands-on, step 1"); `what` says what is wrong;
    `remedy` says what to do, and starts with "write " where a corrected line can be given.
    """

    code: str
    severity: Severity
    place: Place
    what: str
    remedy: str = ""
    where: str = ""

    @property
    def sentence(self) -> str:
        """Where, what and remedy in one line, without the file."""
        said = f"{self.where}: {self.what}" if self.where else self.what
        return f"{said}; {self.remedy}" if self.remedy else said


def in_order(problems: tuple[Problem, ...] | list[Problem]) -> tuple[Problem, ...]:
    """Sorted by file, line, column and code, each problem once."""
    once = dict.fromkeys(problems)
    return tuple(sorted(once, key=lambda p: (p.place, p.code, p.sentence)))
