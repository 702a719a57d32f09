"""Find links, pictures, tables and raw HTML in a teacher's Markdown, each with its line and column."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

_FENCED = re.compile(
    r"^(?P<indent> {0,3})(?P<fence>`{3,}+|~{3,}+)[^\n]*\n.*?(?:^ {0,3}(?P=fence)[`~]*[ \t]*$|\Z)", re.MULTILINE | re.DOTALL
)
_TICKS = re.compile(r"`+")
_WORDS_AND_REST = (
    r"\[(?P<words>(?:[^\[\]\\]|\\.|\[[^\[\]]*\])*)\]"
    r"\((?P<rest>\s*(?:<[^<>\n]*>|(?:[^\s()<>]|\([^\s()]*\))*)[^()]*?)\)"
)
_PICTURE = re.compile("!" + _WORDS_AND_REST, re.DOTALL)
_LINK = re.compile(_WORDS_AND_REST, re.DOTALL)
_TARGET = re.compile(r"\s*(?:<(?P<inner>[^<>\n]*)>|(?P<plain>(?:[^\s()<>]|\([^\s()]*\))*))")
_DEFINITION = re.compile(r"^ {0,3}\[(?P<name>[^\[\]\n]+)\]:[ \t]*<?(?P<target>[^\s<>]+)>?", re.MULTILINE)
_AUTO = re.compile(r"<(?P<target>[A-Za-z][A-Za-z0-9+.-]*:[^\s<>]*)>")
_TAG = re.compile(r"<(?:/?[A-Za-z][A-Za-z0-9-]*(?=[\s/>])[^<>]*>|!--|!doctype)", re.IGNORECASE)
_RULE = re.compile(r"^ {0,3}\|?[ \t]*:?-+:?[ \t]*(?:\|[ \t]*:?-+:?[ \t]*)*\|?[ \t]*$")


@dataclass(frozen=True, slots=True)
class Spot:
    """A stretch of the text: `line` and `column` from 1."""

    text: str
    line: int
    column: int


@dataclass(frozen=True, slots=True)
class Link:
    """A link or a picture with its target as typed; `words` are its text, or what the picture shows."""

    target: Spot
    words: str
    image: bool


def links(text: str, first_line: int = 1) -> tuple[Link, ...]:
    """Return every link and picture, in order: inline, by reference and in angle brackets."""
    plain = without_code(text)
    found: list[tuple[int, Link]] = []
    # Pictures first, and then out of the way: a link may have one between its brackets.
    rest = plain
    for form in (_PICTURE, _LINK):
        for each in form.finditer(rest):
            target = _TARGET.match(each["rest"])
            if target:
                group = "inner" if target["inner"] is not None else "plain"
                at = each.start("rest") + target.start(group)
                image = form is _PICTURE
                found.append((at, Link(_spot(plain, at, target[group], first_line), each["words"].strip(), image)))
        rest = form.sub(lambda each: re.sub(r"[^\n]", " ", each[0]), rest)
    for form in (_DEFINITION, _AUTO):
        for each in form.finditer(plain):
            at = each.start("target")
            found.append((at, Link(_spot(plain, at, each["target"], first_line), each["target"], image=False)))
    return tuple(link for _, link in sorted(found, key=lambda pair: pair[0]))


def tags(text: str, first_line: int = 1) -> tuple[Spot, ...]:
    """Return every piece of raw HTML."""
    plain = without_code(text)
    return tuple(_spot(plain, each.start(), each[0], first_line) for each in _TAG.finditer(plain))


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table: its title, and its cells as typed."""

    title: Spot
    cells: tuple[str, ...]


def table_columns(text: str, first_line: int = 1) -> Iterator[Column]:
    """Yield the columns of every table."""
    lines = without_code(text).split("\n")
    after = 0
    for at, line in enumerate(lines[:-1]):
        if at < after or "|" not in line or not _RULE.match(lines[at + 1]) or "-" not in lines[at + 1]:
            continue
        after = next((below for below in range(at + 2, len(lines)) if "|" not in lines[below]), len(lines))
        rows = [_cells(below) for below in lines[at + 2 : after]]
        for index, (title, column) in enumerate(_titles(line)):
            yield Column(Spot(title, first_line + at, column), tuple(row[index] for row in rows if index < len(row)))


def without_code(text: str) -> str:
    """Return the text with code replaced by as many spaces, so that places stay."""
    text = _FENCED.sub(lambda found: _blank(found[0]), text)
    parts, done = [], 0
    for start, end in _code_spans(text):
        parts += [text[done:start], _blank(text[start:end])]
        done = end
    return "".join([*parts, text[done:]])


def _code_spans(text: str) -> Iterator[tuple[int, int]]:
    """Yield where code between backticks begins and ends: a run of them closes with the next run of the same length (CommonMark 6.1)."""
    runs = [(found.start(), found.end()) for found in _TICKS.finditer(text)]
    closing: dict[int, int] = {}
    following: dict[int, int] = {}
    for index in range(len(runs) - 1, -1, -1):
        length = runs[index][1] - runs[index][0]
        if length in following:
            closing[index] = following[length]
        following[length] = index
    index = 0
    while index < len(runs):
        if index in closing:
            yield runs[index][0], runs[closing[index]][1]
            index = closing[index]
        index += 1


def _blank(text: str) -> str:
    return re.sub(r"[^\n]", " ", text)


def _titles(line: str) -> list[tuple[str, int]]:
    titles, at = [], 0
    for part in line.split("|"):
        if part.strip():
            titles.append((part.strip(), at + len(part) - len(part.lstrip()) + 1))
        at += len(part) + 1
    return titles


def _cells(line: str) -> list[str]:
    return [part.strip() for part in line.strip().strip("|").split("|")]


def _spot(text: str, at: int, part: str, first_line: int) -> Spot:
    return Spot(part, first_line + text.count("\n", 0, at), at - text.rfind("\n", 0, at))
