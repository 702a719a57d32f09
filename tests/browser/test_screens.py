"""Every kind of page, on phone and laptop, in light and dark: quiet, narrow enough, accessible."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser

from tests.browser.screens import LAPTOP, NARROW, PHONE, Scheme, kinds, opened


def faults_of(axe: Any) -> list[str]:
    return [f"{fault['id']}: {[node['html'][:120] for node in fault['nodes'][:3]]}" for fault in axe.response["violations"]]


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", [PHONE, LAPTOP], ids=["phone", "laptop"])
def test_every_kind_of_page_is_quiet_and_accessible(
    chromium: Browser, site_url: str, built_site: Path, size: dict[str, int], scheme: Scheme
) -> None:
    """No console message, no failed request, and axe-core (WCAG 2.2 A and AA and best practice) finds nothing."""
    wrong: dict[str, list[str]] = {}
    for kind, address in kinds(built_site).items():
        with opened(chromium, site_url + address, size, scheme) as (page, faults):
            found = faults_of(Axe().run(page)) + faults
            if found:
                wrong[f"{kind} {address}"] = found
    assert not wrong


def test_nothing_is_wider_than_the_narrowest_phone(chromium: Browser, site_url: str, built_site: Path) -> None:
    """At 320 px (WCAG 2.2, 1.4.10 Reflow) no page scrolls sideways."""
    wide = {}
    pages = sorted(path.relative_to(built_site).as_posix() for path in built_site.rglob("*.html"))
    assert len(pages) > len(kinds(built_site))
    for address in pages:
        with opened(chromium, f"{site_url}/{address}", NARROW) as (page, _):
            width = page.evaluate("document.documentElement.scrollWidth")
            if width > NARROW["width"]:
                wide[address] = width
    assert not wide


def test_every_page_carries_the_policy(built_site: Path) -> None:
    """Each HTML file of the site, 404 and static pages too, has exactly one content-security policy and no inline handler."""
    pages = sorted(built_site.rglob("*.html"))
    assert len(pages) > 10
    for path in pages:
        html = path.read_text(encoding="utf-8")
        assert html.count('http-equiv="Content-Security-Policy"') == 1, path
        assert "unsafe-inline" not in html, path


def test_lesson_and_home_have_targets_for_a_thumb(chromium: Browser, site_url: str, built_site: Path) -> None:
    """On the phone every link and control of home and lesson sheets is at least 44 px high or wide enough to press (WCAG 2.5.5)."""
    script = """() => [...document.querySelectorAll('article a, article button, article label, article summary, article input')]
      .filter(e => e.getClientRects().length && !e.closest('p, .inline'))
      .map(e => [e.outerHTML.slice(0, 90), e.getBoundingClientRect().height, (e.closest('label') || e).getBoundingClientRect().height])
      .filter(([, own, label]) => Math.max(own, label) < 44)"""
    small = {}
    for kind, address in kinds(built_site).items():
        if kind == "home" or kind.startswith("lesson"):
            with opened(chromium, site_url + address, PHONE) as (page, _):
                found = page.evaluate(script)
                if found:
                    small[kind] = found[:3]
    assert not small
