"""Build plain data and places from YAML events, and answer what the format refuses."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

import yaml

from trivet.model.places import Path, Places
from trivet.model.problem import Place, Problem, Severity
from trivet.reading.brackets import without_brackets
from trivet.reading.characters import INVISIBLE, REFUSED, name_of
from trivet.reading.cut_off import cut_off
from trivet.reading.quoting import quoted
from trivet.reading.scalars import plain_value
from trivet.reading.spots import Spots

VALUES_MOST = 20_000
NESTING_MOST = 20


def _spaced(name: str) -> str:
    """The key that was meant: a space for each odd space, nothing for what has no width."""
    return INVISIBLE.sub(lambda odd: " " if odd[0].isspace() else "", name)


@dataclass(slots=True)
class _Frame:
    """A mapping or list that is being built. `kept` is False inside a value that was refused; `key` is the one whose value comes next."""

    value: dict[str, Any] | list[Any]
    path: Path
    kept: bool
    brackets: bool
    place: Place
    key: str | None = None
    key_place: Place | None = None
    key_kept: bool = True
    key_lines: dict[str, int] = field(default_factory=dict)

    @property
    def wants_key(self) -> bool:
        return isinstance(self.value, dict) and self.key is None


class Builder:
    """Takes events one by one; `value`, `places` and `problems` hold what came of them."""

    def __init__(self, text: str, file: str, first_line: int, empty_brackets: bool) -> None:
        """Begin with an empty value; `empty_brackets` lets `{}` and `[]` pass."""
        self.value: Any = None
        self.stopped = False
        self.problems: list[Problem] = []
        self._at: dict[Path, Place] = {}
        self._keys: dict[Path, Place] = {}
        self.places = Places(file, self._at, self._keys)
        self._spots = Spots(text, tuple(text.split("\n")), file, first_line)
        self._empty_brackets = empty_brackets
        self._stack: list[_Frame] = []
        self._count = 0
        self._documents = 0

    def take(self, event: yaml.Event) -> None:
        """Take the next event; `stopped` says that the rest can't be read with profit."""
        if isinstance(event, yaml.ScalarEvent):
            self._scalar(event)
        elif isinstance(event, yaml.CollectionStartEvent):
            self._open(event)
        elif isinstance(event, yaml.CollectionEndEvent):
            self._close()
        elif isinstance(event, yaml.AliasEvent):
            self._alias(event)
        elif isinstance(event, yaml.DocumentStartEvent):
            self._document(event)

    @property
    def _frame(self) -> _Frame | None:
        return self._stack[-1] if self._stack else None

    # events

    def _document(self, event: yaml.DocumentStartEvent) -> None:
        self._documents += 1
        place = self._spots.place(event)
        if event.version or event.tags:
            self._problem("directive", place, "a line that begins with % gives orders to a program", "delete this line")
        if self._documents > 1:
            remedy = "delete this line, or move what follows to a file of its own"
            self._stop("second-document", place, "a second document begins here, and only the first would be read", remedy)

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        frame = self._frame
        plain = bool(event.implicit[0]) and event.tag is None
        if frame is not None and frame.wants_key:
            self._properties(event, frame.kept)
            self._key(frame, event, plain)
            return
        path, place, kept = self._slot(event)
        if plain and event.value == "" and frame is not None and frame.key_place is not None:
            place = frame.key_place
        self._properties(event, kept)
        cut = cut_off(event, self._spots) if plain and kept else None
        if cut:
            self.problems.append(cut)
        self._put(plain_value(event.value) if plain else self._clean(event.value, place), path, place, kept)

    def _alias(self, event: yaml.AliasEvent) -> None:
        frame = self._frame
        typed, place = self._spots.typed(event), self._spots.place(event)
        is_key = frame is not None and frame.wants_key
        if frame is None or (frame.kept and (is_key or frame.key_kept)):
            remedy = f"write out what it stands for, or, if it is a text, write {self._spots.line_with(event, quoted(typed))}"
            self._problem("alias", place, f"{typed} stands for something written elsewhere in the file", remedy)
        if is_key and frame is not None:
            self._set_key(frame, typed, place, kept=False)
        else:
            path, place, kept = self._slot(event)
            self._put(typed, path, place, kept)

    def _open(self, event: yaml.CollectionStartEvent) -> None:
        frame = self._frame
        here = self._spots.place(event)
        if frame is not None and frame.wants_key:
            what = "a key is one short text, and brackets or a whole list stand here"
            self._stop("key-not-text", here, what, "write one short text before the colon, without brackets, braces or quotes")
            return
        if len(self._stack) >= NESTING_MOST:
            what = f"lists stand inside lists more than {NESTING_MOST} deep"
            self._stop("nested-too-deep", here, what, "write them flatter; nothing in our files is deeper than six")
            return
        path, place, kept = self._slot(event)
        self._properties(event, kept)
        if not event.flow_style and frame is not None and frame.key_place is not None:
            place = frame.key_place
        value: dict[str, Any] | list[Any] = {} if isinstance(event, yaml.MappingStartEvent) else []
        self._put(value, path, place, kept)
        self._stack.append(_Frame(value, path, kept, bool(event.flow_style), here))

    def _close(self) -> None:
        frame = self._stack.pop()
        inside_others = self._frame is not None and self._frame.brackets
        if not frame.brackets or inside_others or not frame.kept or (not frame.value and self._empty_brackets):
            return
        kind = "braces" if isinstance(frame.value, dict) else "brackets"
        what = f"{kind} stand here, and our files are written without"
        self._problem("brackets", frame.place, what, without_brackets(frame.value, frame.path))

    # keys

    def _key(self, frame: _Frame, event: yaml.ScalarEvent, plain: bool) -> None:
        place, name, kept = self._spots.place(event), event.value, False
        invisible = INVISIBLE.search(name) or REFUSED.search(name)
        if not frame.kept:
            pass
        elif plain and name == "<<":
            self._problem("merge-key", place, "<< copies another part of the file", "write the lines out that it stands for")
        elif name == "" and frame.brackets and not self._empty_brackets:
            pass  # the brackets are answered as a whole
        elif name == "":
            self._problem("key-missing", place, "there is no key before the colon", "write a key before it, or delete this line")
        elif invisible:
            name = " ".join(REFUSED.sub(" ", _spaced(name)).split())
            self._problem("odd-key", place, f"{name_of(invisible[0])} stands in this key", f"write {name}:")
            kept = name not in frame.key_lines
        elif name in frame.key_lines:
            first = frame.key_lines[name]
            remedy = f"delete one of the two, or move its content to line {first}"
            self._problem("duplicate-key", place, f"{name} is given twice, on line {first} and on line {place.line}", remedy)
        else:
            kept = True
        self._set_key(frame, name, place, kept=kept)

    def _set_key(self, frame: _Frame, name: str, place: Place, *, kept: bool) -> None:
        frame.key, frame.key_place, frame.key_kept = name, place, kept
        if kept:
            frame.key_lines[name] = place.line
            self._keys[(*frame.path, name)] = place

    # values

    def _slot(self, event: yaml.Event) -> tuple[Path, Place, bool]:
        """Where the next value goes: its path, its place, and whether it is kept."""
        self._count += 1
        place, frame = self._spots.place(event), self._frame
        if self._count > VALUES_MOST:
            what = f"this file holds more than {VALUES_MOST:,} values"
            self._stop("too-many-values", place, what, "delete what was pasted by mistake")
        if frame is None:
            return (), place, True
        if isinstance(frame.value, dict):
            return (*frame.path, frame.key or ""), place, frame.kept and frame.key_kept
        return (*frame.path, len(frame.value)), place, frame.kept

    def _put(self, value: Any, path: Path, place: Place, kept: bool) -> None:
        frame = self._frame
        if frame is None:
            self.value = value
            return
        if isinstance(frame.value, list):
            frame.value.append(value)
        else:
            if kept and frame.key is not None:
                frame.value[frame.key] = value
            frame.key = None
        if kept:
            self._at[path] = place

    def _clean(self, text: str, place: Place) -> str:
        """The text of a quoted value; an escape such as \\0 can smuggle in what no file may hold."""
        odd = REFUSED.search(text)
        if odd:
            what = f"a backslash makes {name_of(odd[0])} here"
            self._problem("control-character", place, what, "write two backslashes for one that belongs to the text")
        return REFUSED.sub(" ", text)

    # what the format refuses

    def _properties(self, event: yaml.ScalarEvent | yaml.CollectionStartEvent, kept: bool) -> None:
        anchor, tag = event.anchor, event.tag
        if not kept or (anchor is None and tag is None):
            return
        typed = self._spots.typed(event)
        code, word = ("anchor", "a mark to copy from") if anchor is not None else ("tag", "an order to a program")
        name = f"&{anchor}" if anchor is not None else typed.split(maxsplit=1)[0]
        remedy = f"delete {name}"
        if isinstance(event, yaml.ScalarEvent):
            remedy = f"if it belongs to the text, write {self._spots.line_with(event, quoted(typed))}; else delete {name}"
        self._problem(code, self._spots.place(event), f"{name} is read as {word}", remedy)

    def _problem(self, code: str, place: Place, what: str, remedy: str) -> None:
        self.problems.append(Problem(code, Severity.ERROR, place, what, remedy))

    def _stop(self, code: str, place: Place, what: str, remedy: str) -> None:
        self._problem(code, place, what, remedy)
        self.stopped = True
