"""Cells of a comma-separated file, each with its line and column (RFC 4180, with the slips of spreadsheets)."""

from __future__ import annotations

from dataclasses import dataclass, field

from trivet.model.problem import Place, Problem, Severity

SEPARATORS = ",;\t"
"""A spreadsheet set to another country writes semicolons; a copied range has tabs."""


@dataclass(frozen=True, slots=True)
class Cell:
    """One cell: its text without quotes and outer blanks, line and column from 1, length as typed.

    `closed` is False where a quote was opened and the file ended before it closed.
    """

    text: str
    line: int
    column: int
    length: int
    closed: bool = True


@dataclass(frozen=True, slots=True)
class Findings:
    """What is wrong in the cells of one file. Words are given by the caller; what stands in a cell never gets here."""

    file: str
    problems: list[Problem] = field(default_factory=list)

    def error(self, code: str, cell: Cell, what: str, remedy: str, title: str = "") -> None:
        """Keep an error at a cell. `title` is the title of its column."""
        self._keep(Severity.ERROR, code, cell, (what, remedy, title))

    def warning(self, code: str, cell: Cell, what: str, remedy: str, title: str = "") -> None:
        """Keep a warning at a cell."""
        self._keep(Severity.WARNING, code, cell, (what, remedy, title))

    def _keep(self, severity: Severity, code: str, cell: Cell, said: tuple[str, str, str]) -> None:
        place = Place(self.file, cell.line, cell.column, cell.length)
        what, remedy, title = said
        self.problems.append(Problem(code, severity, place, what, remedy, f"column {title}" if title else ""))


def rows(text: str) -> list[list[Cell]]:
    """Return the rows of a table, without empty ones. Quotes may hold separators, line ends and doubled quotes."""
    separator = separator_of(text)
    found: list[list[Cell]] = []
    row: list[Cell] = []
    at, line, line_start = 0, 1, 0
    while at <= len(text):
        end, cell, closed = _cell(text, at, separator)
        row.append(Cell(cell, line, at - line_start + 1, max(1, end - at), closed))
        breaks = text.count("\n", at, end)
        if breaks:
            line, line_start = line + breaks, text.rindex("\n", at, end) + 1
        if end == len(text) or text[end] == "\n":
            if any(each.text for each in row):
                found.append(row)
            row = []
            line, line_start = line + 1, end + 1
        at = end + 1
    return found


def separator_of(text: str) -> str:
    """Return the mark that splits the first line into the most cells; a comma where none does."""
    first = text.partition("\n")[0]
    return max(SEPARATORS, key=first.count)


def _cell(text: str, start: int, separator: str) -> tuple[int, str, bool]:
    """Return where the cell that begins at `start` ends, its text, and whether its quotes close."""
    at = start
    while at < len(text) and text[at] == " ":
        at += 1
    if at < len(text) and text[at] == '"':
        end, inside, closed = _quoted(text, at + 1)
        # What stands between the closing quote and the separator belongs to no cell; a spreadsheet writes nothing there.
        stop = _stop(text, end, separator)
        return stop, (inside + text[end:stop]).strip(), closed
    stop = _stop(text, start, separator)
    return stop, text[start:stop].strip(), True


def _quoted(text: str, at: int) -> tuple[int, str, bool]:
    inside: list[str] = []
    while (quote := text.find('"', at)) >= 0:
        inside.append(text[at:quote])
        at = quote + 1
        if text[at : at + 1] != '"':
            return at, "".join(inside), True
        inside.append('"')
        at += 1
    return len(text), "".join(inside) + text[at:], False


def _stop(text: str, start: int, separator: str) -> int:
    ends = [found for mark in (separator, "\n") if (found := text.find(mark, start)) >= 0]
    return min(ends, default=len(text))
