"""A text in double quotes is read back by YAML as that text."""

from __future__ import annotations

import json

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from trivet.reading.quoting import needs_quotes, plain_or_quoted, quoted

TYPED = st.text(st.characters(min_codepoint=0x20, max_codepoint=0x2FFF, exclude_categories=["Cc", "Cs", "Zl", "Zp", "Cn"]), max_size=30)


@given(st.text(st.sampled_from("a \\\"'\n\t\r:#-é"), max_size=20))
def test_quotes_hold_any_text(text: str) -> None:
    """Quoted text is a string of YAML and of JSON (RFC 8259, section 7) with the same value, on one line."""
    assert yaml.safe_load(quoted(text)) == text
    assert json.loads(quoted(text)) == text
    assert "\n" not in quoted(text)


@given(TYPED)
def test_yaml_reads_what_was_meant(text: str) -> None:
    """What stands without quotes after a dash is read by a plain YAML 1.1 parser as one scalar of that very text."""
    node = yaml.compose(f"- {plain_or_quoted(text)}", Loader=yaml.SafeLoader)
    assert isinstance(node, yaml.SequenceNode)
    (item,) = node.value
    assert isinstance(item, yaml.ScalarNode)
    assert item.value == text


@pytest.mark.parametrize(
    "text",
    ["", " a", "a ", "- a", "-", "? a", ": a", "a: b", "a:", "a #b",
     "#5", "*a*", "&a", "!a", "'a'", '"a"', "%5", "@a", "`a`", "[a", "{a", "a\nb",
     "a\tb", "true", "false", "---", "...", "5", "-5", "+5", "1.5", ".5", "1e5", "8.30", "017"],
)  # fmt: skip
def test_what_yaml_would_twist_needs_quotes(text: str) -> None:
    """Numbers, truths, signs, comments, keys and blanks at the ends are put in quotes."""
    assert needs_quotes(text)
    assert plain_or_quoted(text) == quoted(text)


@pytest.mark.parametrize("text", ["Weigh it.", "a:b", "a#b", "-a", "it's", 'a 5" ruler', "yes", "8:15", "5 g", "x - y", "é", "a, b", "?a"])
def test_what_reads_as_typed_stands_bare(text: str) -> None:
    """A text that the strict loader reads as typed gets no quotes: a teacher would copy them."""
    assert not needs_quotes(text)
    assert plain_or_quoted(text) == text
