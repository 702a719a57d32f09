"""The demo's student cards and lesson sheets on paper."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.screens import LAPTOP, opened


@pytest.mark.parametrize("paper", ["Letter", "A4"])
def test_each_card_of_the_demo_is_one_sheet(chromium: Browser, site_url: str, built_site: Path, paper: str) -> None:
    """In every language the three cards and the reading are four sheets: a card that is long is set smaller, never cut."""
    pages = sorted(path.parent.relative_to(built_site).as_posix() for path in built_site.glob("units/*/student/**/index.html"))
    assert len(pages) > 4
    sheets = {}
    for address in pages:
        with opened(chromium, f"{site_url}/{address}/", LAPTOP) as (page, _):
            sheets[address] = printed(page, paper)
    assert sheets == dict.fromkeys(pages, 4)


MOST = """() => [...document.querySelectorAll(".sheet-day")].map((day) => {
  const launches = day.querySelectorAll(".panel > .head > .bar").length;
  return Math.max(1, launches) + (day.querySelector(".watch") ? 2 : day.querySelector(".teams") ? 1 : 0);
}).reduce((sum, each) => sum + each, 2)"""
"""A sheet for each launch, else for the day; one more for the groups of a day that are known, and one more for what to watch for where
everyone works at one kind of station; two for questions and kit."""


@pytest.mark.parametrize("paper", ["Letter", "A4"])
def test_a_lesson_takes_no_sheet_more_than_it_needs(chromium: Browser, site_url: str, built_site: Path, paper: str) -> None:
    """No lesson sheet ends on paper that holds a line or two, and none is printed to say that there are no groups."""
    pages = sorted(path.parent.relative_to(built_site).as_posix() for path in built_site.glob("lesson/*/*/index.html"))
    too_many = {}
    for address in pages:
        with opened(chromium, f"{site_url}/{address}/", LAPTOP) as (page, _):
            sheets, most = printed(page, paper), page.evaluate(MOST)
            if sheets > most:
                too_many[address] = (sheets, most)
    assert len(pages) > 10 and not too_many


def printed(page: Page, paper: str) -> int:
    """Return how many sheets a page takes."""
    return len(re.findall(rb"/Type\s*/Page\b(?!s)", page.pdf(format=paper)))
