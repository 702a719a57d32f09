"""Lines of an iCalendar file (RFC 5545): escaped, folded, ended with CRLF."""

from __future__ import annotations

from collections.abc import Iterable

MOST_OCTETS = 75
"""RFC 5545 3.1: a line should be no longer than this, its line end left out."""

_ESCAPES = str.maketrans({"\\": "\\\\", ";": "\\;", ",": "\\,", "\n": "\\n", "\r": None})
_CONTROLS = {code: None for code in (*range(0x20), 0x7F) if chr(code) not in "\t\n\r"}


def text(value: str) -> str:
    """Return a value of type TEXT (RFC 5545 3.3.11): backslash, semicolon, comma and line end escaped, control characters left out."""
    return value.translate(_CONTROLS).translate(_ESCAPES)


def folded(line: str) -> str:
    """Return a content line cut into pieces of at most 75 octets, each further one after CRLF and a space, and ended with CRLF.

    No character of UTF-8 is cut in two, which RFC 5545 3.1 asks readers to bear and writers to avoid.
    """
    if len(line) <= MOST_OCTETS and line.isascii():
        return line + "\r\n"
    pieces = [""]
    room = MOST_OCTETS
    for character in line:
        size = len(character.encode("utf-8"))
        if size > room:
            pieces.append("")
            room = MOST_OCTETS - 1  # the space that marks a further piece
        pieces[-1] += character
        room -= size
    return "\r\n ".join(pieces) + "\r\n"


def component(name: str, lines: Iterable[str]) -> list[str]:
    """Return the lines of a component between its BEGIN and END."""
    return [f"BEGIN:{name}", *lines, f"END:{name}"]


def file_of(lines: Iterable[str]) -> bytes:
    """Return the bytes of a file: every line folded, in UTF-8."""
    return "".join(folded(line) for line in lines).encode("utf-8")
