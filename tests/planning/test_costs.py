"""What a day costs beside its station minutes.

The worked values are the design's (computations.md, section 1, 36 students in nine teams, a card of 1.5 min reading, defaults).
"""

from __future__ import annotations

from dataclasses import fields, replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.model.school import Defaults
from trivet.planning.costs import Costs, DayParts, costs, overhead, shortest_period
from trivet.planning.headcount import by_size

LAUNCH = 13
"""6.5 min."""


def spent(students: int = 36, defaults: Defaults | None = None, *, full: bool = False, at_home: bool = False) -> Costs:
    return costs(defaults or Defaults(), by_size(students, 4), LAUNCH, full_expectations=full, at_home=at_home)


def test_the_worked_values() -> None:
    """An ordinary day's 19.5 min, what a 45-, 52- and 90-minute period leaves a round, and the shortest periods for 20 minutes."""
    ordinary, full = spent(), spent(full=True)
    assert overhead(DayParts(1), ordinary) / 2 == 19.5
    for made, parts, left in (
        (ordinary, DayParts(1), (25.5, 32.5)),
        (full, DayParts(1, first=True), (22.5, 29.5)),
    ):
        assert tuple((2 * period - overhead(parts, made)) / 2 for period in (45, 52)) == left
    assert (180 - overhead(DayParts(2), ordinary)) / 2 / 2 == 30.5
    assert (180 - overhead(DayParts(2, first=True), full)) / 2 / 2 == 29
    assert overhead(DayParts(1), ordinary) + 40 == 79  # 39.5 min
    assert shortest_period(20, full) == 85  # 42.5 min


def test_a_day_of_nothing_but_the_write_up_has_no_places_and_no_launch() -> None:
    """Without a round nobody takes places, launches, moves or cleans up; settling in, reflection and packing up stay."""
    made = spent()
    assert overhead(DayParts(0, write_up=40), made) == made.settle_in + made.reflection + made.pack_up + 40


@given(st.integers(0, 3), st.booleans(), st.integers(0, 60))
def test_each_round_more_costs_a_launch_a_clean_up_and_a_move(rounds: int, first: bool, write_up: int) -> None:
    """The second and third round cost the same again, the first costs the places too and no move."""
    made = spent()
    more = overhead(DayParts(rounds + 1, first, write_up), made) - overhead(DayParts(rounds, first, write_up), made)
    assert more == made.launch + made.clean_up + (made.move if rounds else made.places)


@pytest.mark.parametrize("rounds", [1, 2, 3])
def test_a_resumed_round_opens_with_a_recap(rounds: int) -> None:
    """A round that goes on from an earlier day has a recap in place of its launch, and only the half minutes left of it."""
    made = spent()
    whole, resumed = DayParts(rounds), DayParts(rounds, resumes=11)
    assert overhead(whole, made) - overhead(resumed, made) == LAUNCH - made.recap
    assert whole.lengths(23) == (46,) * rounds
    assert resumed.lengths(23) == (11, *(46,) * (rounds - 1))


def test_no_round_has_no_length() -> None:
    """A day without a round has nothing at the stations."""
    assert DayParts(0, write_up=40).lengths(23) == ()


@pytest.mark.parametrize(("students", "halves"), [(0, 10), (1, 10), (7, 10), (23, 10), (37, 10), (41, 12), (44, 12)])
def test_reflection_is_never_under_five_minutes(students: int, halves: int) -> None:
    """Half a minute a team from eleven teams on, five minutes for any class below that."""
    assert spent(students).reflection == halves


def test_what_is_most_is_never_below_what_is_least() -> None:
    """A department that packs up for longer than the usual most, or reflects longer, is taken at its word."""
    made = spent(defaults=replace(Defaults(), pack_up=4.5, pack_up_most=3, reflection_least=12, reflection_most=10))
    assert (made.pack_up, made.pack_up_most) == (9, 9)
    assert (made.reflection, made.reflection_most) == (24, 24)


def test_at_home_the_write_up_costs_nothing() -> None:
    """A write-up done at home has no minutes in class, with or without evidence lines; else it has 20, or 12 with them."""
    assert (spent(at_home=True).write_up, spent(at_home=True).write_up_with_evidence) == (None, None)
    assert (spent().write_up, spent().write_up_with_evidence) == (40, 24)


@pytest.mark.parametrize(("full", "first"), [(False, False), (False, True), (True, False), (True, True)])
def test_expectations_are_for_the_first_day(*, full: bool, first: bool) -> None:
    """Only a unit's first day has expectations: three minutes in a class's first runs, one later."""
    made = spent(full=full)
    assert overhead(DayParts(1, first=first), made) - overhead(DayParts(1), made) == (0 if not first else 6 if full else 2)


@given(st.sampled_from([field.name for field in fields(Costs) if field.name not in ("launch", "reflection_most", "pack_up_most")]))
def test_odd_minutes_are_rounded_up_to_halves(name: str) -> None:
    """Whatever part a department sets to 0.7 min costs one minute: two halves, never one and never a fraction."""
    names = {
        "expectations": ("expectations_first", "expectations_later"),
        "reflection": ("reflection_least", "reflection_per_team"),
    }
    made = spent(7, replace(Defaults(), **dict.fromkeys(names.get(name, (name,)), 0.7)))
    assert getattr(made, name) == (5 if name == "reflection" else 2)
