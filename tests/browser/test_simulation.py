"""The tank of Float or sink?: Archimedes and handbook values in its model, and a page that works by keyboard and ear."""

from __future__ import annotations

import pytest

from tests.browser.conftest import Open, set_number

WATER_KG_PER_M3 = 998.207
"""Water at 20 °C and 101.325 kPa: IAPWS-95 (Wagner and Pruss 2002)."""


# float-or-sink: the model


def fifty_points() -> list[tuple[float, float, float]]:
    """Mass in g, volume in mL, density of the liquid in kg/m³: blocks from a tenth to thirteen times as dense as their liquid.

    Liquids: water above; ethanol 789.3 and glycerol 1261.3 kg/m³ (CRC Handbook of Chemistry and Physics).
    """
    liquids = (WATER_KG_PER_M3, 789.3, 1261.3)
    points = [(5.0 + 17.3 * step % 245, 20.0 + 11.9 * step % 130, liquids[step % 3]) for step in range(44)]
    edges = [(99.0, 100.0), (100.0, 100.0), (49.0, 50.0), (50.0, 50.0), (5.0, 150.0), (250.0, 20.0)]
    return points + [(mass, volume, WATER_KG_PER_M3) for mass, volume in edges]


def test_the_tank_follows_archimedes_at_fifty_points(open_sim: Open) -> None:
    """A block floats exactly when it is less dense than its liquid, and then the share under it is the ratio of the densities.

    Archimedes, On Floating Bodies I, propositions 5 to 7.
    """
    points = fifty_points()
    assert len(points) == 50
    found = open_sim("float-or-sink").page.evaluate(
        """async (points) => {
          const m = await import('./model.js');
          return points.map(([mass, volume, liquid]) => ({
            outcome: m.outcome(mass, volume, liquid), share: m.immersed_fraction(mass, volume, liquid),
            under: m.immersed_depth_cm(mass, volume, liquid), level: m.liquid_level_cm(mass, volume, liquid),
            rest: m.rest_cm(mass, volume, liquid), height: m.block_height_cm(volume), density: m.density_kg_per_m3(mass, volume)}));
        }""",
        [list(point) for point in points],
    )
    outcomes = set()
    for (mass, volume, liquid), got in zip(points, found, strict=True):
        block = mass / (volume * 1e-6) * 1e-3
        floats = block < liquid
        share = min(1.0, block / liquid)
        outcomes.add(got["outcome"])
        assert got["outcome"] == ("floats" if floats else "sinks"), (mass, volume, liquid)
        assert got["density"] == pytest.approx(block, rel=1e-12)
        assert got["share"] == pytest.approx(share, rel=1e-12)
        assert got["height"] == pytest.approx(volume / 36, rel=1e-12)
        assert got["under"] == pytest.approx(share * volume / 36, rel=1e-12)
        assert got["level"] == pytest.approx(10 + share * volume / 240, rel=1e-12), "what is pushed aside, over a floor of 20 by 12 cm"
        assert got["rest"] == pytest.approx(got["level"] - got["under"] if floats else 0, abs=1e-9)
        if floats:
            weight_of_liquid_pushed_aside_g = share * volume * liquid / 1000
            assert weight_of_liquid_pushed_aside_g == pytest.approx(mass, rel=1e-12)
    assert outcomes == {"floats", "sinks"}


def test_equal_densities_hover(open_sim: Open) -> None:
    """A block exactly as dense as its liquid neither floats nor sinks, with all of it under."""
    page = open_sim("float-or-sink").page
    got = page.evaluate("import('./model.js').then(m => [m.outcome(80, 100, 800), m.immersed_fraction(80, 100, 800)])")
    assert got == ["hovers", 1]


def test_handbook_densities_of_the_liquids(open_sim: Open) -> None:
    """The liquids have the densities of the handbooks, within the last place printed there (IAPWS-95; CRC Handbook)."""
    page = open_sim("float-or-sink").page
    got = page.evaluate("import('./model.js').then(m => Object.fromEntries(m.LIQUIDS.map(l => [l.id, l.density_kg_per_m3])))")
    assert got == {
        "water": pytest.approx(WATER_KG_PER_M3, abs=0.0005),
        "ethanol": pytest.approx(789.3, abs=0.05),
        "glycerol": pytest.approx(1261.3, abs=0.05),
    }


def test_every_block_that_the_sliders_allow_floats_flat(open_sim: Open) -> None:
    """Height over base stays under 1 / sqrt(1.5), so that drawing every block flat is true at any density.

    Metacentric height of a square log, base b, height h, share s under: b²/(12 h s) - h (1 - s)/2 > 0 for all s when h/b < 1/√1.5.
    """
    page = open_sim("float-or-sink").page
    height, base = page.evaluate("import('./model.js').then(m => [m.block_height_cm(m.LIMITS.volume_mL.most), m.BLOCK_BASE_CM])")
    assert all(base**2 / (12 * height * s) - height * (1 - s) / 2 > 0 for s in (n / 200 for n in range(1, 200)))


# float-or-sink: the page


def test_the_lesson_can_be_done_with_the_keyboard(open_sim: Open) -> None:
    """Typing numbers and pressing Enter drops the block; the live region says what happened and the table gains a line."""
    sim = open_sim("float-or-sink")
    set_number(sim.page, "volume_mL", "100")
    sim.page.fill("#mass_g-typed", "50")
    sim.page.press("#mass_g-typed", "Enter")
    said = sim.page.locator("#result")
    assert said.get_attribute("role") == "status"
    assert said.inner_text() == "The 50 g block of 100 mL floats, 1.4 of its 2.8 cm under water."
    for _ in range(50):
        sim.page.press("#mass_g-slid", "ArrowRight")
    assert sim.page.input_value("#mass_g-typed") == "100"
    assert said.inner_text() == "The block hangs above the tank. Drop it."
    sim.page.focus("#drop")
    sim.page.keyboard.press("Enter")
    assert said.inner_text() == "The 100 g block of 100 mL sinks and rests on the floor of the tank."
    sim.page.press("#mass_g-less", "Enter")
    sim.page.press("#drop", "Space")
    rows = [row.inner_text().split("\t") for row in sim.page.locator("#trials tr").all()]
    assert rows == [["1", "100", "50", "water", "floats"], ["2", "100", "100", "water", "sinks"], ["3", "100", "99", "water", "floats"]]


@pytest.mark.parametrize(("volume", "floats", "sinks"), [("100", "99", "100"), ("50", "49", "50")])
def test_turning_points_are_where_the_unit_says(open_sim: Open, volume: str, floats: str, sinks: str) -> None:
    """The unit's notes name the last mass that floats and the first that sinks."""
    page = open_sim("float-or-sink").page
    set_number(page, "volume_mL", volume)
    for mass in (floats, sinks):
        set_number(page, "mass_g", mass)
        page.click("#drop")
    assert [row.inner_text().split("\t")[-1] for row in page.locator("#trials tr").all()] == ["floats", "sinks"]


@pytest.mark.parametrize(("typed", "kept"), [("9999", "250"), ("-3", "5"), ("12.6", "13"), ("", "40")])
def test_a_number_outside_the_limits_is_answered(open_sim: Open, typed: str, kept: str) -> None:
    """What is typed comes to the nearest whole number that the tank takes, and the page says what those are."""
    page = open_sim("float-or-sink").page
    set_number(page, "mass_g", typed)
    assert page.input_value("#mass_g-typed") == page.input_value("#mass_g-slid") == kept
    assert page.inner_text("#limit") == "Mass goes from 5 to 250 g, in whole numbers."


def test_start_over_and_the_cleared_table(open_sim: Open) -> None:
    """Start over leaves the table; a cleared table can be brought back until the next drop."""
    page = open_sim("float-or-sink").page
    set_number(page, "mass_g", "200")
    page.select_option("#liquid", "glycerol")
    page.click("#drop")
    page.click("#reset")
    assert [page.input_value("#mass_g-typed"), page.input_value("#volume_mL-typed"), page.input_value("#liquid")] == ["40", "60", "water"]
    assert page.locator("#trials tr").count() == 1
    page.click("#clear")
    assert page.locator("#trials tr").count() == 0
    page.click("#clear")
    assert page.inner_text("#trials tr").split("\t") == ["1", "60", "200", "glycerol", "sinks"]


def test_a_falling_block_counts_when_it_is_at_rest(open_sim: Open) -> None:
    """With motion on, a block lifted out while it falls leaves no line; one that comes to rest leaves one."""
    page = open_sim("float-or-sink", calm=False).page
    page.click("#drop")
    page.click("#mass_g-more")
    page.wait_for_timeout(1200)
    assert page.locator("#trials tr").count() == 0
    page.click("#drop")
    page.locator("#trials tr").wait_for()
    assert page.locator("#trials tr").count() == 1


def test_with_less_motion_the_block_is_at_rest_at_once(open_sim: Open) -> None:
    """Where the device asks for less motion nothing moves: the block stands at its place in the same turn."""
    page = open_sim("float-or-sink").page
    before = page.get_attribute(".block", "y")
    after = page.evaluate("document.getElementById('drop').click(), document.querySelector('.block').getAttribute('y')")
    page.wait_for_timeout(300)
    assert after != before
    assert page.get_attribute(".block", "y") == after


def test_the_picture_is_to_scale(open_sim: Open) -> None:
    """The drawn share of the block under the surface is the ratio of the densities, to a hundredth."""
    page = open_sim("float-or-sink").page
    set_number(page, "volume_mL", "120")
    set_number(page, "mass_g", "48")
    page.click("#drop")
    drawn = page.evaluate(
        "(() => {const n = (s, a) => Number(document.querySelector(s).getAttribute(a));"
        " return (n('.block', 'y') + n('.block', 'height') - n('.liquid', 'y')) / n('.block', 'height')})()"
    )
    assert drawn == pytest.approx(0.4 * 1000 / WATER_KG_PER_M3, abs=0.01)
