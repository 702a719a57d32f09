"""What YAML would twist or refuse in a text that stands without quotes."""

from __future__ import annotations

import re
from dataclasses import dataclass

COMMENT = re.compile(r"[ \t]{2,}#(?=[ \t])|^[ \t]+$")
"""Where a comment may begin after a text: after two spaces and before one."""

_CLOSED = re.compile(r"(?:\"(?:[^\"\\]|\\.)*\"|'(?:[^']|'')*')(?:[ \t]*|[ \t]+#.*)")
_BAD_ESCAPE = re.compile(
    r"(?<!\\)(?:\\\\)*"
    r"(\\(?:x(?![0-9A-Fa-f]{2})|u(?![0-9A-Fa-f]{4})|U(?!000[0-9A-Fa-f]{5}|0010[0-9A-Fa-f]{4})|[^0abtnvfre \"/\\N_LPxuU\t]))"
)
_HASH = re.compile(r"(?:^|[ \t])(#)")
_COLON = re.compile(r":(?=[ \t]|$)")
_HARMLESS = re.compile(r"[ \t]*[^\W_][^#:]*")
"""A text that begins with a letter or digit and has neither # nor colon: nearly every one."""
_FIRST = re.compile(r"[*&>|\[\]{}@`%!,]|[-?:](?=[ \t]|$)")


@dataclass(frozen=True, slots=True)
class Trap:
    """A text that needs quotes. `at` and `length` count in the region that was looked at; `meant` is the text without the comment."""

    code: str
    at: int
    length: int
    what: str
    meant: str
    comment: str


def trap(region: str, *, any_comment: bool = False) -> Trap | None:
    """Return what is wrong with the text in `region`, the part of a line after its colon or dash.

    Lists and mappings in brackets that close at the line's end are left to the loader, which answers them.
    `any_comment` takes every ` #` as a comment, as YAML does.
    """
    if _HARMLESS.fullmatch(region):
        return None
    text, comment, start = _parts(region, any_comment)
    if text == "":
        return None
    if text[0] in "\"'":
        return _quotes(region, text, comment, start)
    return _unquoted(text, comment, start)


def _unquoted(text: str, comment: str, start: int) -> Trap | None:
    if (text[0] == "[" and text[-1] == "]") or (text[0] == "{" and text[-1] == "}"):
        return None
    if _FIRST.match(text):
        return Trap("special-first", start, 1, f"a text can't begin with {text[0]} unless it stands in quotes", text, comment)
    colon, hash_sign = _COLON.search(text), _HASH.search(text)
    if hash_sign and (colon is None or hash_sign.start(1) < colon.start()):
        at = hash_sign.start(1)
        return Trap("hash-cuts-text", start + at, len(text) - at, "everything after # would be left out as a comment", text, comment)
    if colon:
        return Trap("colon-in-text", start + colon.start(), 1, "a colon before a space reads as the end of a key", text, comment)
    return None


def _parts(region: str, any_comment: bool) -> tuple[str, str, int]:
    """Text, comment with the spaces before it, and where the text begins."""
    start = len(region) - len(region.lstrip())
    begins = re.search(r"[ \t]+#", region) if any_comment else COMMENT.search(region)
    if begins and region[start : start + 1] not in ("'", '"'):
        return region[start : begins.start()].rstrip(), region[max(start, begins.start()) :].rstrip(), start
    return region[start:].rstrip(), "", start


def _quotes(region: str, text: str, comment: str, start: int) -> Trap | None:
    if _CLOSED.fullmatch(text):
        bad = _BAD_ESCAPE.search(text) if text[0] == '"' else None
        if bad is None:
            return None
        inner = text[1 : text.rindex('"')]
        what = "a backslash in double quotes has a meaning of its own"
        return Trap("backslash-in-quotes", start + bad.start(1), len(bad[1]), what, re.sub(r'\\(["\\])', r"\1", inner), comment)
    begins = COMMENT.search(text)
    if begins:
        text, comment = text[: begins.start()], text[begins.start() :]
    name = "a quote" if text[0] == '"' else "an apostrophe"
    what = f"{name} opens this text and does not close it at the end of the line"
    return Trap("quote-not-closed", start, len(text), what, _meant(text), comment)


def _meant(text: str) -> str:
    """The text that was meant by `text`, which begins with a quote that does not close at its end."""
    mark, rest = text[0], text[1:]
    if mark == "'":
        wrapped = rest.endswith("'") and all(re.match(r"\w'\w", rest[m.start() - 1 :]) for m in re.finditer("'", rest[:-1]))
        return rest[:-1] if wrapped else text
    if '"' not in rest:
        return rest
    if rest.endswith('""') and rest.count('"') % 2:
        return rest[:-1]
    inches = rest.endswith('"') and re.fullmatch(r'[^"]*\d"[^"]*"', rest)
    return rest[:-1] if inches else text
