"""Advisory numbers of people and floor.

Source: NSTA Safety Advisory Board, Overcrowding in the Instructional Space (2014, revised 2020): at most 24 students, and 60 net square
feet a student in a combined classroom and laboratory; the worked vectors are the design's references, 4.1: 24 need 1,440, 36 need 2,160.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.planning.class_size import area_advice, class_size_advice


@pytest.mark.parametrize("students", [0, 1, 7, 23, 24])
def test_up_to_24_nothing_is_said(students: int) -> None:
    """A class of 24 or fewer gets no advice, however many stand at the hazard."""
    assert class_size_advice(students, students) is None


@given(st.integers(25, 60), st.integers(0, 80))
def test_above_24_the_advice_defers(students: int, at_once: int) -> None:
    """The advice gives both numbers, says how many are at the hazard, and leaves the verdict to code and district."""
    said = class_size_advice(students, at_once)
    assert said is not None
    assert said.startswith(f"{students} students: NSTA advises at most 24 ")
    assert ("All of them are" in said) == (at_once >= students)
    assert (f"About {at_once} are" in said) == (at_once < students)
    assert said.endswith("Follow your local code and your district's policy.")


@pytest.mark.parametrize(
    ("students", "adults", "area", "short"),
    [
        (24, 0, 1440, False),
        (24, 0, 1439, True),
        (36, 0, 2160, False),
        (36, 0, 2159, True),
        (23, 1, 1440, False),
        (24, 1, 1440, True),
        (0, 0, 0, False),
    ],
)
def test_the_worked_areas(students: int, adults: int, area: int, *, short: bool) -> None:
    """The published areas are just enough, one square foot less is not, and adults count as people in the room."""
    assert (area_advice(students, adults, area) is not None) == short


def test_an_unknown_area_is_not_guessed() -> None:
    """A room whose floor nobody measured gets no advice."""
    assert area_advice(37, 2, None) is None


@given(st.integers(1, 60), st.integers(0, 4), st.integers(0, 4000))
def test_what_is_said_is_true(students: int, adults: int, area: int) -> None:
    """The figure for each person is under 60 whenever advice is given: rounding never makes it look like enough."""
    said = area_advice(students, adults, area)
    if said is not None:
        each = int(said.split(" people are ")[1].split()[0])
        assert each < 60
        assert each * (students + adults) <= area
        assert f"for {students + adults} people" in said
