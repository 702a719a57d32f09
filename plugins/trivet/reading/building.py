"""Build plain data and places from YAML events, and answer what the format refuses."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Any

import yaml

from trivet.model.places import Path, Places
from trivet.model.problem import Place, Problem, Severity
from trivet.reading.brackets import without_brackets
from trivet.reading.characters import INVISIBLE, REFUSED, name_of
from trivet.reading.quoting import quoted
from trivet.reading.scalars import plain_value

VALUES_MOST = 20_000
NESTING_MOST = 20
COMMENT = re.compile(r" {2,}# ")
"""What may follow a plain text: a comment after two spaces and before one."""

_CUT_OFF = re.compile(r"[ \t]+#.*")


@dataclass(slots=True)
class _Frame:
    """A mapping or list that is being built. `kept` is False inside a value that was refused."""

    value: dict[str, Any] | list[Any]
    path: Path
    kept: bool
    brackets: bool
    place: Place
    outer_brackets: bool
    key: str | None = None
    key_place: Place | None = None
    key_kept: bool = True
    key_lines: dict[str, int] = field(default_factory=dict)


class Builder:
    """Takes events one by one; `value`, `places` and `problems` hold what came of them."""

    def __init__(self, text: str, file: str, first_line: int, empty_brackets: bool) -> None:
        self.value: Any = None
        self.stopped = False
        self.problems: list[Problem] = []
        self._at: dict[Path, Place] = {}
        self._keys: dict[Path, Place] = {}
        self.places = Places(file, self._at, self._keys)
        self._text = text
        self._lines = text.split("\n")
        self._file = file
        self._first_line = first_line
        self._empty_brackets = empty_brackets
        self._stack: list[_Frame] = []
        self._count = 0
        self._documents = 0

    def take(self, event: yaml.Event) -> None:
        """Take the next event; `stopped` says that the rest can't be read with profit."""
        if isinstance(event, yaml.ScalarEvent):
            self._scalar(event)
        elif isinstance(event, yaml.MappingStartEvent | yaml.SequenceStartEvent):
            self._open(event)
        elif isinstance(event, yaml.MappingEndEvent | yaml.SequenceEndEvent):
            self._close()
        elif isinstance(event, yaml.AliasEvent):
            self._alias(event)
        elif isinstance(event, yaml.DocumentStartEvent):
            self._document(event)

    def _document(self, event: yaml.DocumentStartEvent) -> None:
        self._documents += 1
        if event.version or event.tags:
            self._problem("directive", self._place(event), "a line that begins with % gives orders to a program", "delete this line")
        if self._documents > 1:
            self._problem(
                "second-document",
                self._place(event),
                "a second document begins here, and only the first would be read",
                "delete this line, or move what follows to a file of its own",
            )
            self.stopped = True
            return

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        frame = self._stack[-1] if self._stack else None
        plain = event.implicit[0] and event.tag is None
        if frame is not None and isinstance(frame.value, dict) and frame.key is None:
            self._properties(event, frame.kept)
            self._key(frame, event, plain)
            return
        path, place, kept = self._slot(event)
        if event.value == "" and plain and frame is not None and frame.key_place is not None:
            place = frame.key_place
        if kept:
            self._properties(event, kept)
            if plain:
                self._comment(event)
        value = plain_value(event.value) if plain else self._clean(event, place)
        self._put(value, path, place, kept)

    def _alias(self, event: yaml.AliasEvent) -> None:
        frame = self._stack[-1] if self._stack else None
        typed = self._slice(event)
        is_key = frame is not None and isinstance(frame.value, dict) and frame.key is None
        place = self._place(event)
        if frame is None or (frame.kept and frame.key_kept):
            self._problem(
                "alias",
                place,
                f"{typed} stands for something written elsewhere in the file",
                f"write out what it stands for, or, if it is a text, write {self._line_with(event, quoted(typed))}",
            )
        if is_key and frame is not None:
            self._set_key(frame, typed, place)
            return
        path, place, kept = self._slot(event)
        self._put(typed, path, place, kept)

    def _open(self, event: yaml.MappingStartEvent | yaml.SequenceStartEvent) -> None:
        frame = self._stack[-1] if self._stack else None
        if frame is not None and isinstance(frame.value, dict) and frame.key is None:
            self._problem(
                "key-not-text",
                self._place(event),
                "a key is one short text, and a whole list stands here",
                f"if it is a text, write {quoted(self._rest_of_line(event))}",
            )
            self.stopped = True
            return
        path, place, kept = self._slot(event)
        if len(self._stack) >= NESTING_MOST:
            self._problem(
                "nested-too-deep",
                self._place(event),
                f"lists stand inside lists more than {NESTING_MOST} deep",
                "write them flatter; nothing in our files is deeper than six",
            )
            self.stopped = True
            return
        if kept:
            self._properties(event, kept)
        brackets = bool(event.flow_style)
        inside = frame is not None and (frame.brackets or frame.outer_brackets)
        value: dict[str, Any] | list[Any] = {} if isinstance(event, yaml.MappingStartEvent) else []
        if not brackets and frame is not None and frame.key_place is not None and isinstance(frame.value, dict):
            place = frame.key_place
        self._put(value, path, place, kept)
        self._stack.append(_Frame(value, path, kept, brackets, self._place(event), inside))

    def _close(self) -> None:
        frame = self._stack.pop()
        if not frame.brackets or frame.outer_brackets or not frame.kept:
            return
        if not frame.value and self._empty_brackets:
            return
        kind = "braces" if isinstance(frame.value, dict) else "brackets"
        self._problem("brackets", frame.place, f"{kind} stand here, and our files are written without", without_brackets(frame.value, frame.path))

    # keys

    def _key(self, frame: _Frame, event: yaml.ScalarEvent, plain: bool) -> None:
        place = self._place(event)
        name = event.value
        invisible = INVISIBLE.search(name) or REFUSED.search(name)
        if not frame.kept:
            self._set_key(frame, name, place, kept=False)
        elif plain and name == "<<":
            self._problem("merge-key", place, "<< copies another part of the file", "write the lines out that it stands for")
            self._set_key(frame, name, place, kept=False)
        elif name == "":
            self._problem("key-missing", place, "there is no key before the colon", f"write key{self._rest_of_line(event)}")
            self._set_key(frame, name, place, kept=False)
        elif invisible:
            clean = " ".join(REFUSED.sub(" ", INVISIBLE.sub(" ", name)).split())
            self._problem("odd-key", place, f"{name_of(invisible[0])} stands in this key", f"write {clean}:")
            self._set_key(frame, clean, place, kept=clean not in frame.key_lines)
        elif name in frame.key_lines:
            first = frame.key_lines[name]
            self._problem(
                "duplicate-key",
                place,
                f"{name} is given twice, on line {first} and on line {place.line}",
                f"delete one of the two, or move its content to line {first}",
            )
            self._set_key(frame, name, place, kept=False)
        else:
            self._set_key(frame, name, place)

    def _set_key(self, frame: _Frame, name: str, place: Place, *, kept: bool = True) -> None:
        frame.key, frame.key_place, frame.key_kept = name, place, kept
        if kept and frame.kept:
            frame.key_lines.setdefault(name, place.line)
            self._keys[(*frame.path, name)] = place

    # values

    def _slot(self, event: yaml.Event) -> tuple[Path, Place, bool]:
        """Where the next value goes: its path, its place, and whether it is kept."""
        self._count += 1
        place = self._place(event)
        if self._count > VALUES_MOST:
            self._problem(
                "too-many-values",
                place,
                f"this file holds more than {VALUES_MOST:,} values",
                "split it, or delete what was pasted by mistake",
            )
            self.stopped = True
        if not self._stack:
            return (), place, True
        frame = self._stack[-1]
        if isinstance(frame.value, dict):
            return (*frame.path, frame.key or ""), place, frame.kept and frame.key_kept
        return (*frame.path, len(frame.value)), place, frame.kept

    def _put(self, value: Any, path: Path, place: Place, kept: bool) -> None:
        if not self._stack:
            self.value = value
            return
        frame = self._stack[-1]
        if isinstance(frame.value, list):
            frame.value.append(value)
        else:
            if kept and frame.key is not None:
                frame.value[frame.key] = value
            frame.key = None
        if kept:
            self._at[path] = place

    def _clean(self, event: yaml.ScalarEvent, place: Place) -> str:
        """The text of a quoted value; an escape such as \\0 can smuggle in what no file may hold."""
        odd = REFUSED.search(event.value)
        if odd:
            self._problem(
                "control-character", place, f"a backslash makes {name_of(odd[0])} here", "write two backslashes for one in the text"
            )
        return str(REFUSED.sub(" ", event.value))

    # refusals that need no stop

    def _properties(self, event: yaml.Event, kept: bool) -> None:
        anchor, tag = getattr(event, "anchor", None), getattr(event, "tag", None)
        if not kept or (anchor is None and tag is None):
            return
        code, name, word = (
            ("anchor", f"&{anchor}", "a mark to copy from")
            if anchor
            else ("tag", self._slice(event).split(maxsplit=1)[0], "an order to a program")
        )
        remedy = f"delete {name}"
        if isinstance(event, yaml.ScalarEvent):
            remedy = f"if it belongs to the text, write {self._line_with(event, quoted(self._slice(event)))}; else delete {name}"
        self._problem(code, self._place(event), f"{name} is read as {word}", remedy)

    def _comment(self, event: yaml.ScalarEvent) -> None:
        end = event.end_mark
        rest = self._lines[end.line][end.column :] if event.value else ""
        cut = _CUT_OFF.match(rest)
        if cut is None or COMMENT.match(rest):
            return
        before = self._lines[end.line][: event.start_mark.column] if event.start_mark.line == end.line else ""
        hash_at = end.column + cut[0].index("#")
        self._note(
            "hash-cuts-text",
            Severity.WARNING,
            Place(self._file, self._first_line + end.line, hash_at + 1, len(self._lines[end.line]) - hash_at),
            "everything after # is left out as a comment",
            f"if it belongs to the text, write {before.strip()} {quoted(event.value + cut[0].rstrip())}; if it is a comment, put two spaces before # and one after",
        )

    # places and words

    def _place(self, event: yaml.Event) -> Place:
        start, end = event.start_mark, event.end_mark
        line = self._lines[start.line] if start.line < len(self._lines) else ""
        last = end.column if end.line == start.line else len(line)
        return Place(self._file, self._first_line + start.line, start.column + 1, max(1, last - start.column))

    def _slice(self, event: yaml.Event) -> str:
        return self._text[event.start_mark.index : event.end_mark.index].strip() or self._rest_of_line(event)

    def _rest_of_line(self, event: yaml.Event) -> str:
        return self._lines[event.start_mark.line][event.start_mark.column :].strip()

    def _line_with(self, event: yaml.Event, value: str) -> str:
        """The line of `event` with `value` in place of what stands there."""
        return (self._lines[event.start_mark.line][: event.start_mark.column] + value).strip()

    def _problem(self, code: str, place: Place, what: str, remedy: str) -> None:
        self._note(code, Severity.ERROR, place, what, remedy)

    def _note(self, code: str, severity: Severity, place: Place, what: str, remedy: str) -> None:
        self.problems.append(Problem(code, severity, place, what, remedy))
