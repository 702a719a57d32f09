"""What the unit Float or sink? tells teachers and students is true: handbook values, tolerances, data, minutes."""

from __future__ import annotations

import csv
import math
import re
from datetime import date, timedelta
from itertools import pairwise
from pathlib import Path

import pytest

from trivet.model.department import Department
from trivet.model.station import Kind
from trivet.model.unit import Unit
from trivet.planning.department import plan_department
from trivet.planning.minutes import needed

HANDBOOK_G_PER_ML = {"aluminum": 2.700, "zinc": 7.134, "copper": 8.960}
"""CRC Handbook of Chemistry and Physics, densities of the elements, as in package chemicals 1.5.2."""

IRON, CALCITE = 7.870, 2.710
"""From the same tables."""

CYLINDER_ML = {25: 0.34, 100: 1.00}
"""Class B tolerance by capacity: ASTM E1272-02 (2012), Table 1."""

BALANCE_G = 0.1
"""From memory: a balance that reads to 0.1 g is right to 0.1 g."""

ROD_ML = math.pi / 4 * 1.27**2 * 6.0
"""12.7 mm across, 60 mm long."""


def tolerance(density: float, cylinder: int = 25) -> float:
    """Root-sum-square in g/mL: the balance once, the cylinder for both readings."""
    volume_share = math.hypot(CYLINDER_ML[cylinder], CYLINDER_ML[cylinder]) / ROD_ML
    mass_share = BALANCE_G / (density * ROD_ML)
    return density * math.hypot(volume_share, mass_share)


def worst(density: float) -> tuple[float, float]:
    """The lowest and highest density that the tolerances leave open when all of them go one way."""
    mass, off = density * ROD_ML, 2 * CYLINDER_ML[25]
    return (mass - BALANCE_G) / (ROD_ML + off), (mass + BALANCE_G) / (ROD_ML - off)


@pytest.fixture
def unit(demo: Department) -> Unit:
    return demo.units["float-or-sink"]


def rows(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_expected_densities_are_the_handbooks_with_the_instruments_tolerance(unit: Unit) -> None:
    """Each expected value is the handbook's to two places, and its tolerance is the propagated one to two places."""
    expected = {one.of.split()[0]: (one.value, one.tolerance) for one in unit.hands_on.expected}
    assert expected == {
        metal: (f"{round(density, 2):.2f} g/mL", f"{tolerance(density):.2f} g/mL") for metal, density in HANDBOOK_G_PER_ML.items()
    }


def test_the_three_rods_stay_apart_even_at_the_very_worst(unit: Unit) -> None:
    """The bounds in the notes are right to a hundredth, and no two of them overlap."""
    bounds = [worst(density) for density in HANDBOOK_G_PER_ML.values()]
    printed = re.findall(r"\| ±[0-9.]+ \| ([0-9.]+) to ([0-9.]+) \|", unit.body)
    assert [float(bound) for pair in printed for bound in pair] == pytest.approx([bound for pair in bounds for bound in pair], abs=0.01)
    assert all(lighter[1] < heavier[0] for lighter, heavier in pairwise(bounds))


def test_what_the_notes_say_does_not_work_does_not(unit: Unit) -> None:
    """A 100 mL cylinder cannot part zinc from copper; iron and zinc, calcite and aluminum are too close for 25 mL."""
    zinc, copper = HANDBOOK_G_PER_ML["zinc"], HANDBOOK_G_PER_ML["copper"]
    assert f"7.13 ± {tolerance(zinc, 100):.2f} and 8.96 ± {tolerance(copper, 100):.2f}" in unit.body
    assert copper - zinc < math.hypot(tolerance(zinc, 100), tolerance(copper, 100))
    assert copper - zinc > math.hypot(tolerance(zinc), tolerance(copper))
    assert worst(zinc)[1] > worst(IRON)[0]
    assert CALCITE - HANDBOOK_G_PER_ML["aluminum"] < tolerance(CALCITE)


def test_the_rods_fit_the_cylinder_as_the_notes_say(unit: Unit) -> None:
    """Masses and volume follow from the size; from 12 mL the water stays under the 25 mL mark."""
    assert f"takes up {ROD_ML:.1f} mL" in unit.body
    masses = [f"{density * ROD_ML:.1f} g" for density in HANDBOOK_G_PER_ML.values()]
    assert all(mass in unit.body for mass in masses), masses
    assert "about 19.6 mL" in unit.body
    assert pytest.approx(19.6, abs=0.05) == 12 + ROD_ML


def test_the_other_class_measured_what_these_rods_would_give(root: Path) -> None:
    """Every density follows from its readings and lies within the worst case of exactly one metal; no column holds a name."""
    found = rows(root / "units/float-or-sink/data/another-class.csv")
    assert len(found) == 27
    assert not any("name" in title.lower() for title in found[0])
    metals = {"1": "zinc", "2": "copper", "3": "aluminum"}
    for row in found:
        density = float(row["mass (g)"]) / (float(row["water after (mL)"]) - float(row["water before (mL)"]))
        assert f"{density:.2f}" == row["density (g/mL)"]
        fits = [metal for metal, handbook in HANDBOOK_G_PER_ML.items() if worst(handbook)[0] <= density <= worst(handbook)[1]]
        assert fits == [metals[row["rod"]]]
        assert float(row["water after (mL)"]) <= 25


def test_printed_blocks_float_or_sink_by_their_density(root: Path) -> None:
    """The cards for a class without devices agree with water at 20 °C (IAPWS-95, 998.207 kg/m³)."""
    for row in rows(root / "units/float-or-sink/data/blocks.csv"):
        assert row["in water"] == ("floats" if float(row["mass (g)"]) < 0.998207 * float(row["volume (mL)"]) else "sinks")


def test_the_report_and_the_teachers_table_hold_the_same_numbers(unit: Unit) -> None:
    """The story's table is the unit's data, with one point off the line, and the boat pushes aside its own mass of water."""
    assert unit.teacher_led.read is not None
    assert unit.teacher_led.data is not None
    told = [tuple(cells) for cells in re.findall(r"\| \d \| (\S+) \| (\S+) \|", unit.teacher_led.read.text)]
    assert told == list(unit.teacher_led.data.rows)
    slopes = [float(mass) / float(volume) for volume, mass in told]
    on_the_line = slopes[:3] + slopes[4:]
    assert max(on_the_line) - min(on_the_line) < 0.05
    off_mL = float(told[3][0]) - float(told[3][1]) / (sum(on_the_line) / 4)
    assert off_mL > 2 * CYLINDER_ML[100], "more than two readings of a 100 mL cylinder can explain"
    assert round(51.2 / 0.998207) == 51


def test_the_minutes_of_the_three_stations(demo: Department, unit: Unit) -> None:
    """Online needs 19, hands-on 21, teacher-led 20 minutes: a needed round of 21."""
    asks = needed(unit, demo.school.settings.defaults)
    assert [asks.of(kind).minutes for kind in Kind] == [19, 21, 20]
    assert asks.minutes == 21


def test_p1_works_on_four_days_with_rounds_of_23_minutes(demo: Department) -> None:
    """31 students, 52-minute periods from Monday 2026-11-30: three rounds of 23 minutes, the write-up on the fourth day."""
    plan = plan_department(demo).of("p1", "float-or-sink")
    assert plan is not None
    assert [(day.date, day.minutes) for day in plan.days] == [(date(2026, 11, 30) + timedelta(days=n), 52) for n in range(4)]
    assert [one.minutes for one in plan.rounds] == [23, 23, 23]
    assert [block.minutes for block in plan.days[0].blocks if block.kind == "expectations"] == [1], "its third unit this year"
    assert [block.minutes for block in plan.days[3].blocks if block.kind == "write_up"] == [12]


def test_spanish_cards_have_the_same_numbers(unit: Unit) -> None:
    """Every number on an English card stands on the Spanish one, so that no amount was lost in translation."""
    spanish = next(one for one in unit.translations if one.language == "es")
    for station in unit.stations:
        text = spanish.stations[station.kind]
        for step, translated in zip(station.steps, text.steps, strict=True):
            assert sorted(re.findall(r"\d+(?:\.\d+)?", step.text)) == sorted(re.findall(r"\d+(?:\.\d+)?", translated)), translated


def test_spanish_safety_notes_and_materials_have_the_same_numbers(unit: Unit) -> None:
    """Each safety note and each thing has its Spanish line with the same numbers: 45 and 49 °C, 25 mL, 0.1 g."""
    spanish = next(one for one in unit.translations if one.language == "es").stations[unit.hands_on.kind]
    own = (*unit.hands_on.safety_notes, *(line.item for line in unit.hands_on.materials))
    for said, translated in zip(own, (*spanish.safety_notes, *spanish.materials), strict=True):
        assert sorted(re.findall(r"\d+(?:\.\d+)?", said)) == sorted(re.findall(r"\d+(?:\.\d+)?", translated)), translated
