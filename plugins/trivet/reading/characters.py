"""Characters that no file of ours may hold, and how to name one in words."""

from __future__ import annotations

import re
import unicodedata

REFUSED = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ufeff\ufffe\uffff\ud800-\udfff]")
"""Control characters but tab and line ends, the two Unicode line separators, a byte-order mark inside the text, non-characters.

YAML 1.2.2, production [1] c-printable, less the line ends that editors do not count as lines.
"""

ODD_SPACES = "\u00a0\u1680\u2000-\u200b\u202f\u205f\u3000"
"""Spaces that look like a space (or like nothing) and are none to YAML; the inside of a character class."""

ZERO_WIDTH = re.compile("(?:(?<=[\x00-\x7f])|^)[\u200b\u2060]+|[\u200b\u2060]+(?=[\x00-\x7f]|$)")
"""Invisible characters beside plain letters, signs or the ends of a line: pasted by accident. Between other letters they may be meant."""

INVISIBLE = re.compile(f"[{ODD_SPACES}\u00ad\u200c-\u200f\u202a-\u202e\u2060-\u2069\t]")
"""What a reader of a key can't see."""

_NAMES = {
    "\x00": "a zero byte",
    "\x07": "a bell character",
    "\x08": "a backspace character",
    "\x0b": "a line break of a word processor (vertical tab)",
    "\x0c": "a page break (form feed)",
    "\x1b": "an escape character",
    "\x7f": "a delete character",
    "\x85": "a line break of another system (next line)",
    "\u2028": "a line separator",
    "\u2029": "a paragraph separator",
    "\ufeff": "an invisible byte-order mark",
    "\u00a0": "a no-break space",
    "\u200b": "an invisible zero-width space",
    "\u2060": "an invisible word joiner",
    "\u00ad": "an invisible hyphen",
    "\t": "a tab",
}


def name_of(character: str) -> str:
    """Say in words what a character is, with its code point: `a no-break space (U+00A0)`."""
    known = _NAMES.get(character)
    if known is None:
        official = unicodedata.name(character, "").lower()
        known = f"the character “{official}”" if official else "a control character"
    return f"{known} (U+{ord(character):04X})"
