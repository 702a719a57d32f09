"""Slips at the beginning of a line: a bullet for a dash, no space after a dash or colon, no colon at all."""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import dataclass

_BULLET = re.compile(r"(?:[–—•●▪◦‣·*+]|\d{1,2}[.)])[ \t\u00a0]+(?=\S)")
_DASH = re.compile(r"[-–—](?=[^\s-])")
_COLON = re.compile(r"([A-Za-z][A-Za-z0-9 -]{0,30}):(?!//)(?=[^ \t])")
_EQUALS = re.compile(r"([a-z][a-z0-9 -]{0,30}?)[ \t]*=[ \t]*(.*)")
_SINGLE = re.compile(r"[A-Za-z][A-Za-z0-9-]*")
_SIGN = re.compile(r"([*&>|\[\]{}@`%!,\"'?])+[ \t]*([A-Za-z][A-Za-z0-9 -]{0,30}:(?:[ \t].*)?)")
_WORDS = re.compile(r"[a-z][a-z -]{0,20}")


@dataclass(frozen=True, slots=True)
class Slip:
    """What is wrong with the beginning of a line, and the line as it should be (without its indentation)."""

    code: str
    what: str
    corrected: str


def slip(rest: str, known: Collection[str], *, in_list: bool, one_word: bool = False) -> Slip | None:
    """Return what is wrong with a line that has neither dash nor key; `in_list` says that the lines around it are list items.

    `known` are the keys of the file's format, in small letters; `one_word` says that the keys of the lines around it are single words.
    """
    bullet = _BULLET.match(rest)
    if bullet:
        return Slip("dash-missing", f"a list item begins with a dash, not with {bullet[0].strip()}", f"- {rest[bullet.end() :]}")
    if _DASH.match(rest):
        return Slip("dash-needs-space", "a dash needs a space after it", f"- {rest[1:].lstrip()}")
    if in_list:
        return Slip("dash-missing", "this line stands in a list and has no dash", f"- {rest}")
    return _key_slip(rest, known, one_word=one_word)


def _key_slip(rest: str, known: Collection[str], *, one_word: bool) -> Slip | None:
    sign = _SIGN.fullmatch(rest)
    if sign:
        meant = sign[2].rstrip("]}") if sign[1] in "[{" else sign[2]
        return Slip("special-first", f"a key can't begin with {sign[1]}", meant.rstrip())
    colon = _COLON.match(rest)
    if colon and not (one_word and " " in colon[1]):
        return Slip("colon-needs-space", "a colon needs a space after it", f"{colon[1]}: {rest[colon.end() :].lstrip()}")
    equals = _EQUALS.fullmatch(rest)
    if equals:
        return Slip("colon-missing", "a key ends with a colon, not with =", f"{equals[1]}: {equals[2]}".rstrip())
    words = rest.split()
    for count in range(min(4, len(words) - 1), 0, -1):
        key = " ".join(words[:count])
        if key.lower() in known or (len(words) == 2 and one_word and _SINGLE.fullmatch(key)):
            meant = key.lower() if key.lower() in known else key
            return Slip("colon-missing", "a key needs a colon after it", f"{meant}: {' '.join(words[count:])}")
    if _WORDS.fullmatch(rest.rstrip()):
        return Slip("colon-missing", "a key needs a colon after it", f"{rest.rstrip()}:")
    return None
