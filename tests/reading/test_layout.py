"""Where a line belongs by its indentation; whole files stand in test_scan."""

from __future__ import annotations

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from trivet.reading.entries import entry
from trivet.reading.layout import Layout

UNIT = """\
title: x
stations:
  online:
    goal: g
    steps:
      - a
      - b
  hands-on:
    goal: g
questions:
- ask: what
  listen for: that
- ask: why
"""


def after(text: str) -> Layout:
    layout = Layout()
    for line in text.rstrip("\n").split("\n"):
        layout.take(entry(line))
    return layout


def test_a_file_that_lines_up_is_left_alone() -> None:
    """Every line of a well-made file belongs where it stands."""
    layout = Layout()
    for line in UNIT.rstrip("\n").split("\n"):
        each = entry(line)
        assert layout.right_column(each, ("ask", "listen for")) == each.column, line
        assert not (each.dash and layout.is_stray_item(each)), line
        layout.take(each)


TREES = st.recursive(
    st.just("x"),
    lambda inner: st.dictionaries(st.sampled_from("abcd"), inner, min_size=1, max_size=3) | st.lists(inner, min_size=1, max_size=3),
    max_leaves=8,
).filter(lambda tree: isinstance(tree, dict))


@given(TREES)
def test_what_a_program_writes_lines_up(tree: object) -> None:
    """Block YAML written by a library, lists inside lists left out, belongs where it stands."""
    text = yaml.safe_dump(tree, default_flow_style=False, sort_keys=False)
    if "- - " in text:
        return
    layout = Layout()
    for line in text.rstrip("\n").split("\n"):
        each = entry(line)
        assert layout.right_column(each, ("a", "b", "c", "d")) == each.column, text
        layout.take(each)


@pytest.mark.parametrize(
    ("text", "line", "column"),
    [
        ("steps:\n  - a\n", "   - b", 2),
        ("steps:\n  - a\n", " - b", 2),
        ("steps:\n  - a\n", " goal: x", 0),
        ("a:\n  b: x\n", "   c: y", 2),
        ("a:\n  b: x\n", " c: y", 2),
        ("a:\n  b:\n    c: x\n", "   d: y", 4),
        ("a: x\n", "  b: y", 0),
        ("questions:\n  - ask: a\n", "  listen for: b", 4),
        ("steps:\n  - a\n", "  done when: b", 0),
    ],
)
def test_a_line_goes_to_the_nearest_level(text: str, line: str, column: int) -> None:
    """A line between two levels goes to the nearer, the deeper where both are as near; a key among dashes to its item or its key."""
    item_keys = ("ask", "listen for") if "ask" in text else ()
    assert after(text).right_column(entry(line), item_keys) == column


def test_a_stray_item_is_one_among_keys() -> None:
    """A dash among keys is stray, unless the key above it has no text yet."""
    assert after("a: x").is_stray_item(entry("- b"))
    assert not after("a:").is_stray_item(entry("- b"))
    assert not after("a:\n- b").is_stray_item(entry("- c"))


def test_the_key_of_a_list() -> None:
    """An item belongs to the key that opened its list, also to one just opened."""
    assert after(UNIT).list_key(entry("- ask: who")) == "questions"
    assert after("a:\n  steps:").list_key(entry("    - b")) == "steps"
    assert after("a: x").list_key(entry("- b")) == ""


def test_a_key_with_a_home_goes_there() -> None:
    """A key that stands under one key only is put under it: beside it one step deeper, or at the column of its block."""
    homes = {"listen for": "questions", "leave alone": "online"}
    layout = Layout(homes)
    for line in ("stations:", "  online:"):
        layout.take(entry(line))
    assert layout.right_column(entry("  leave alone: x"), ()) == 4
    for line in ("    goal: g", "    steps:", "      - a"):
        layout.take(entry(line))
    assert layout.right_column(entry("  leave alone: x"), ()) == 4
    assert layout.right_column(entry("    goal: x"), ()) == 4
