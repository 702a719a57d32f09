"""An unquoted word is a number, true, false or nothing only where nobody can be surprised."""

from __future__ import annotations

from decimal import Decimal

import pytest

from trivet.reading.scalars import plain_value
from trivet.reading.strict import load

CORE = {
    "true": True, "false": False, "": None,
    "0": 0, "-19": -19, "+7": 7, "12": 12,
    "0.": Decimal(0), "-0.0": Decimal("0.0"), ".5": Decimal("0.5"), "6.50": Decimal("6.50"),
    "+12e03": Decimal(12000), "-2E+05": Decimal(-200000), "1e3": Decimal(1000), "1.0e3": Decimal(1000),
}  # fmt: skip
"""YAML 1.2.2, section 10.3.2 (core schema) and example 10.9; the example's values are from memory."""

TEXT_ON_PURPOSE = [
    "null",
    "Null",
    "NULL",
    "~",
    "True",
    "TRUE",
    "False",
    "FALSE",
    "0x3A",
    "0o7",
    ".inf",
    "-.Inf",
    "+.INF",
    ".nan",
    ".NAN",
    "010",
]
"""Words that the core schema resolves and this reader leaves as text: see `scalars.plain_value`."""

TEXT_OF_YAML_1_1 = [
    "10:30", "9:05", "8:30:15", "09:05", "3:1", "1:1", "0123", "089", "no", "on", "NO", "yes", "Off", "y", "2026-09-14", "2026-02-30",
    "1_000", "0b11", "1,5", "6-8", "1e999", "123456789012345678901234567890",
]  # fmt: skip
"""Words that YAML 1.1 turns into numbers, dates or truth (yaml.org/type), measured with SafeLoader; text in YAML 1.2."""


@pytest.mark.parametrize(("word", "value"), CORE.items())
def test_core_schema(word: str, value: object) -> None:
    """A word of the core schema has its value and its type, alone and in a file."""
    assert plain_value(word) == value
    assert type(plain_value(word)) is type(value)
    assert load(f"a: {word}\n", "f.yml").value == {"a": value}


@pytest.mark.parametrize("word", [*TEXT_ON_PURPOSE, *TEXT_OF_YAML_1_1])
def test_text_stays_text(word: str) -> None:
    """A time, a code, a date, a ratio or a yes is the text that was typed."""
    loaded = load(f"a: {word}\nb:\n  - {word}\n", "f.yml")
    assert loaded.value == {"a": word, "b": [word]}
    assert loaded.problems == ()


@pytest.mark.parametrize("word", ["7", "true", "2.5", "10:30", ""])
def test_quoted_is_text(word: str) -> None:
    """In quotes, single or double, everything is text."""
    assert load(f"a: \"{word}\"\nb: '{word}'\n", "f.yml").value == {"a": word, "b": word}


@pytest.mark.parametrize("key", ["7", "true", "2026-12-01", "no", "10:30", "010", '"7"', "'true'"])
def test_keys_are_text(key: str) -> None:
    """A key is always the text that was typed."""
    assert load(f"{key}: x\n", "f.yml").value == {key.strip("\"'"): "x"}
