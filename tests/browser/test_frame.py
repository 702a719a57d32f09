"""The frame: paper that is chosen by button, and a search that costs nothing until somebody searches."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, ViewportSize, expect

from tests.browser.screens import LAPTOP, PHONE, Scheme, kinds, opened

SEARCH = ("bundle.", "search.", "search_index.json")
"""Begin the names of what only a search needs."""


@contextmanager
def listened(browser: Browser, url: str, size: dict[str, int]) -> Iterator[tuple[Page, Callable[[], list[str]]]]:
    """A page and the names of files of the search that it has asked for so far."""
    context = browser.new_context(viewport=ViewportSize(width=size["width"], height=size["height"]), reduced_motion="reduce")
    page = context.new_page()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url.rpartition("/")[2]))
    page.goto(url, wait_until="networkidle")
    yield page, lambda: [name for name in asked if name.startswith(SEARCH)]
    context.close()


def found(page: Page) -> str:
    """Type a word that the demo teaches, and return what the search says."""
    page.keyboard.type("density")
    page.locator(".md-search-result__item").first.wait_for()
    return page.locator(".md-search-result__list").inner_text()


def test_no_page_loads_what_only_a_search_needs(chromium: Browser, site_url: str, built_site: Path) -> None:
    """Neither the theme's script nor the index of all pages is asked for by a page that nobody searches."""
    context = chromium.new_context(viewport=ViewportSize(width=PHONE["width"], height=PHONE["height"]), reduced_motion="reduce")
    asked: list[tuple[str, str]] = []
    context.on("request", lambda request: asked.append((request.frame.url, request.url.rpartition("/")[2])))
    pages = []
    for address in kinds(built_site).values():  # all are opened, then each is waited for: most of the time passes in silence
        page = context.new_page()
        page.goto(site_url + address, wait_until="commit")
        pages.append(page)
    for page in pages:
        page.wait_for_load_state("networkidle")
    assert len(asked) > len(pages)
    assert [each for each in asked if each[1].startswith(SEARCH)] == []
    context.close()


def test_the_search_opens_from_the_phone_s_header(chromium: Browser, site_url: str) -> None:
    """A tap on the lens opens the search, puts the cursor into it and finds; Escape closes it."""
    with listened(chromium, f"{site_url}/units/", PHONE) as (page, asked):
        page.locator("label.md-header__button[for=__search]").click()
        assert "Float or sink?" in found(page)
        assert len(asked()) == len(SEARCH)
        page.keyboard.press("Escape")
        expect(page.locator("#__search")).not_to_be_checked()


@pytest.mark.parametrize("address", ["units/", "lesson/p1/float-or-sink/#bring"])
def test_the_search_opens_by_key(chromium: Browser, site_url: str, address: str) -> None:
    """The key / goes to the search, also on a page whose address names a place, and the first letters are not lost."""
    with listened(chromium, f"{site_url}/{address}", LAPTOP) as (page, _):
        page.keyboard.press("/")
        assert "Float or sink?" in found(page)
        assert page.input_value(".md-search__input") == "density"
        expect(page.locator("#__search")).to_be_checked()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_paper_follows_the_device_until_it_is_chosen(chromium: Browser, site_url: str, scheme: Scheme) -> None:
    """One button shows; by key it goes from the device's paper to light, to dark and back; the choice stands after a reload."""

    def state(page: Page) -> tuple[str, str]:
        shown = page.locator(".paper button:visible")
        assert shown.count() == 1
        return page.evaluate("getComputedStyle(document.body).colorScheme"), shown.get_attribute("aria-label") or ""

    with opened(chromium, f"{site_url}/units/", PHONE, scheme) as (page, faults):
        assert state(page) == (scheme, "Use light paper")
        page.locator(".paper button:visible").focus()
        page.keyboard.press("Enter")
        assert state(page) == ("light", "Use dark paper")
        page.keyboard.press("Enter")
        assert state(page) == ("dark", "Follow the device")
        page.reload()
        assert state(page) == ("dark", "Follow the device")
        page.locator(".paper button:visible").click()
        assert state(page) == (scheme, "Use light paper")
        assert faults == []
