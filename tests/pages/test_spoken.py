"""Numbers, times and amounts as a teacher reads them."""

from __future__ import annotations

from datetime import date, time
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.model.station import Material, Per
from trivet.pages import spoken
from trivet.pages.words import load_words
from trivet.planning.halves import spoken as planned_minutes

WORDS = load_words()


@pytest.mark.parametrize(
    ("value", "unit", "said"),
    [
        ("594", "mL", "594 mL"),
        ("40000", "mL", "40 L"),
        ("12250", "mL", "12.25 L"),
        ("1000", "mL", "1,000 mL"),
        ("11883", "mL", "11,883 mL"),
        ("12000", "", "12,000"),
        ("0.5", "g", "0.5 g"),
    ],
)
def test_much_of_a_thing_is_said_in_the_larger_unit(value: str, unit: str, said: str) -> None:
    """Ten thousand or more is said in the larger unit where that is brief; less stays beside its need, and a plain count never changes."""
    assert spoken.stock(Decimal(value), unit) == said


@pytest.mark.parametrize(("value", "said"), [(7, "7"), (7.5, "7½"), (0.5, "½"), (0, "0")])
def test_half_minutes_are_halves(value: float, said: str) -> None:
    """Minutes are whole or halves, and half a minute stands without a zero."""
    assert spoken.minutes(value) == said


@pytest.mark.parametrize(("when", "said"), [(time(8, 5), "8:05"), (time(12, 0), "12:00"), (time(13, 35), "1:35"), (time(0, 5), "12:05")])
def test_a_clock_time_is_a_schools(when: time, said: str) -> None:
    """Clock times have twelve hours and two digits of minutes."""
    assert spoken.clock(when) == said


@given(st.integers(min_value=0, max_value=400))
def test_minutes_are_said_as_planning_says_them(halves: int) -> None:
    """7, 7½, ½: the same words on pages as in the notes of a plan."""
    assert spoken.minutes(halves / 2) == planned_minutes(halves) or halves == 0


@pytest.mark.parametrize(("when", "said"), [(time(8, 5), "8:05"), (time(12, 0), "12:00"), (time(13, 15), "1:15"), (time(0, 30), "12:30")])
def test_a_clock_time_is_said_as_a_school_says_it(when: time, said: str) -> None:
    """Twelve hours, no leading zero."""
    assert spoken.clock(when) == said


def test_dates_amounts_and_lists() -> None:
    """US order of month and day; no trailing zeros and no exponent; a list as in a sentence."""
    assert spoken.short_date(date(2026, 11, 30), WORDS) == "Mon Nov 30"
    assert spoken.long_date(date(2026, 11, 30), load_words("es")) == "lun 30 nov 2026"
    assert [spoken.number(Decimal(n)) for n in ("0.10", "60", "6E+1", "40000", "0")] == ["0.1", "60", "60", "40,000", "0"]
    assert spoken.sentence_list(["1", "2", "3"], WORDS) == "1, 2 and 3"
    assert spoken.span([2, 3, 3], WORDS) == "2 or 3"
    assert spoken.span([2, 2.5, 5], WORDS) == "2 to 5"
    assert spoken.grades((7, 7), WORDS) == "grade 7"
    assert spoken.number_of("p1-07") == "07"


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (Material(Decimal(1), "balance 0.1 g", Per.TEAM, per_count=2), "1 balance 0.1 g per 2 teams"),
        (Material(Decimal(60), "water", Per.TEAM, unit="mL", used_up=True), "60 mL water per team, used up"),
        (Material(Decimal("0.5"), "salt", Per.PAIR, unit="g", used_up=True, spare=Decimal(3)), "0.5 g salt per pair, used up, spare 3"),
    ],
)  # fmt: skip
def test_a_line_of_materials_reads_as_it_was_written(line: Material, said: str) -> None:
    """The sentence form of the unit file comes back."""
    assert spoken.material(line, WORDS) == said
