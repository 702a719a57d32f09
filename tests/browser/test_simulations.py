"""All simulations: the two other models against published values, and pages that ask nobody, keep nothing and fit every screen."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

import pytest
from playwright.sync_api import ViewportSize

from tests.browser.conftest import PHONE, Open, set_number

LAPTOP: ViewportSize = {"width": 1280, "height": 720}
NARROW: ViewportSize = {"width": 320, "height": 640}
UNITS = ("float-or-sink", "moving-plates", "beaks-and-seeds")


# moving-plates and beaks-and-seeds: the models


def test_a_plate_carries_islands_by_speed_times_age(open_sim: Open) -> None:
    """Kauai: 519 km in 5.1 million years is 10.2 cm a year; 2800 km in 28 million years is 10.0.

    Ages: Clague and Dalrymple 1987 (USGS Professional Paper 1350). 2800 km over 28 million years: McDougall 1979. 519 km: from memory.
    """
    page = open_sim("moving-plates").page
    got = page.evaluate(
        "import('./model.js').then(m => [m.speed_cm_per_year(519, 5.1), m.speed_cm_per_year(2800, 28), m.distance_km(10, 5.1)])"
    )
    assert got == pytest.approx([10.1765, 10.0, 510.0], abs=0.0001)
    set_number(page, "speed_cm_per_year", "10.2")
    set_number(page, "time_million_years", "5.1")
    page.click("#run")
    assert page.inner_text("#result") == "At 10.2 cm a year, the oldest island is 520 km away after 5.1 million years."
    assert page.locator(".island").count() == 6


def test_selection_against_a_recessive_trait_follows_the_textbook(open_sim: Open) -> None:
    """Half of the recessive birds live, from half of the copies: 0.4286, 0.3708, 0.3243, 0.2868, 0.2562; with all alive nothing changes.

    q' = q (1 - s q) / (1 - s q²), s = 0.5: the standard result of population genetics; Hardy and Weinberg 1908 for s = 0.
    """
    got = open_sim("beaks-and-seeds").page.evaluate(
        """import('./model.js').then(m => {
          const run = (q, small) => Array.from({length: 5}, () => q = m.next_copies(q, small, 1));
          return [run(0.5, 0.5), run(0.37, 1), m.next_copies(1, 0, 1)];
        })"""
    )
    assert got[0] == pytest.approx([0.4286, 0.3708, 0.3243, 0.2868, 0.2562], abs=0.00005)
    assert got[1] == pytest.approx([0.37] * 5, rel=1e-12)
    assert got[2] is None


def test_the_birds_run_as_the_notes_and_the_printed_years_say(open_sim: Open, root: Path) -> None:
    """The page's counts are those that data/years.csv prints for a class without devices."""
    printed = [line.split(",") for line in (root / "units/beaks-and-seeds/data/years.csv").read_text().splitlines()[1:]]
    page = open_sim("beaks-and-seeds").page
    for small in ("100", "50", "80"):
        page.click("#reset")
        set_number(page, "small", small)
        for _ in range(10):
            page.click("#run")
        shown = [row.split("\t")[3] for row in page.locator("#years").inner_text().splitlines()]
        assert shown == [count for lived, _, count in printed if lived == small]


# all three


@pytest.mark.parametrize("unit", UNITS)
def test_a_simulation_asks_nobody_and_keeps_nothing(open_sim: Open, unit: str) -> None:
    """Under the policy of the site it loads its own files alone, touches no storage, logs nothing, and forgets its trials on a reload."""
    sim = open_sim(unit)
    button = sim.page.locator(".go")
    button.click()
    rows = sim.page.locator("tbody tr")
    used = rows.count()
    sim.page.reload()
    assert sim.page.locator("tbody tr").count() < used
    assert sim.faults == []
    assert {url for url in sim.requests if not url.startswith((sim.base + "/", "data:"))} == set()


@pytest.mark.parametrize("unit", UNITS)
@pytest.mark.parametrize("screen", [NARROW, PHONE, LAPTOP], ids=lambda screen: str(screen["width"]))
def test_a_simulation_fits_every_screen(open_sim: Open, unit: str, screen: ViewportSize) -> None:
    """Nothing scrolls sideways, controls are 44 px or more, text 13 px or more, a phone's first screen has the main action."""
    page = open_sim(unit, screen).page
    page.locator(".go").click()
    assert page.evaluate("document.documentElement.scrollWidth") <= screen["width"]
    small = page.evaluate(
        "[...document.querySelectorAll('button, input, select, summary, a')].map(e => [e.id, e.getBoundingClientRect()])"
        ".filter(([, r]) => r.width > 0 && (r.width < 43.99 || r.height < 43.99)).map(([id, r]) => `${id} ${r.width} x ${r.height}`)"
    )
    assert small == []
    texts = page.evaluate(
        "[...document.querySelectorAll('body *')].filter(e => [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim()) "
        "&& !['TITLE', 'OPTION', 'NOSCRIPT'].includes(e.tagName.toUpperCase()) && e.getClientRects().length)"
        ".map(e => {const svg = e.ownerSVGElement; const scale = svg ? svg.getBoundingClientRect().width / svg.viewBox.baseVal.width : 1;"
        " return [e.textContent.slice(0, 30), parseFloat(getComputedStyle(e).fontSize) * scale]}).filter(([, px]) => px < 12.99)"
    )
    assert texts == []
    if screen is PHONE:
        box = page.locator(".go").bounding_box()
        assert box is not None
        assert box["y"] + box["height"] <= screen["height"]


@pytest.mark.parametrize("unit", UNITS)
def test_nothing_scrolls_sideways_at_twice_the_size(open_sim: Open, unit: str) -> None:
    """A phone 320 px wide with text at 200 % has room for 160 px: still no sideways scroll (WCAG 2.2, 1.4.10 and 1.4.4)."""
    page = open_sim(unit, {"width": 160, "height": 400}).page
    page.locator(".go").click()
    assert page.evaluate("document.documentElement.scrollWidth") <= 160
    assert page.locator("tbody tr").last.is_visible()


@pytest.mark.parametrize("unit", UNITS)
def test_every_control_has_a_name_and_every_result_is_said(open_sim: Open, unit: str) -> None:
    """Each input has a label or a spoken name, the picture has a text, and a status region holds the result."""
    page = open_sim(unit).page
    nameless = page.evaluate(
        "[...document.querySelectorAll('input, select, button')]"
        ".filter(e => !(e.getAttribute('aria-label') || e.labels?.length || e.textContent.trim())).map(e => e.id)"
    )
    assert nameless == []
    assert page.locator("svg[role=img]").count() == 1
    assert page.locator("#result[role=status]").inner_text() != ""
    assert page.get_attribute("html", "lang") == "en"
    assert page.locator("h1").count() == 1


@pytest.mark.parametrize("unit", UNITS)
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_text_stands_out_from_its_paper(open_sim: Open, unit: str, scheme: Literal["light", "dark"]) -> None:
    """Ink and second ink keep 4.5 to 1, control outlines 3 to 1, on both papers (WCAG 2.2, 1.4.3 and 1.4.11)."""
    page = open_sim(unit, scheme=scheme).page
    values = page.evaluate(
        "(() => {const s = getComputedStyle(document.documentElement); "
        "return Object.fromEntries(['paper', 'ink', 'ink-2', 'rule-mark', 'online'].map(n => [n, s.getPropertyValue('--' + n).trim()]))})()"
    )

    def luminance(color: str) -> float:
        parts = [int(color[at : at + 2], 16) / 255 for at in (1, 3, 5)]
        red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue

    def ratio(one: str, other: str) -> float:
        low, high = sorted((luminance(values[one]), luminance(values[other])))
        return (high + 0.05) / (low + 0.05)

    assert min(ratio("ink", "paper"), ratio("ink-2", "paper")) >= 4.5
    assert min(ratio("rule-mark", "paper"), ratio("online", "paper")) >= 3
