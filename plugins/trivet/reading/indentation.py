"""Indentation is made of spaces: find tabs, look-alike spaces and what has no width before YAML stumbles over them."""

from __future__ import annotations

import re

from trivet.model.problem import Place, Problem, Severity
from trivet.reading.characters import ODD_SPACES, ZERO_WIDTH, name_of
from trivet.reading.entries import entry
from trivet.reading.layout import STEP, Layout

_LEAD = re.compile(f"[ \t{ODD_SPACES}]+")
_ODD_SPACE = re.compile(f"[{ODD_SPACES}]")
_ODD = re.compile(f"[\t{ODD_SPACES}\u2060]")
_SUSPECTS = re.findall(f"[{ODD_SPACES}\u2060]|[^\\S \\n]", "".join(map(chr, range(0x3001))))
"""What no line may hold that stays as it is, and what may have no width."""
_DASH = re.compile(f"( *-)([\t{ODD_SPACES}]+)")
_COLON = re.compile(f"( *[A-Za-z][A-Za-z0-9 -]{{0,24}}:)([{ODD_SPACES}]+)")
TAB_WIDTHS = (2, 4, 8)
"""What a tab may look like in an editor, in spaces."""


def mend_indentation(text: str, file: str, first_line: int = 1) -> tuple[str, list[Problem]]:
    """Return `text` indented with spaces alone, line for line, and a problem for each line that was not.

    A line that is indented with tabs is put where it lines up with the lines above it; a look-alike space counts as one. The space
    after a dash or a key is looked at too, and what has no width goes.
    """
    if not any(each in text for each in _SUSPECTS):
        return text, []
    lines = text.split("\n")
    problems: list[Problem] = []
    tabs = _Tabs()
    for index, line in enumerate(lines):
        mended = line if line.isascii() and "\t" not in line else _mended(line, tabs)
        tabs.note(mended)
        if mended == line:
            continue
        lines[index] = mended
        if mended.strip():
            problems.append(_problem(line, mended, Place(file, first_line + index)))
    return "\n".join(lines), problems


class _Tabs:
    """Finds the column for a line that is indented with tabs, from the lines above it."""

    def __init__(self) -> None:
        self._layout = Layout()
        self._width = 0

    def note(self, line: str) -> None:
        if line.strip() and not line.lstrip().startswith("#"):
            self._layout.take(entry(line))

    def column(self, lead: str, rest: str) -> int:
        """A column at which lines of this kind stand above, or one that opens below the line above: the one that fits the tabs best."""
        each = entry(rest)
        levels = [block.column for block in reversed(self._layout.blocks) if block.is_list == each.dash]
        opener = self._layout.opener
        if opener is not None:
            levels.insert(0, opener.own_column + STEP)
        columns = {width: len(lead.expandtabs(width)) for width in ((self._width,) if self._width else ()) + TAB_WIDTHS}
        for width, column in columns.items():
            if width == self._width and column in levels:
                return column
        found = next(((width, level) for level in levels for width, column in columns.items() if column == level), None)
        if found is not None:
            self._width = self._width or found[0]
            return found[1]
        typed = columns[self._width or TAB_WIDTHS[0]]
        return min(levels, key=lambda level: abs(level - typed), default=typed)


def _lead(line: str) -> str:
    found = _LEAD.match(line)
    return found[0] if found else ""


def _mended(line: str, tabs: _Tabs) -> str:
    lead = _lead(line)
    rest = line[len(lead) :]
    if not rest.strip():
        return ""
    lead = _ODD_SPACE.sub(lambda odd: "" if odd[0] == "\u200b" else " ", lead)
    line = (" " * tabs.column(lead, rest) if "\t" in lead else lead) + ZERO_WIDTH.sub("", rest)
    for form in (_DASH, _COLON):
        line = form.sub(lambda found: found[1] + " ", line, count=1) if form.match(line) else line
    return line


def _problem(line: str, mended: str, start: Place) -> Problem:
    same = next((at for at, (was, now) in enumerate(zip(line, mended, strict=False)) if was != now), 0)
    odd = _ODD.search(line, same)
    assert odd is not None  # only lines with one are mended
    place = Place(start.file, start.line, odd.start() + 1)
    spaces = len(mended) - len(mended.lstrip(" "))
    indented = odd.start() < len(_lead(line))
    count = {0: "no space", 1: "one space"}.get(spaces, f"{spaces} spaces")
    code = "tab-indent" if odd[0] == "\t" else "odd-space"
    what = f"{name_of(odd[0])} stands " + ("here" if "invisible" in name_of(odd[0]) else "where only spaces may")
    remedy = f"write {mended.strip()}" + (f" with {count} before it" if indented else "")
    return Problem(code, Severity.ERROR, place, what, remedy)
