"""One line of a file taken apart."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.reading.entries import entry, key_of, without_key

LINES = st.text(st.sampled_from("ab -:#'\"\t[]?é"), max_size=20)


@given(LINES)
def test_nothing_of_a_line_is_lost(line: str) -> None:
    """What stands before and in the region together is the line, with or without what looked like a key."""
    each = entry(line)
    assert each.lead + each.region == line
    assert without_key(each).lead + without_key(each).region == line
    assert without_key(each).key is None
    assert each.rest == line[each.inner :]


@pytest.mark.parametrize(
    ("line", "parts"),
    [
        ("", (0, 0, False, None, "")),
        ("goal: Find it.", (0, 0, False, "goal", " Find it.")),
        ("  goal:", (2, 2, False, "goal", "")),
        ("  - Go.", (2, 4, True, None, " Go.")),
        ("-", (0, 1, True, None, "")),
        ("-   ask: a: b", (0, 4, True, "ask", " a: b")),
        ("-a: b", (0, 0, False, "-a", " b")),
        ("no key", (0, 0, False, None, "no key")),
        ("http://x", (0, 0, False, None, "http://x")),
        ('"a: b": c', (0, 0, False, '"a: b"', " c")),
        ("'it''s': c", (0, 0, False, "'it''s'", " c")),
        ("a # b: c", (0, 0, False, None, "a # b: c")),
        ("listen for : x", (0, 0, False, "listen for", " x")),
    ],
)
def test_parts(line: str, parts: tuple[int, int, bool, str | None, str]) -> None:
    """Dash, key and region stand where a reader sees them; a colon inside quotes, an address or a comment makes no key."""
    each = entry(line)
    assert (each.column, each.inner, each.dash, each.key, each.region) == parts


@pytest.mark.parametrize("line", ["[a: b", "{a: b", "*a: b", "&a: b", "? a: b", "%a: b", "`a: b", "!a: b", "# a: b", ", a: b", "- - a: b"])
def test_signs_of_yaml_open_no_key(line: str) -> None:
    """A line that begins with a sign of YAML has no key of ours."""
    assert key_of(line) is None


@pytest.mark.parametrize(
    ("line", "text"), [("a:", False), ("a:  # note", False), ("a: #note", False), ("a: b # c", True), ("- ", False), ("- a", True)]
)
def test_a_comment_is_no_text(line: str, text: bool) -> None:
    """Only what is not a comment counts as text after a key or dash."""
    assert entry(line).has_text == text


@pytest.mark.parametrize(("line", "column"), [("  a: b", 2), ("  - a: b", 4), ("  - a", 2), ("  -   a: b", 6)])
def test_what_belongs_to_an_entry_stands_deeper(line: str, column: int) -> None:
    """Below the key of an item lines must pass that key, below a bare item only its dash."""
    assert entry(line).own_column == column
