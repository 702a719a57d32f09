"""Put a text in double quotes as YAML reads it."""

from __future__ import annotations

import re

_ESCAPES = {"\\": "\\\\", '"': '\\"', "\n": "\\n", "\t": "\\t", "\r": "\\r"}
_NUMBER = re.compile(r"[-+]?\.?[0-9][0-9.]*(?:[eE][-+]?[0-9]+)?")


def quoted(text: str) -> str:
    """Return `text` in double quotes, with backslash, quote, tab and line ends escaped."""
    return '"' + "".join(_ESCAPES.get(c, c) for c in text) + '"'


def needs_quotes(text: str) -> bool:
    """Say whether YAML would twist or refuse `text` without quotes."""
    return (
        text == ""
        or text != text.strip()
        or text[0] in "*&>|[]{}@`%!,#\"'"
        or re.match(r"[-?:](?:\s|$)", text) is not None
        or re.search(r":(?:\s|$)|\s#|[\n\r\t]", text) is not None
        or text in ("true", "false", "---", "...")
        or _NUMBER.fullmatch(text) is not None
    )


def plain_or_quoted(text: str) -> str:
    """Return `text` as it may stand after a key or a dash: as it is, or in double quotes where YAML would twist it."""
    return quoted(text) if needs_quotes(text) else text
