"""What a sentence form answers when it can't read a text, and the words all forms share."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal

from trivet.reading.quoting import plain_or_quoted

DASH = "[-–—]"
"""Hyphen, en dash and em dash, as a word processor may make of one."""

NUMBER_WORDS = {
    "a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
    "eleven": 11, "twelve": 12, "fifteen": 15, "twenty": 20, "thirty": 30,
}  # fmt: skip

LOOSE_NUMBER = (
    r"(?:\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d{1,6}[.,]\d{1,3}|\d{1,6}\s*½|½|\d{1,6}\s+1/2|1/2|\d{1,6}|half\s+an?\b|(?:"
    + "|".join(NUMBER_WORDS)
    + r")(?![\w-]))"
)
"""A number as people write it: 1,000 or 1,5 or 2½ or 1/2 or three. No groups."""


@dataclass(frozen=True, slots=True)
class Unreadable:
    """`what` can't be read, in plain words; `remedy` says what to write; `corrected` is that text alone, "" where none can be given."""

    what: str
    remedy: str
    corrected: str = ""


def instead(what: str, corrected: str, *, item: bool = False) -> Unreadable:
    """Return the answer with its corrected text, as it may stand in the file: in quotes where needed, after a dash for an `item`."""
    number = re.fullmatch(r"[0-9.]+", corrected)  # a form that takes numbers takes them without quotes
    return Unreadable(what, f"write {'- ' if item else ''}{corrected if number else plain_or_quoted(corrected)}", corrected)


def said(value: object) -> str:
    """Return a value as it was typed, with each run of blanks (also no-break ones) made one space; "" for a list or a mapping."""
    if isinstance(value, bool):
        return "true" if value else "false"
    return " ".join(str(value).split()) if isinstance(value, str | int | Decimal) else ""


def as_number(words: str) -> Decimal:
    """Return the number that `LOOSE_NUMBER` matched."""
    text = words.strip().lower()
    if text in NUMBER_WORDS:
        return Decimal(NUMBER_WORDS[text])
    if text.startswith("half"):
        return Decimal("0.5")
    half = Decimal("0.5") if re.search(r"½|1/2$", text) else Decimal(0)
    text = re.sub(r"\s*(?:½|1/2)$", "", text)
    if re.fullmatch(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?", text):
        text = text.replace(",", "")
    return Decimal(text.replace(",", ".") or 0) + half


def up(number: Decimal, step: str = "1") -> Decimal:
    """Round up to a multiple of `step`."""
    return (number / Decimal(step)).to_integral_value(rounding=ROUND_CEILING) * Decimal(step)


def plain(number: Decimal | float) -> str:
    """Write a number without trailing zeros and without an exponent: 2, 0.5, 1000."""
    text = f"{Decimal(str(number)):f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
