"""All simulations: the three other models against published values, and pages that ask nobody, keep nothing and fit every screen."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

import pytest
from playwright.sync_api import ViewportSize

from tests.browser.conftest import PHONE, Open, set_number

LAPTOP: ViewportSize = {"width": 1280, "height": 720}
NARROW: ViewportSize = {"width": 320, "height": 640}
UNITS = ("float-or-sink", "moving-plates", "beaks-and-seeds", "warm-metal-cool-water")


# moving-plates, beaks-and-seeds and warm-metal-cool-water: the models


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


WATER_J_PER_G_K = 4.184
"""Water at 20 °C: IAPWS-95, 4.1841."""
METALS_J_PER_G_K = {"aluminum": (0.8965, 0.8975), "copper": (0.384, 0.3855), "iron": (0.449, 0.450)}
"""What the CRC Handbook's molar heat capacities over the molar masses leave open, with rounding."""


def warm_points() -> list[tuple[float, float, float]]:
    """Mass in g, specific heat in J/(g·K) and start in °C of forty warm things, over all that the page's controls allow."""
    heats = (0.897, 0.385, 0.4495, WATER_J_PER_G_K)
    points = [(20.0 + 37.3 * step % 230, heats[step % 4], 25.0 + 7.9 * step % 35) for step in range(36)]
    return [*points, (20, 0.385, 25), (250, WATER_J_PER_G_K, 60), (20, WATER_J_PER_G_K, 60), (250, 0.385, 25)]


def test_the_cup_gains_what_the_block_loses_at_forty_points(open_sim: Open) -> None:
    """What the one gives the other takes, the end lies between the two starts, and it is where a search for that balance finds it.

    Conservation of energy without losses; the search halves an interval and knows no formula for the end.
    """
    points = warm_points()
    assert len(set(points)) == 40
    found = open_sim("warm-metal-cool-water").page.evaluate(
        "points => import('./model.js').then(m => points.map(point => m.lower_into_cup(...point)))", [list(point) for point in points]
    )
    for (mass, heat, start), got in zip(points, found, strict=True):
        low, high = 20.0, start
        for _ in range(60):
            middle = (low + high) / 2
            too_cool = mass * heat * (start - middle) > 100 * WATER_J_PER_G_K * (middle - 20)
            low, high = (middle, high) if too_cool else (low, middle)
        assert got["end_C"] == pytest.approx(low, abs=1e-9), (mass, heat, start)
        assert 20 < got["end_C"] < start
        assert got["gave_J"] == pytest.approx(got["took_J"], rel=1e-9)
        assert got["gave_J"] == pytest.approx(mass * heat * (start - low), rel=1e-9)


def test_worked_mixtures_end_where_they_should(open_sim: Open) -> None:
    """100 g of water at 60 °C and at 20 °C meet at 40.0 °C; 50 g at 100 °C in 100 g at 20 °C end at 27.75, 24.08 and 23.52 °C.

    Aluminum, iron and copper, worked out by hand from the CRC Handbook's and IAPWS-95's values.
    """
    page = open_sim("warm-metal-cool-water").page
    mixed = "m.end_temperature_C(100 * 4.184, 60, 100 * 4.184, 20)"
    blocks = "m.MATERIALS.slice(0, 3).map(one => m.end_temperature_C(50 * one.specific_heat_J_per_g_K, 100, 418.4, 20))"
    halfway, ends = page.evaluate(f"import('./model.js').then(m => [{mixed}, {blocks}])")
    assert halfway == pytest.approx(40.0, abs=1e-12)
    assert ends == pytest.approx([27.75, 23.52, 24.08], abs=0.005)


def test_specific_heats_are_the_handbooks(open_sim: Open) -> None:
    """Each metal lies within what the handbook leaves open, and water is IAPWS-95's at 20 °C."""
    got = open_sim("warm-metal-cool-water").page.evaluate(
        "import('./model.js').then(m => Object.fromEntries(m.MATERIALS.map(one => [one.id, one.specific_heat_J_per_g_K])))"
    )
    assert got.pop("water") == pytest.approx(4.1841, abs=0.0005)
    assert set(got) == set(METALS_J_PER_G_K)
    assert all(low <= got[metal] <= high for metal, (low, high) in METALS_J_PER_G_K.items())


def test_the_cup_does_what_the_printed_trials_say(open_sim: Open, root: Path) -> None:
    """The page's ends are those that data/cup.csv prints for a class without devices, and the picture shows equal areas."""
    printed = [line.split(",") for line in (root / "units/warm-metal-cool-water/data/cup.csv").read_text(encoding="utf-8").splitlines()[1:]]
    assert len(printed) >= 16
    page = open_sim("warm-metal-cool-water").page
    for material, mass, start, _ in printed:
        page.select_option("#material", material)
        set_number(page, "mass_g", mass)
        set_number(page, "start_C", start)
        page.click("#lower")
        areas = page.evaluate("[...document.querySelectorAll('.moved')].map(r => r.width.baseVal.value * r.height.baseVal.value)")
        assert areas[0] == pytest.approx(areas[1], rel=1e-4)
    shown = [row.split("\t")[1:] for row in page.locator("#trials").inner_text().splitlines()]
    assert shown == printed


def test_a_trial_in_the_cup_counts_when_both_have_one_temperature(open_sim: Open) -> None:
    """With motion on, a control that moves too early leaves no line; a whole trial leaves one, said in words and by keyboard alone."""
    page = open_sim("warm-metal-cool-water", calm=False).page
    page.click("#lower")
    page.click("#mass_g-more")
    page.wait_for_timeout(1700)
    assert page.locator("#trials tr").count() == 0
    page.fill("#mass_g-typed", "100")
    page.press("#mass_g-typed", "Enter")
    page.locator("#trials tr").wait_for()
    said = page.inner_text("#result").replace("\xa0", " ")
    assert said == "The water goes from 20.0 to 24.4 °C with 100 g of aluminum at 45 °C. The block gave 1,847 J and the water took 1,847 J."


@pytest.mark.parametrize(("typed", "kept"), [("9999", "250"), ("-3", "20"), ("99.6", "100"), ("", "50")])
def test_a_mass_outside_the_limits_is_answered(open_sim: Open, typed: str, kept: str) -> None:
    """What is typed comes to the nearest whole number that the cup takes, and the page says what those are."""
    page = open_sim("warm-metal-cool-water").page
    set_number(page, "mass_g", typed)
    assert page.input_value("#mass_g-typed") == page.input_value("#mass_g-slid") == kept
    assert page.inner_text("#limit") == "Mass goes from 20 to 250 g, in whole numbers."


# all four


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
