"""One scan over the lines of a file before YAML: whatever YAML would twist or refuse is answered with the corrected line."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from trivet.model.problem import Place, Problem, Severity
from trivet.reading.entries import Entry, entry, without_key
from trivet.reading.indentation import mend_indentation
from trivet.reading.layout import Layout
from trivet.reading.quoting import plain_or_quoted, quoted
from trivet.reading.slips import slip
from trivet.reading.traps import Trap, trap

Openers = Mapping[str, tuple[str, ...]]
"""For each list whose items have keys: those keys, the usual first one first. Items of every other list are texts."""

UNIT_OPENERS: Openers = {
    "questions": ("ask", "listen for"),
    "misconceptions": ("hear", "do"),
    "quick check": ("ask", "answer", "skill"),
    "pre-check": ("ask", "answer", "skill"),
    "spot checks": ("station", "ask", "listen for"),
    "expected": ("of", "value", "tolerance", "source"),
    "rubric": ("part", "levels"),
}

_BLOCK_TEXT = re.compile(r"[ \t]*[|>][-+]?[1-9]?[-+]?[ \t]*(?:#.*)?")
_CONFLICT = re.compile(r"(?:<{7}|={7}|>{7}|\|{7})(?: |$)")
_KEY_LIKE = re.compile(r"[a-z][a-z -]{0,24}")
_CLOSE_KEY = re.compile(r"([A-Za-z][A-Za-z -]*):(?=[^ \t])")


@dataclass(frozen=True, slots=True)
class Scanned:
    """`text` has the same lines, with those that were answered put right; a loader need not complain about them again."""

    text: str
    problems: tuple[Problem, ...]


def scan(text: str, file: str, first_line: int = 1, openers: Openers | None = UNIT_OPENERS) -> Scanned:
    """Return the text with its traps mended, and one problem for each line that needed it.

    `openers` None is for plain YAML (school files): any item may open with a key, every ` #` is a comment, and texts may run
    over several lines in quotes or under `|` and `>`.
    """
    text, problems = mend_indentation(text, file, first_line)
    work = _Scan(text.split("\n"), file, first_line, openers)
    at = 0
    while at < len(work.lines):
        at = work.read(at)
    return Scanned("\n".join(work.lines), (*problems, *work.problems))


@dataclass(frozen=True, slots=True)
class _Finding:
    code: str
    place: Place
    what: str


class _Scan:
    def __init__(self, lines: list[str], file: str, first_line: int, openers: Openers | None) -> None:
        self.lines = lines
        self.problems: list[Problem] = []
        self._typed = list(lines)
        self._file = file
        self._first_line = first_line
        self._openers = openers
        self._layout = Layout()
        self._shift = 0
        self._shift_from = 0

    def read(self, at: int) -> int:
        """Read the entry that begins at line `at`; return the line after it."""
        line = self.lines[at]
        if not line.strip() or line.lstrip().startswith("#"):
            return at + 1
        if _CONFLICT.match(line):
            self._conflict(at)
            return at + 1
        findings: list[_Finding] = []
        each = self._begin(at, entry(line), findings)
        if each is None:
            return at + 1
        each = self._line_up(at, each, findings)
        if each.dash and self._layout.is_stray_item(each):
            what = "a list item stands here, where a key belongs"
            self._drop(at, "stray-item", what, "move it under the key of its list, which has no text of its own on its line")
            return at + 1
        each, key_finding = self._item(at, each)
        findings += key_finding
        after = self._text(at, each, findings)
        self._layout.take(each)
        return after

    def _begin(self, at: int, each: Entry, findings: list[_Finding]) -> Entry | None:
        """Put a line right that begins with neither dash nor key; None if nothing can be made of it."""
        if each.dash or (each.key is not None and (self._layout.list_at(each.column) is None or _KEY_LIKE.fullmatch(each.key))):
            return each
        under = self._layout.opens(each) and self._layout.opener is not None
        in_list = not under and self._layout.list_at(self._layout.right_column(each, ())) is not None
        found = slip(each.rest, in_list=in_list)
        if found and not (under and found.code.startswith("colon")):
            findings.append(_Finding(found.code, self._place(at, each.column), found.what))
            return entry(" " * each.column + found.corrected)
        if under:
            return each
        if self._openers is not None and re.match(r"(?:---|\.\.\.)(?:[ \t]|$)", each.rest):
            self._drop(at, "second-document", "this line ends what is read, and more follows", "delete this line")
            return None
        if self._openers is None and (each.rest[0] in "[{\"'" or each.rest.startswith(("---", "...", "%", "? "))):
            return each
        remedy = f"write it on the line that it belongs to, or write a key before it: key: {plain_or_quoted(each.rest.strip(': '))}"
        self._drop(at, "no-key", "this line has no key and no dash before it", remedy)
        return None

    def _line_up(self, at: int, each: Entry, findings: list[_Finding]) -> Entry:
        if each.column < self._shift_from:
            self._shift = self._shift_from = 0
        known = self._layout.list_at(each.column)
        item_keys = (self._openers or {}).get(known.key, ()) if known else ()
        right = self._layout.right_column(each, item_keys)
        if right == each.column:
            return each
        content = (each.lead + each.region)[each.column :]
        if self._shift:
            # Lines below a line that was moved are moved with it, without a word of their own.
            moved = entry(" " * (each.column + self._shift) + content)
            if self._layout.right_column(moved, item_keys) == moved.column:
                self.lines[at] = moved.lead + moved.region
                return moved
        what = "this line does not line up with the lines it belongs to"
        findings.append(_Finding("not-lined-up", self._place(at, each.column), what))
        self._shift, self._shift_from = right - each.column, each.column
        return entry(" " * right + content)

    def _item(self, at: int, each: Entry) -> tuple[Entry, list[_Finding]]:
        """Decide whether a list item opens with a key or is a text."""
        if self._openers is None or not each.dash:
            return each, []
        keys = self._openers.get(self._layout.list_key(each))
        if each.key is None:
            close = _CLOSE_KEY.match(each.rest)
            if not keys or not close or close[1] not in keys:
                return each, []
            corrected = each.lead + each.region[: each.inner - len(each.lead)] + close[0] + " " + each.rest[close.end() :].lstrip()
            return entry(corrected), [_Finding("colon-needs-space", self._place(at, each.inner), "a colon needs a space after it")]
        if keys and each.key.casefold() in keys:
            return each, []
        text = without_key(each)
        if not keys:
            return text, []
        what = f"a colon before a space reads as the end of a key, and the keys here are {', '.join(keys)}"
        found = _Finding("colon-in-text", self._place(at, len(each.lead) - 1), what)
        lead = text.lead + " " * max(1, each.inner - len(text.lead)) + f"{keys[0]}:"
        return Entry(each.column, each.inner, True, keys[0], lead, " " + text.region.lstrip()), [found]

    def _text(self, at: int, each: Entry, findings: list[_Finding]) -> int:
        """Look at the text of an entry and the lines that go on with it; return the line after it."""
        block = _BLOCK_TEXT.fullmatch(each.region) is not None
        after, pieces = self._pieces(at, each, block)
        if block and self._openers is None:
            return after
        comment_only = not each.has_text
        if each.key == "<<":
            return after
        if comment_only and (not each.region.strip() or self._has_children(at, each)):
            self._answer(at, each.lead + each.region, findings)
            return at + 1
        if self._openers is None and each.dash and each.region.lstrip().startswith("- "):
            return at + 1
        joined = " ".join([each.region.rstrip(), *(text for _, _, text in pieces)])
        gap = each.region[: len(each.region) - len(each.region.lstrip())] or (" " if each.lead.strip() else "")
        found = trap(joined, any_comment=self._openers is None)
        mended = each.lead + each.region
        if found is not None:
            meant = " ".join(text for _, _, text in pieces) if block and pieces else found.meant
            mended = f"{each.lead}{gap}{quoted(meant)}{found.comment}"
        elif pieces and self._openers is not None and each.region.lstrip()[0] in "'\"":
            what = "these quotes do not close at the end of the line"
            found = Trap("quote-not-closed", len(gap), len(each.region.strip()), what, "", "")
            mended = f"{each.lead}{gap}{joined.strip()}"
        if found is not None:
            # A line with two slips of one kind is answered once.
            findings[:] = [*(other for other in findings if other.code != found.code), self._finding(at, each, pieces, found)]
            for index, _, _ in pieces:
                self.lines[index] = ""
        self._answer(at, mended, findings)
        return after

    def _pieces(self, at: int, each: Entry, block: bool) -> tuple[int, list[tuple[int, int, str]]]:
        """The lines that go on with the text of `each`, as (line, column, text), and the line after them."""
        pieces: list[tuple[int, int, str]] = []
        after = at + 1
        if not each.has_text:
            return after, pieces
        open_quote = each.region.lstrip()[:1] in ("'", '"')
        for index in range(at + 1, len(self.lines)):
            line = self.lines[index]
            if not line.strip():
                continue
            below = entry(line)
            key_like = below.dash or (below.key is not None and _KEY_LIKE.fullmatch(below.key))
            if below.column <= each.own_column or (not block and (line.lstrip().startswith("#") or (key_like and not open_quote))):
                break
            pieces.append((index, below.column, line.strip()))
            after = index + 1
        return after, pieces

    def _has_children(self, at: int, each: Entry) -> bool:
        for line in self.lines[at + 1 :]:
            if line.strip() and not line.lstrip().startswith("#"):
                below = entry(line)
                return below.column > each.own_column or (below.dash and below.column == each.own_column and each.key is not None)
        return False

    def _finding(self, at: int, each: Entry, pieces: list[tuple[int, int, str]], found: Trap) -> _Finding:
        return _Finding(found.code, self._spot(at, each, pieces, found), found.what)

    def _spot(self, at: int, each: Entry, pieces: list[tuple[int, int, str]], found: Trap) -> Place:
        """Where in the file a trap stands that was found in the joined text."""
        offset, size = found.at, len(each.region.rstrip())
        if offset <= size or not pieces:
            typed = self._typed[at]
            start = len(typed) - len(each.region) if typed.endswith(each.region) else each.column
            return Place(self._file, self._first_line + at, start + offset + 1, max(1, min(found.length, size - offset)))
        offset -= size + 1
        for index, column, text in pieces:
            if offset <= len(text):
                return Place(self._file, self._first_line + index, column + offset + 1, max(1, min(found.length, len(text) - offset)))
            offset -= len(text) + 1
        return self._place(at, each.column)

    def _conflict(self, at: int) -> None:
        what = "an unfinished merge of two versions stands here"
        remedy = "keep one version and delete the lines with <<<<<<<, ======= and >>>>>>>"
        if any(problem.code == "merge-conflict" for problem in self.problems):
            self.lines[at] = ""
        else:
            self._drop(at, "merge-conflict", what, remedy)

    def _answer(self, at: int, mended: str, findings: list[_Finding]) -> None:
        """Note what was found in a line, each with the same corrected line."""
        if not findings:
            return
        self.lines[at] = mended
        spaces = len(mended) - len(mended.lstrip(" "))
        for found in findings:
            remedy = f"write {mended.strip()}"
            if found.code == "not-lined-up":
                remedy += {0: " with no space before it", 1: " with one space before it"}.get(spaces, f" with {spaces} spaces before it")
            self.problems.append(Problem(found.code, Severity.ERROR, found.place, found.what, remedy))

    def _drop(self, at: int, code: str, what: str, remedy: str) -> None:
        column = len(self.lines[at]) - len(self.lines[at].lstrip(" "))
        self.problems.append(Problem(code, Severity.ERROR, self._place(at, column), what, remedy))
        self.lines[at] = ""

    def _place(self, at: int, column: int) -> Place:
        length = len(self._typed[at].rstrip()) - column
        return Place(self._file, self._first_line + at, column + 1, max(1, length))
