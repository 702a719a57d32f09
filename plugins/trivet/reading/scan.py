"""One scan over the lines of a file before YAML: whatever YAML would twist or refuse is answered with the corrected line."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace

from trivet.model.problem import Place, Problem, Severity
from trivet.reading.entries import Entry, entry
from trivet.reading.indentation import mend_indentation
from trivet.reading.items import item
from trivet.reading.known import SCHOOL, Known, known
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
_SOME_KEY = re.compile(r"[A-Za-z][A-Za-z0-9 -]{0,24}")


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
        self._known: Known = known("unit") if openers is not None else known(*SCHOOL)
        self._layout = Layout(self._known.homes if openers is not None else {})
        self._shift = 0
        self._shift_from = 0
        self._entries: dict[str, Entry] = {}

    def _entry(self, line: str) -> Entry:
        """Take a line apart, once: most lines are looked at by the lines above them too."""
        found = self._entries.get(line)
        if found is None:
            found = self._entries[line] = entry(line)
        return found

    def read(self, at: int) -> int:
        """Read the entry that begins at line `at`; return the line after it."""
        line = self.lines[at]
        if not line.strip() or line.lstrip().startswith("#"):
            return at + 1
        if _CONFLICT.match(line):
            self._conflict(at)
            return at + 1
        findings: list[_Finding] = []
        each = self._begin(at, self._entry(line), findings)
        if each is None:
            return at + 1
        each = self._line_up(at, each, findings)
        if each.dash and self._layout.is_stray_item(each):
            what = "a list item stands here, where a key belongs"
            remedy = "move it under the key of its list, or, if the line above opens the list, take the text away that follows its colon"
            self._drop(at, "stray-item", what, remedy)
            return at + 1
        if self._openers is not None and each.dash:
            each, fault = item(each, self._openers.get(self._layout.list_key(each), ()))
            findings += [_Finding(fault.code, self._place(at, fault.column), fault.what)] if fault else []
        elif each.dash and each.key is None:
            each = self._opened(at, each, findings)
        each = self._alone(at, each)
        after = self._text(at, each, findings)
        self._layout.take(each)
        return after

    def _begin(self, at: int, each: Entry, findings: list[_Finding]) -> Entry | None:
        """Put a line right that begins with neither dash nor key; None if nothing can be made of it."""
        in_key = each.key is not None and ":" in each.key and each.key.partition(":")[0] in self._known.keys
        key = each.key is not None and not in_key and (self._layout.list_at(each.column) is None or _KEY_LIKE.fullmatch(each.key))
        if each.dash or key:
            return each
        below = self._below(at)
        beside = below if below is not None and below.column == each.column else None
        follows = (beside.key or "") if beside is not None and self._is_key(beside) else ""
        under = self._layout.opens(each) and self._layout.opener is not None
        # A line below a key is its text, unless the next line shows that a list or keys begin here.
        in_list = beside is not None and beside.dash if under else self._layout.list_at(self._layout.right_column(each, ())) is not None
        under = under and not in_list and not follows and not (below is not None and below.column > each.column and self._is_key(below))
        found = slip(each.rest, self._known.keys, in_list=in_list, one_word=self._openers is None and bool(follows) and " " not in follows)
        if found and not (under and found.code.startswith("colon")):
            findings.append(_Finding(found.code, self._place(at, each.column), found.what))
            return entry(" " * each.column + found.corrected)
        if under or self._is_left(each):
            return each
        self._refuse(at, each)
        return None

    def _is_left(self, each: Entry) -> bool:
        """Whether a line of plain YAML is answered by the loader."""
        return self._openers is None and (each.rest[0] in "[{\"'" or each.rest.startswith(("---", "...", "%", "? ")))

    def _refuse(self, at: int, each: Entry) -> None:
        """Answer a line of which nothing can be made."""
        if each.rest.startswith(": ") or each.rest.rstrip() == ":":
            self._drop(at, "key-missing", "there is no key before the colon", "write a key before it, or delete this line")
        elif re.match(r"(?:---|\.\.\.)(?:[ \t]|$)", each.rest):
            self._drop(at, "second-document", "this line ends what is read, and more follows", "delete this line")
        else:
            remedy = "write a key and a colon before it, or move it up to the end of the line that it belongs to"
            self._drop(at, "no-key", "this line has no key and no dash before it", remedy)

    def _below(self, at: int) -> Entry | None:
        """The next line that says something."""
        for index in range(at + 1, len(self.lines)):
            line = self.lines[index].lstrip()
            if line and not line.startswith("#"):
                return self._entry(self.lines[index])
        return None

    def _is_key(self, each: Entry) -> bool:
        """Whether a line has a key, and not a text with a colon in it."""
        if each.dash or each.key is None:
            return False
        return each.key in self._known.keys if self._openers is not None else _SOME_KEY.fullmatch(each.key) is not None

    def _opened(self, at: int, each: Entry, findings: list[_Finding]) -> Entry:
        """Put a list item right that has keys below it and none of its own on its line."""
        below = self._below(at)
        if not each.has_text or below is None or below.column != each.inner or not self._is_key(below):
            return each
        found = slip(each.rest, self._known.keys, in_list=False)
        if found and found.code.startswith("colon"):
            findings.append(_Finding(found.code, self._place(at, each.inner), found.what))
            return entry(self.lines[at][: each.inner] + found.corrected)
        what, remedy = "an item with keys below it begins with a key, and none stands here", "write a key and a colon after the dash"
        self.problems.append(Problem("item-without-key", Severity.ERROR, self._place(at, each.inner), what, remedy))
        self.lines[at] = self.lines[at][: each.inner] + quoted(each.rest.strip()) + ":"
        return entry(self.lines[at])

    def _alone(self, at: int, each: Entry) -> Entry:
        """Take the text away that stands after a key whose lines follow below it."""
        if each.key not in self._known.holders or not each.has_text or _BLOCK_TEXT.fullmatch(each.region):
            return each
        below = self._below(at)
        if below is None or below.column <= each.own_column or not (below.dash or self._is_key(below)):
            return each
        text = plain_or_quoted(each.region.strip())
        what = f"lines follow that belong to {each.key}, so nothing may stand after its colon"
        remedy = f"write {each.lead.strip()}" + (f" and below it - {text}" if below.dash else " alone")
        place = self._place(at, len(self._typed[at].rstrip()) - len(each.region.strip()))
        self.problems.append(Problem("text-above-lines", Severity.ERROR, place, what, remedy))
        self.lines[at] = each.lead
        return replace(each, region="")

    def _line_up(self, at: int, each: Entry, findings: list[_Finding]) -> Entry:
        if each.column < self._shift_from:
            self._shift = self._shift_from = 0
        open_list = self._layout.list_at(each.column)
        item_keys = self._known.items.get(open_list.key, ()) if open_list else ()
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

    def _text(self, at: int, each: Entry, findings: list[_Finding]) -> int:
        """Look at the text of an entry and the lines that go on with it; return the line after it."""
        block = _BLOCK_TEXT.fullmatch(each.region) is not None
        after, pieces = self._pieces(at, each, block)
        if block and self._openers is None:
            self._answer(at, each.lead + each.region, findings)
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
        cut = None
        if found is not None and found.code == "hash-cuts-text":
            # Read on with what YAML would keep: a number or a list of words is followed by a comment more often than not.
            kept = (found.meant[: found.at - len(gap)]).rstrip()
            cut = f"{each.lead}{gap}{plain_or_quoted(kept)}" if kept else None
        if found is not None:
            trapped = _Finding(found.code, self._spot(at, each, pieces, found), found.what)
            findings[:] = [*(other for other in findings if other.code != found.code), trapped]
            for index, _, _ in pieces:
                self.lines[index] = ""
        self._answer(at, mended, findings)
        if cut is not None:
            self.lines[at] = cut
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
            below = self._entry(line)
            key_like = below.dash or (below.key is not None and self._ends_text(below.key))
            # A text below its key goes on at the same column.
            goes_on = below.column > each.own_column or (below.column == each.column and not each.dash and each.key is None)
            if not goes_on or (not block and (line.lstrip().startswith("#") or (key_like and not open_quote))):
                break
            pieces.append((index, below.column, line.strip()))
            after = index + 1
        return after, pieces

    def _ends_text(self, key: str) -> bool:
        """Whether a line that looks as if it had this key ends the text above it."""
        return key in self._known.keys if self._openers is not None else _KEY_LIKE.fullmatch(key) is not None

    def _has_children(self, at: int, each: Entry) -> bool:
        below = self._below(at)
        if below is None:
            return False
        return below.column > each.own_column or (below.dash and below.column == each.own_column and each.key is not None)

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
        what = "a line that git writes between two versions stands here"
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
            if found.code == "hash-cuts-text":
                remedy = f"if it belongs to the text, {remedy}; if it is a comment, put two spaces before # and one after"
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
