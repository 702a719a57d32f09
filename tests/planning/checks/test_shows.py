"""Whether an expected difference can be seen, against published densities and the tolerances of graduated cylinders.

Sources: densities, CRC tables as kept in the package chemicals 1.5.2: Al 2700, calcite 2710, Zn 7134,
Fe 7870 kg/m³. Class B tolerances of graduated cylinders: ASTM E1272-02(2012), Table 1: 25 mL ±0.34, 50 mL ±0.50, 100 mL ±1.00.
A balance of 0.1 g reads within ±0.1 g (from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.support.department import tiny_unit
from trivet.model.problem import Problem, Severity
from trivet.model.station import Expected
from trivet.planning.checks.shows import check_shows

CLASS_B_ML = {25: 0.34, 50: 0.50, 100: 1.00}
BALANCE_G = 0.1
DENSITY = {"aluminum": 2.700, "calcite": 2.710, "zinc": 7.134, "iron": 7.870}


def found(*expected: Expected) -> list[Problem]:
    return list(check_shows(tiny_unit(hands_on={"expected": expected})))


def codes(*expected: Expected) -> list[str]:
    return [problem.code for problem in found(*expected)]


def density(name: str, cylinder: int, *, volume_ml: float = 20.0, readings: int = 2) -> Expected:
    """The density of a solid of 20 mL: one weighing, and the water read before and after, propagated as independent errors."""
    value = DENSITY[name]
    relative = sqrt((BALANCE_G / (value * volume_ml)) ** 2 + readings * (CLASS_B_ML[cylinder] / volume_ml) ** 2)
    return Expected(name, f"{value:.3f} g/mL", f"{value * relative:.3f} g/mL", "CRC")


def test_the_worst_case_of_the_references() -> None:
    """54.0 g in 20.0 mL lie between 2.65 and 2.75 in a 25 mL cylinder, between 2.57 and 2.85 in one of 100 mL (worked by hand)."""
    for cylinder, (low, high) in {25: (2.65, 2.75), 100: (2.57, 2.85)}.items():
        off = CLASS_B_ML[cylinder]
        assert (round(53.9 / (20 + off), 2), round(54.1 / (20 - off), 2)) == (low, high)


@pytest.mark.parametrize("cylinder", [25, 50, 100])
def test_aluminum_and_calcite_cannot_be_told_apart(cylinder: int) -> None:
    """2.70 and 2.71 g/mL lie within any cylinder's tolerance (worked by hand)."""
    (problem,) = found(density("aluminum", cylinder), density("calcite", cylinder))
    assert (problem.code, problem.severity) == ("cannot-tell-apart", Severity.WARNING)
    assert problem.what.startswith("students cannot tell calcite from aluminum: they differ by 0.01 g/mL, ")


@pytest.mark.parametrize(("cylinder", "apart"), [(25, True), (50, True), (100, False)])
def test_zinc_and_iron_need_a_smaller_cylinder(cylinder: int, *, apart: bool) -> None:
    """Ten percent apart: a 25 or 50 mL cylinder can separate them, one of 100 mL cannot (worked by hand)."""
    assert codes(density("zinc", cylinder), density("iron", cylinder)) == ([] if apart else ["cannot-tell-apart"])


def test_the_worst_case_is_told_as_advice() -> None:
    """With ±5.2 % each (one reading in a 100 mL cylinder) zinc and iron are apart by root-sum-square, not in the worst case."""
    (problem,) = found(Expected("zinc", "7.134 g/mL", "5.2 %"), Expected("iron", "7.87 g/mL", "± 5.2 %"))
    assert (problem.code, problem.severity) == ("barely-told-apart", Severity.ADVICE)
    assert "they differ by 0.736 g/mL, and at worst their tolerances allow 0.781 g/mL" in problem.what


@given(
    st.tuples(st.integers(0, 400), st.integers(0, 60)),
    st.tuples(st.integers(0, 400), st.integers(0, 60)),
)
def test_the_bounds_are_exact(one: tuple[int, int], other: tuple[int, int]) -> None:
    """Warned up to the root-sum-square, advised up to the sum, silent beyond: in tenths, compared as whole numbers."""
    difference, squares, worst = abs(one[0] - other[0]), one[1] ** 2 + other[1] ** 2, one[1] + other[1]
    wanted = ["cannot-tell-apart"] if difference**2 <= squares else ["barely-told-apart"] if difference <= worst else []
    assert (
        codes(
            *(
                Expected(name, f"{Decimal(value) / 10} cm", f"{Decimal(off) / 10} cm")
                for name, (value, off) in zip("ab", (one, other), strict=True)
            )
        )
        == wanted
    )


def test_the_boundary_of_a_right_triangle() -> None:
    """Tolerances of 3 and 4 allow exactly 5: five apart is hidden, a hair more is not (6-7-8: advice up to seven)."""
    for value, code in (
        ("15.00 cm", "cannot-tell-apart"),
        ("15.01 cm", "barely-told-apart"),
        ("17 cm", "barely-told-apart"),
        ("17.01 cm", None),
    ):
        assert codes(Expected("a", "10 cm", "3 cm"), Expected("b", value, "4 cm")) == ([code] if code else [])


def test_units_are_kept_apart() -> None:
    """Values in other units are not compared, spaces around a slash do not count, and each pair is told once."""
    assert codes(Expected("a", "2 cm", "1 cm"), Expected("b", "2 mm", "1 mm")) == []
    assert (
        codes(Expected("a", "2 g/mL", "1 g/mL"), Expected("b", "2 g / mL", "1"), Expected("c", "2 g/mL", "1 g/mL"))
        == ["cannot-tell-apart"] * 3
    )


@pytest.mark.parametrize("value", ["about nine", "20 to 30 cm", "20-30 cm", "2,70 g", "between 2 and 3 g", "the same as before", "(3) g"])
def test_what_cannot_be_read_is_left_alone(value: str) -> None:
    """A value without one number is not compared, and advice says what to write."""
    problems = found(Expected("a", value, "9 cm"), Expected("b", "25 cm", "9 cm"))
    assert [(problem.code, problem.severity) for problem in problems] == [("expected-unread", Severity.ADVICE)]
    assert problems[0].remedy.startswith("write a number and its unit, such as `value: ")


@pytest.mark.parametrize(
    ("value", "tolerance"),
    [
        ("1,200 birds", "50 birds"),
        ("about 1200 birds", "±50 birds"),
        ("~1200 birds", "+/- 50"),
        ("≈1200 birds", "5 %"),
        ("1200.0 birds", "4.5 percent"),
    ],
)
def test_ways_to_write_a_number(value: str, tolerance: str) -> None:
    """Thousands, `about` and signs of a tolerance are read."""
    assert codes(Expected("a", value, tolerance), Expected("b", "1210 birds", "1 birds")) == ["cannot-tell-apart"]


def test_numbers_below_zero() -> None:
    """A temperature below zero keeps its sign, with either minus."""
    assert codes(Expected("a", "-10 °C", "1 °C"), Expected("b", "10 °C", "1 °C"), Expected("c", "−10 °C", "1 °C")) == ["cannot-tell-apart"]


@pytest.mark.parametrize(
    ("expected", "wanted"),
    [
        ([Expected("a", "2 cm", ""), Expected("b", "2 cm", "")], []),
        ([Expected("a", "2 cm", "1 g"), Expected("b", "2 cm", "1 cm")], ["expected-unread"]),
        ([Expected("a", "2 cm", "small"), Expected("b", "2 cm", "1 cm")], ["expected-unread"]),
        ([], []),
    ],
)
def test_tolerances(expected: Sequence[Expected], wanted: list[str]) -> None:
    """Without a tolerance nothing is said; one in another unit, or none that can be read, is advice."""
    assert codes(*expected) == wanted
