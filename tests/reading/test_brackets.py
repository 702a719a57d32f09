"""What to write instead of brackets is read back as what stood in them."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from trivet.model.places import Path
from trivet.reading.brackets import without_brackets
from trivet.reading.strict import load


@pytest.mark.parametrize(
    ("value", "path", "line"),
    [
        (["mass", "volume"], ("use",), "use: mass, volume"),
        ([1, 2], ("numbers",), "numbers: 1, 2"),
        (["a: b", "c"], ("use",), 'use: "a: b, c"'),
    ],
)
def test_short_items_stand_on_one_line(value: list[Any], path: Path, line: str) -> None:
    """Words and whole numbers under a key become a comma list, in quotes where YAML would twist it."""
    assert without_brackets(value, path) == f"write {line} (or one item a line, each after a dash and a space)"
    key, _, text = line.partition(": ")
    assert load(line, "f.yml").value == {key: text.strip('"')}


@pytest.mark.parametrize(
    ("value", "item"),
    [
        ([True, False], "true"),
        ([Decimal("1.50"), 2], "1.50"),
        (["a (b), c", "d"], "a (b), c"),
        (["x" * 31], "x" * 31),
        (["#5 (a)"], '"#5 (a)"'),
    ],
)
def test_other_items_stand_below_each_other(value: list[Any], item: str) -> None:
    """Truths, fractions, long texts and texts with commas stand one a line, and the first is read back as it was."""
    remedy = without_brackets(value, ("use",))
    assert remedy == f"write one item a line, each after a dash and a space: - {item}"
    assert load(f"use:\n  - {item}\n", "f.yml").value == {"use": [value[0]]}


@pytest.mark.parametrize(
    ("value", "remedy"),
    [
        ([], "write its items below it, one a line; where there are none, delete this line"),
        ({}, "write its items below it, one a line; where there are none, delete this line"),
        ({"a": 1}, "write one key a line, indented: a: 1"),
        ({"a": {"b": 1}}, "write one key a line, indented: a:"),
        ([{"ask": "Why: so?"}], 'write each item after a dash and a space, its keys one below the other: - ask: "Why: so?"'),
    ],
)
def test_nothing_and_keys(value: dict[str, Any] | list[Any], remedy: str) -> None:
    """Empty brackets are deleted, keys stand one a line."""
    assert without_brackets(value, ("use",)) == remedy
