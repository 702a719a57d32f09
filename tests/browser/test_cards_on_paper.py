"""The demo's student cards on paper."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.browser.screens import LAPTOP, opened


@pytest.mark.parametrize("paper", ["Letter", "A4"])
def test_each_card_of_the_demo_is_one_sheet(chromium: Browser, site_url: str, built_site: Path, paper: str) -> None:
    """In every language the three cards and the reading are four sheets: a card that is long is set smaller, never cut."""
    pages = sorted(path.parent.relative_to(built_site).as_posix() for path in built_site.glob("units/*/student/**/index.html"))
    assert len(pages) > 4
    sheets = {}
    for address in pages:
        with opened(chromium, f"{site_url}/{address}/", LAPTOP) as (page, _):
            sheets[address] = len(re.findall(rb"/Type\s*/Page\b(?!s)", page.pdf(format=paper)))
    assert sheets == dict.fromkeys(pages, 4)
