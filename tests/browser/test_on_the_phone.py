"""What students and new teachers read on a phone: tables to fill in, and lists of keys."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.browser.screens import NARROW, PHONE, opened

BROKEN = """() => [...document.querySelectorAll('.prose .data code')]
  .filter(code => !/[\\s\\/-]/.test(code.textContent) && code.getClientRects().length > 1)
  .map(code => code.textContent)"""
"""The words of keys that stand on two lines although there is no blank, slash or hyphen in them."""


def test_no_table_to_fill_in_is_longer_than_a_screen(chromium: Browser, site_url: str, built_site: Path) -> None:
    """On the phone a table of many rows keeps its columns and low rows, so that its head and its last row are seen together."""
    long = {}
    for path in sorted(built_site.glob("units/*/student/**/index.html")):
        address = path.parent.relative_to(built_site).as_posix()
        with opened(chromium, f"{site_url}/{address}/", PHONE) as (page, _):
            heights = page.evaluate("[...document.querySelectorAll('.rec')].map(table => table.getBoundingClientRect().height)")
        assert heights
        if max(heights) > PHONE["height"]:
            long[address] = heights
    assert not long


@pytest.mark.parametrize("size", [PHONE, NARROW, {"width": 768, "height": 1024}], ids=["phone", "narrow", "tablet"])
def test_no_key_of_the_guide_is_broken(chromium: Browser, site_url: str, built_site: Path, size: dict[str, int]) -> None:
    """In the tables of the guide no key is broken within a word, and none of them scrolls sideways."""
    for path in sorted(built_site.glob("guide/**/index.html")):
        address = path.parent.relative_to(built_site).as_posix()
        with opened(chromium, f"{site_url}/{address}/", size) as (page, _):
            assert page.evaluate(BROKEN) == [], address
            wide = page.evaluate("[...document.querySelectorAll('.prose .wide')].filter(e => e.scrollWidth > e.clientWidth).length")
            assert wide == 0, address
