"""Will the pages of a simulation work under the policy that is written into them? It lets nothing run that stands inside the page."""

from __future__ import annotations

import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

from trivet.model.problem import Place, Problem, Severity
from trivet.reading.source import read_source

PAGES = (".html", ".htm")
_TARGETS = ("src", "href", "action", "formaction", "data", "poster", "xlink:href")
_LISTS = ("srcset", "imagesrcset")
"""Attributes that hold several addresses: the same picture in several sizes."""

_SIZE = re.compile(r"[0-9.]+[wxh]")
_FRAMES = ("iframe", "frame", "object", "embed", "portal")
_DATA_TYPES = ("application/json", "application/ld+json", "text/plain")


def check(folder: Path, where: str, files: tuple[str, ...]) -> Iterator[Problem]:
    """Yield the problems of each page among `files`, at their lines."""
    for name in files:
        if name.lower().endswith(PAGES):
            source = read_source(folder / name, where + name)
            yield from source.problems
            page = _Page(where + name)
            try:
                page.feed(source.text)
                page.close()
            except AssertionError:  # how the standard library's parser refuses a broken <![...]> section
                page.note_unreadable()
            yield from page.problems


class _Page(HTMLParser):
    """Walks over a page and notes what the policy would stop."""

    def __init__(self, file: str) -> None:
        super().__init__(convert_charrefs=True)
        self.problems: list[Problem] = []
        self._file = file

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Look at one element."""
        said = {name: (value or "").strip() for name, value in attrs}
        if tag == "script" and "src" not in said and said.get("type", "").lower() not in _DATA_TYPES:
            self._error(
                "inline-script",
                "a script stands inside the page, and the policy of the site stops it",
                'move it to a file: <script src="tank.js">',
            )
        if tag == "style" or "style" in said:
            self._warning(
                "inline-style",
                "a style stands inside the page, and the policy of the site ignores it",
                'move it to a file: <link rel="stylesheet" href="sim.css">',
            )
        if tag in _FRAMES:
            self._error(
                "framed-page",
                f"<{tag}> holds another page, and the policy of the site stops it",
                "take it out, or put its content into this page",
            )
        if tag == "base" or (tag == "meta" and said.get("http-equiv", "").lower() == "refresh"):
            self._error("page-moves-away", f"<{tag}> leads the reader elsewhere", "take it out")
        for name, value in said.items():
            self._attribute(tag, name, value)

    def _attribute(self, tag: str, name: str, value: str) -> None:
        if name in _LISTS:
            for address in _addresses(value):
                self._target(tag, name, address)
        else:
            self._target(tag, name, value)

    def _target(self, tag: str, name: str, value: str) -> None:
        squeezed = "".join(value.lower().split())
        if name.startswith("on") or (name in (*_TARGETS, *_LISTS) and squeezed.startswith(("javascript:", "vbscript:"))):
            what = f"{name} runs code that stands inside the page, and the policy of the site stops it"
            self._error("inline-handler", what, "use addEventListener in a script file")
        elif name in (*_TARGETS, *_LISTS) and tag != "a" and squeezed.startswith(("http:", "https:", "//")):
            what = f"{name} loads {value[:60]}, and the policy of the site stops it"
            self._error("loads-from-elsewhere", what, "copy the file into the unit's folder")

    def note_unreadable(self) -> None:
        """Say that the page can't be read from here on."""
        self._error("page-not-read", "from here on this page can't be read", "take out what begins with <![")

    def _error(self, code: str, what: str, remedy: str) -> None:
        self._note(code, Severity.ERROR, what, remedy)

    def _warning(self, code: str, what: str, remedy: str) -> None:
        self._note(code, Severity.WARNING, what, remedy)

    def _note(self, code: str, severity: Severity, what: str, remedy: str) -> None:
        line, column = self.getpos()
        length = len((self.get_starttag_text() or " ").split("\n", 1)[0])
        self.problems.append(Problem(code, severity, Place(self._file, line, column + 1, length), what, remedy))


def _addresses(value: str) -> Iterator[str]:
    """Yield the addresses in `small.png 1x, large.png 2x`: all that is no size."""
    for part in value.replace(",", " ").split():
        if not _SIZE.fullmatch(part):
            yield part
