"""An item of a list opens with a key of its own or is a text, and what is typed in between is put right."""

from __future__ import annotations

import pytest

from trivet.reading.entries import entry
from trivet.reading.items import item

KEYS = ("ask", "listen for")


@pytest.mark.parametrize(
    ("typed", "meant", "code"),
    [
        ("- ask: Why?", "- ask: Why?", ""),
        ("- listen for: it", "- listen for: it", ""),
        ("- ask:Why?", "- ask: Why?", "colon-needs-space"),
        ("-   ask:Why: x", "-   ask: Why: x", "colon-needs-space"),
        ("- ask Why?", "- ask: Why?", "item-without-key"),
        ("- Listen for it", "- listen for: it", "item-without-key"),
        ("  - Why?", "  - ask: Why?", "item-without-key"),
        ("-", "- ask:", "item-without-key"),
        ("- Why: how?", "- ask: Why: how?", "colon-in-text"),
        ("- {ask: Why?}", "- {ask: Why?}", ""),
    ],
)
def test_items_with_keys(typed: str, meant: str, code: str) -> None:
    """In a list whose items have keys, each item gets one."""
    each, fault = item(entry(typed), KEYS)
    assert each.lead + each.region == meant
    assert (fault.code if fault else "") == code
    if code:
        assert each.key in KEYS


@pytest.mark.parametrize("typed", ["- ask: Why?", "- a: b: c", "- text", "-"])
def test_items_that_are_texts(typed: str) -> None:
    """In a list of texts nothing is a key."""
    each, fault = item(entry(typed), ())
    assert (each.key, fault, each.lead + each.region) == (None, None, typed)
