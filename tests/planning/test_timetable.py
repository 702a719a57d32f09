"""The timetable against worked values and its own promises; full enumeration stands in `test_every_timetable`."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.model.school import Defaults
from trivet.planning.costs import Costs, DayParts, costs, overhead, shortest_period
from trivet.planning.day import deal
from trivet.planning.headcount import by_size
from trivet.planning.minutes import RoundRange
from trivet.planning.timetable import NoTimetable, Timetable, timetable


def nine_teams(*, full: bool = False, at_home: bool = False, defaults: Defaults | None = None, students: int = 36) -> Costs:
    """36 students in nine teams, a card of 1.5 min reading: a launch of 6.5 min."""
    return costs(defaults or Defaults(), by_size(students, 4), 13, full_expectations=full, at_home=at_home)


def left_for_stations(period: int, parts: DayParts, made: Costs) -> Fraction:
    """Minutes left for each station, before rounding down and the bounds."""
    return Fraction(2 * period - overhead(parts, made), 2 * parts.rounds)


def test_worked_overhead() -> None:
    """An ordinary day with one round costs 19.5 min besides the station: 4 + 2 + 6.5 + 1 + 5 + 1 (the design's worked value)."""
    assert overhead(DayParts(1), nine_teams()) == 39


@pytest.mark.parametrize(
    ("period", "rounds", "ordinary", "first"),
    [(45, 1, 25.5, 22.5), (52, 1, 32.5, 29.5), (90, 2, 30.5, 29)],
)
def test_worked_minutes_for_stations(period: int, rounds: int, ordinary: float, first: float) -> None:
    """Minutes left in a 45-, 52- and 90-minute period, on an ordinary day and on a first day with full expectations."""
    assert left_for_stations(period, DayParts(rounds), nine_teams()) == Fraction(ordinary)
    assert left_for_stations(period, DayParts(rounds, first=True), nine_teams(full=True)) == Fraction(first)


def test_worked_shortest_periods() -> None:
    """The shortest period that holds a round of 20 is 39.5 min on an ordinary day and 42.5 on a full first day, as the design works out."""
    assert overhead(DayParts(1), nine_teams()) + 40 == 79
    assert shortest_period(20, nine_teams(full=True)) == 85


def test_the_four_days_of_the_example() -> None:
    """Nine teams, a launch of 7, 52-minute periods, stations from 21 to 23: three rounds of 23 and a fourth day to write."""
    made = replace(nine_teams(students=31), launch=14)
    plan = timetable([52] * 6, RoundRange(21, 23), made, 2)
    assert plan == Timetable(23, (1, 1, 1, 0), 24, True)
    assert deal(52, DayParts(1, first=True), 23, made).surplus == 0
    assert deal(52, DayParts(0, write_up=24), 23, made).surplus == 46


def test_short_days_are_passed_over() -> None:
    """A meeting that holds neither a round nor the write-up is passed over, and the first day is the first with a round."""
    made = nine_teams(full=True)
    plan = timetable([38, 52, 24, 52, 52, 52], RoundRange(20, 22), made, 2)
    assert isinstance(plan, Timetable)
    assert plan.rounds == (0, 1, 0, 1, 1, 0)
    assert plan.day(0) is None
    assert plan.day(1) == DayParts(1, first=True)
    assert plan.day(3) == DayParts(1)


def test_evidence_makes_the_write_up_short_or_is_left_out() -> None:
    """The evidence line is a choice: it is held where the shorter write-up saves a day, and left out where it would cost one."""
    made = nine_teams(full=True)
    saved = timetable([52, 52, 52 + 4], RoundRange(20, 22), made, 2)
    assert saved == Timetable(22, (1, 1, 1), 24, True)
    given_up = timetable([43, 52, 60], RoundRange(20, 20), made, 2)
    assert given_up == Timetable(20, (1, 1, 1), 40, False)


def test_stations_shrink_to_what_all_days_hold() -> None:
    """Where one day of the plan cannot hold the target, all rounds take the most that it can."""
    plan = timetable([52, 45, 52, 52], RoundRange(21, 29), nine_teams(), 2)
    assert isinstance(plan, Timetable)
    assert plan.station_minutes == 25
    assert left_for_stations(45, DayParts(1), nine_teams()) == Fraction(51, 2)


def test_nothing_fits() -> None:
    """Where no meeting holds a first round, the answer says the shortest period that would and the longest there is."""
    made = nine_teams(full=True)
    assert timetable([38, 42, 40], RoundRange(20, 22), made, 2) == NoTimetable(0, 85, 42)
    assert timetable([], RoundRange(20, 22), made, 2) == NoTimetable(0, 85, 0)
    assert timetable([52, 52], RoundRange(20, 22), made, 2) == NoTimetable(2, 85, 52)


@settings(max_examples=150, deadline=None)
@given(
    students=st.integers(1, 60),
    period=st.integers(30, 100),
    launch=st.integers(6, 20),
    station=st.integers(10, 30),
    rounds=st.integers(0, 3),
    first=st.booleans(),
    write_up=st.sampled_from((0, 24, 40)),
    per_team=st.sampled_from((0.5, 0.75, 1)),
)
def test_a_day_is_filled_exactly(
    *, students: int, period: int, launch: int, station: int, rounds: int, first: bool, write_up: int, per_team: float
) -> None:
    """What is dealt fills the period exactly; reflection keeps its least; left-over minutes go where the design says, in its order."""
    made = costs(replace(Defaults(), reflection_per_team=per_team), by_size(students, 4), launch, full_expectations=True, at_home=False)
    parts = DayParts(rounds, first=first and rounds > 0, write_up=write_up)
    least = overhead(parts, made) + 2 * station * rounds
    if least > 2 * period:
        with pytest.raises(ValueError, match="half minutes more"):
            deal(period, parts, station, made)
        return
    dealt = deal(period, parts, station, made)
    stretched = (dealt.evidence, dealt.reflection - made.reflection, dealt.pack_up - made.pack_up, dealt.surplus)
    assert least + sum(stretched) == 2 * period
    assert min(stretched) >= 0
    assert dealt.reflection >= max(10, by_size(students, 4).teams * Fraction(str(per_team)) * 2)
    assert dealt.evidence == (4 if rounds and 2 * period - least >= 4 else 0)
    assert dealt.pack_up == made.pack_up or dealt.reflection == made.reflection_most
    assert dealt.surplus == 0 or dealt.pack_up == 6
