"""What the unit Warm metal, cool water tells teachers and students is true: handbook values, tolerances, data, sizes, minutes."""

from __future__ import annotations

import csv
import math
import re
from pathlib import Path

import pytest

from trivet.model.department import Department
from trivet.model.station import Kind
from trivet.model.unit import Unit
from trivet.planning.cautions import at_hand
from trivet.planning.department import plan_department
from trivet.planning.minutes import needed
from trivet.reading.cards import card_texts
from trivet.reading.level import level

J_PER_G_K = {"aluminum": 0.897, "copper": 0.385, "iron": 0.4495, "water": 4.184}
"""CRC Handbook of Chemistry and Physics, molar heat capacity over molar mass (copper 0.384 to 0.385); water: IAPWS-95 at 20 °C."""

G_PER_ML = {"aluminum": 2.700, "copper": 8.960}
"""CRC Handbook of Chemistry and Physics."""

THERMOMETER_C = 1.0
"""From memory: a school thermometer is right to ±1 °C."""

RISE_C = math.hypot(THERMOMETER_C, THERMOMETER_C)
"""A rise is the difference of two readings: root-sum-square."""

DIFFERENCE_C = math.hypot(RISE_C, RISE_C)
WORST_DIFFERENCE_C = 4 * THERMOMETER_C
SCALD_LIMIT_C = 49
"""120 °F, above which an adult must be at hand (design, table of cautions)."""


def rise(material: str, grams: float, *, warm: float = 45, cool: float = 20, water: float = 60) -> float:
    """How far `water` grams at `cool` are warmed, in °C, without losses."""
    gives, takes = grams * J_PER_G_K[material], water * J_PER_G_K["water"]
    return gives * (warm - cool) / (gives + takes)


@pytest.fixture
def unit(demo: Department) -> Unit:
    return demo.units["warm-metal-cool-water"]


def rows(root: Path, name: str) -> list[dict[str, str]]:
    with (root / "units/warm-metal-cool-water/data" / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_expected_rises_follow_from_the_handbook(unit: Unit) -> None:
    """Each expected rise is worked out from masses and specific heats, to a tenth, with the tolerance of two readings."""
    found = [(float(one.value.split()[0]), float(str(one.tolerance).split()[0])) for one in unit.hands_on.expected]
    worked = [rise("water", 60), rise("aluminum", 150), rise("copper", 150)]
    assert [value for value, _ in found] == [round(value, 1) for value in worked]
    assert {tolerance for _, tolerance in found} == {round(RISE_C, 1)}
    for value, one in zip(worked, ("60 mL of water", "150 g of aluminum", "150 g of copper"), strict=True):
        low, high = value - 2 * THERMOMETER_C, value + 2 * THERMOMETER_C
        assert f"| {one} | {20 + value:.1f} °C | {value:.1f} °C | ±1.4 | {low:.1f} to {high:.1f} |" in unit.body


def test_the_thermometer_can_tell_aluminum_from_copper_and_not_iron_from_copper(unit: Unit) -> None:
    """Expected differences against the propagated tolerance, as the notes state them, for the discs, small discs and a cool box."""
    apart = rise("aluminum", 150) - rise("copper", 150)
    assert apart > 2 * DIFFERENCE_C
    assert apart == pytest.approx(WORST_DIFFERENCE_C, abs=0.1), "the notes say that at the very worst the two just touch"
    assert rise("iron", 150) - rise("copper", 150) < RISE_C
    assert f"iron gives a rise of {rise('iron', 150):.1f} °C, copper {rise('copper', 150):.1f} °C" in unit.body
    assert f"they give {rise('aluminum', 50):.1f} °C and {rise('copper', 50):.1f} °C" in unit.body
    assert rise("aluminum", 50) - rise("copper", 50) == pytest.approx(DIFFERENCE_C, abs=0.05)
    at_twenty = rise("aluminum", 150, warm=40) - rise("copper", 150, warm=40)
    assert f"still differ by {at_twenty:.1f} °C" in unit.body
    assert rise("aluminum", 150, warm=32) - rise("copper", 150, warm=32) < DIFFERENCE_C
    for metal, printed in (("aluminum", "0.35"), ("copper", "0.19")):
        assert f"{rise(metal, 150) - rise(metal, 150, warm=44):.2f}" == printed
        assert f"{printed} °C off the {metal}" in unit.body


def test_nothing_that_students_handle_is_above_the_limit(unit: Unit) -> None:
    """Every temperature on the hands-on card is 49 °C or less, the one above which to call the teacher; no adult must stand there."""
    hands_on = unit.hands_on
    texts = [step.text for step in hands_on.steps] + list(hands_on.safety_notes) + [line.item for line in hands_on.materials]
    told = [float(number) for text in texts for number in re.findall(r"([0-9.]+) °C", text)]
    assert max(told) == SCALD_LIMIT_C
    assert "never above 49 °C (120 °F)" in unit.body
    assert at_hand(unit) == ()
    assert hands_on.hazards == ("glass", "spill")


def test_the_discs_have_the_sizes_in_the_notes(unit: Unit) -> None:
    """150 g of a bar two inches across, to the millimeter, and 60 mL of water cover the aluminum one in the cups that are named."""
    face_cm2 = math.pi / 4 * 5.08**2
    heights = {metal: 150 / density / face_cm2 for metal, density in G_PER_ML.items()}
    assert f"{10 * heights['aluminum']:.0f} mm of aluminum or {10 * heights['copper']:.0f} mm of copper" in unit.body
    for wide_cm in (6.0, 6.8):
        level_cm = (60 + 150 / G_PER_ML["aluminum"]) / (math.pi / 4 * wide_cm**2)
        assert level_cm > heights["aluminum"]
    assert "60 to 68 mm wide" in unit.body


def test_the_other_class_measured_what_these_discs_would_give(root: Path) -> None:
    """Each rise follows from its readings and lies within the worst case of its row; every team has one order; no column holds a name."""
    found = rows(root, "another-class.csv")
    assert len(found) == 18
    assert not any("name" in title.lower() for title in found[0])
    what = {"60 mL warm water": ("water", 60), "150 g aluminum": ("aluminum", 150), "150 g copper": ("copper", 150)}
    orders = []
    for row in found:
        material, grams = what[row["into the cup"]]
        before, after = float(row["before (°C)"]), float(row["after (°C)"])
        assert f"{after - before:.1f}" == row["rise (°C)"]
        expected = rise(material, grams, warm=float(row["warm box (°C)"]), cool=20.5)
        assert abs(after - before - expected) <= 2 * THERMOMETER_C
        assert float(row["warm box (°C)"]) <= SCALD_LIMIT_C
        orders.append(after - before)
    assert all(orders[at] > orders[at + 1] > orders[at + 2] for at in range(0, 18, 3))


def test_printed_trials_follow_from_the_handbook(root: Path) -> None:
    """The trials for a class without devices are worked out for 100 g of water at 20 °C."""
    for row in rows(root, "cup.csv"):
        end = 20 + rise(row["material"], float(row["mass (g)"]), warm=float(row["start (°C)"]), water=100)
        assert row["end (°C)"] == f"{end:.1f}"


def test_the_notes_name_the_ends_on_the_screen(unit: Unit) -> None:
    """Ends, and the copper that does what 100 g of aluminum does, are those of the model."""
    ends = {material: f"{20 + rise(material, 100, water=100):.1f}" for material in J_PER_G_K}
    said = f"aluminum ends at {ends['aluminum']} °C, copper at {ends['copper']}, iron at {ends['iron']}, water at {ends['water']}"
    assert said in unit.body
    assert (
        f"200 g of aluminum ends at {20 + rise('aluminum', 200, water=100):.1f}, 50 g at {20 + rise('aluminum', 50, water=100):.1f}"
        in unit.body
    )
    assert f"needs {100 * J_PER_G_K['aluminum'] / J_PER_G_K['copper']:.0f} g" in unit.body
    shown = {grams for grams in range(20, 251) if f"{20 + rise('copper', grams, water=100):.1f}" == ends["aluminum"]}
    assert set(range(230, 236)) <= shown
    assert [grams for grams in range(20, 251, 10) if grams in shown] == [230], "to the nearest 10 g there is one answer"


def test_the_report_and_the_teachers_table_hold_the_same_numbers(unit: Unit) -> None:
    """The story's table is the unit's data; the cubes and four blocks follow from the handbook, one block is off by more than a reading."""
    assert unit.teacher_led.read is not None
    assert unit.teacher_led.data is not None
    story = unit.teacher_led.read.text
    told = [tuple(cells) for cells in re.findall(r"\| ([0-9]+) \| ([0-9.]+) \|", story)]
    assert told == list(unit.teacher_led.data.rows)
    for grams, measured in told:
        off = rise("copper", float(grams), water=50) - float(measured)
        assert (off > THERMOMETER_C) if grams == "150" else (0 <= off < 0.2)
    for metal, grams in (("copper", 179), ("aluminum", 54)):
        assert round(20 * G_PER_ML[metal]) == grams
        up = rise(metal, grams, water=50)
        assert f"rose by {up:.1f} °C, to {20 + up:.1f} °C" in story


def test_the_minutes_and_the_days(demo: Department, unit: Unit) -> None:
    """Stations need 19½, 21 and 20 minutes; both classes work on four days, p4 writes up on a short one."""
    asks = needed(unit, demo.school.settings.defaults)
    assert [asks.of(kind).minutes for kind in Kind] == [19.5, 21, 20]
    plans = plan_department(demo)
    p1, p4 = plans.of("p1", unit.slug), plans.of("p4", unit.slug)
    assert p1 is not None
    assert p4 is not None
    assert [day.day_type for day in p1.days] == ["regular"] * 4
    assert [day.day_type for day in p4.days] == ["regular", "regular", "regular", "early_release"]


def test_cards_and_story_are_at_or_below_grade_six(unit: Unit) -> None:
    """Flesch-Kincaid grade (Kincaid and others 1975) of the two long student cards and of the text to read, new words left out."""
    assert unit.teacher_led.read is not None
    for texts in (card_texts(unit.online), card_texts(unit.hands_on), (unit.teacher_led.read.text,)):
        found = level(texts, unit.new_words)
        assert found is not None
        assert found.grade <= unit.grades[0]


def test_spanish_cards_have_the_same_numbers(unit: Unit) -> None:
    """Every number on an English card stands on the Spanish one, so that no amount was lost in translation."""
    spanish = next(one for one in unit.translations if one.language == "es")
    for station in unit.stations:
        text = spanish.stations[station.kind]
        for step, translated in zip(station.steps, text.steps, strict=True):
            numbers = r"\d+(?:\.\d+)?"
            assert set(re.findall(numbers, step.text)) == set(re.findall(numbers, translated)), translated


def test_spanish_safety_notes_and_materials_have_the_same_numbers(unit: Unit) -> None:
    """Each safety note and each thing has its Spanish line with the same numbers: 45 and 49 °C, 25 mL, 0.1 g."""
    spanish = next(one for one in unit.translations if one.language == "es").stations[unit.hands_on.kind]
    own = (*unit.hands_on.safety_notes, *(line.item for line in unit.hands_on.materials))
    for said, translated in zip(own, (*spanish.safety_notes, *spanish.materials), strict=True):
        assert sorted(re.findall(r"\d+(?:\.\d+)?", said)) == sorted(re.findall(r"\d+(?:\.\d+)?", translated)), translated
