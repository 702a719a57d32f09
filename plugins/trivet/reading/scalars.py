"""What an unquoted word of YAML means: the YAML 1.2 core schema, less what surprises a teacher."""

from __future__ import annotations

import re
from decimal import Decimal

_WHOLE = re.compile(r"[-+]?(?:0|[1-9][0-9]{0,14})")
_DECIMAL = re.compile(
    r"[-+]?(?:(?:0|[1-9][0-9]{0,14})\.[0-9]{0,15}|\.[0-9]{1,15}|(?:0|[1-9][0-9]{0,14})(?:\.[0-9]{0,15})?[eE][-+]?[0-9]{1,2})"
)


def plain_value(text: str) -> bool | int | Decimal | str | None:
    """Return the value of an unquoted scalar: None for nothing, true/false, a decimal number, else the text itself.

    Source: YAML 1.2.2, section 10.3.2. On purpose narrower: `null`, `~`, `True`, `0x1F`, `0o17`, `.inf`, numbers with a leading
    zero (010) and numbers longer than 15 digits stay text, so that a code or a time is never turned into another one.
    """
    if text == "":
        return None
    if text in ("true", "false"):
        return text == "true"
    if _WHOLE.fullmatch(text):
        return int(text)
    if _DECIMAL.fullmatch(text):
        return Decimal(text)
    return text
