"""Where a YAML event stands in the text, and what is typed there."""

from __future__ import annotations

from dataclasses import dataclass

import yaml

from trivet.model.problem import Place


@dataclass(frozen=True, slots=True)
class Spots:
    """A text that begins at `first_line` of `file`. Columns count characters."""

    text: str
    lines: tuple[str, ...]
    file: str
    first_line: int

    def place(self, event: yaml.Event) -> Place:
        """The place of an event; its length ends with its first line."""
        begin, end = event.start_mark, event.end_mark
        if begin is None or end is None:
            return Place(self.file, self.first_line)
        line, column = begin.line, begin.column
        last = end.column if end.line == line else len(self.line(line))
        return Place(self.file, self.first_line + line, column + 1, last - column if last > column else 1)

    def start(self, event: yaml.Event) -> tuple[int, int]:
        """Line and column from 0 at which an event begins."""
        return (event.start_mark.line, event.start_mark.column) if event.start_mark else (0, 0)

    def end(self, event: yaml.Event) -> tuple[int, int]:
        """Line and column from 0 at which an event ends."""
        return (event.end_mark.line, event.end_mark.column) if event.end_mark else (0, 0)

    def line(self, index: int) -> str:
        """A line of the text, "" past its end."""
        return self.lines[index] if index < len(self.lines) else ""

    def typed(self, event: yaml.Event) -> str:
        """What is typed for an event, or the rest of its line where nothing is."""
        if event.start_mark is None or event.end_mark is None:
            return ""
        return self.text[event.start_mark.index : event.end_mark.index].strip() or self.rest(event)

    def rest(self, event: yaml.Event) -> str:
        """The line of an event from its beginning on."""
        line, column = self.start(event)
        return self.line(line)[column:].strip()

    def line_with(self, event: yaml.Event, value: str) -> str:
        """The line of an event with `value` in place of what stands there."""
        line, column = self.start(event)
        return (self.line(line)[:column] + value).strip()
