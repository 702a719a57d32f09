"""Needed minutes of stations, as parts that sum."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.support.department import tiny_unit, words
from trivet.model.school import Defaults
from trivet.model.station import Kind, Prompt, Question, Reading, Step
from trivet.planning.minutes import needed, round_range
from trivet.planning.reading_rates import WORDS_A_MINUTE, reading_halves, words_a_minute


def test_parts_sum() -> None:
    """Each station's minutes are the sum of its named parts, and the needed round is the largest of the three."""
    asks = needed(tiny_unit(), Defaults())
    spoken = {s.kind: [(p.kind, p.minutes) for p in s.parts] for s in asks.stations}
    assert spoken == {
        Kind.ONLINE: [("explore", 2), ("step", 3), ("step", 6), ("step", 6)],
        Kind.HANDS_ON: [("set_up", 2), ("step", 3), ("step", 9), ("step", 5), ("clean_up", 2)],
        Kind.TEACHER_LED: [("reading", 4.5), ("question", 4), ("question", 4), ("quick_check", 3)],
    }
    assert [s.minutes for s in asks.stations] == [17, 21, 15.5]
    assert all(s.minutes == sum(p.minutes for p in s.parts) for s in asks.stations)
    assert asks.minutes == 21
    assert asks.of(Kind.ONLINE).idle_minutes(23) == 6
    assert asks.of(Kind.HANDS_ON).idle_minutes(20) == 0


def test_alternatives_cost_nothing() -> None:
    """A support or challenge prompt is an alternative to a core question and takes no minutes."""
    questions = (Question("Why?", "x"), Question("Which?", "y", Prompt.SUPPORT), Question("What if?", "z", Prompt.CHALLENGE))
    asks = needed(tiny_unit(teacher_led={"questions": questions, "quick_check": (), "read": None}), Defaults())
    assert asks.of(Kind.TEACHER_LED).minutes == 4


def test_own_exploring_time_and_teacher_led_steps() -> None:
    """A unit's own exploring time replaces the default, none leaves the part out, and steps count at every station."""
    unit = tiny_unit(online={"explore_minutes": 0.0}, teacher_led={"steps": (Step("Sort the cards.", 1.5, 3),)})
    asks = needed(unit, Defaults())
    assert [p.kind for p in asks.of(Kind.ONLINE).parts] == ["step"] * 3
    assert asks.of(Kind.TEACHER_LED).minutes == 20
    assert needed(tiny_unit(online={"explore_minutes": 3.5}), Defaults()).of(Kind.ONLINE).minutes == 18.5


def test_reading_rates() -> None:
    """The 25th percentile of silent reading by grade (Spichtig et al. 2016), the nearest grade outside the table."""
    assert WORDS_A_MINUTE == {5: 123, 6: 128, 7: 133, 8: 134, 9: 141}
    assert [words_a_minute(grade) for grade in (3, 5, 6, 9, 12)] == [123, 123, 128, 141, 141]


def test_reading_is_rounded_up_to_halves() -> None:
    """200 words take a sixth grade 1.56 min, so 2.0 in halves (references 5.9); exact multiples are not rounded."""
    assert reading_halves(200, 6) == 4
    assert reading_halves(128, 6) == 2
    assert reading_halves(129, 6) == 3
    assert reading_halves(0, 6) == 0
    unit = tiny_unit(teacher_led={"read": Reading("story.md", words(200), 200)})
    assert needed(unit, Defaults()).of(Kind.TEACHER_LED).parts[0].minutes == 2.0


@pytest.mark.parametrize(
    ("step_minutes", "bounds", "expected"),
    [
        (21.0, None, (21, 23)),
        (12.0, None, (20, 20)),
        (18.5, None, (20, 20)),
        (21.5, None, (22, 23)),
        (29.5, None, (30, 30)),
        (30.0, None, (30, 30)),
        (30.5, None, None),
        (31.0, (20, 35), (31, 33)),
        (14.0, (15, 25), (15, 16)),
    ],
)
def test_range_of_a_round(step_minutes: float, bounds: tuple[int, int] | None, expected: tuple[int, int] | None) -> None:
    """low is the larger of bound and need, target two minutes more but not over the bound; above the bound there is none."""
    unit = tiny_unit(
        online={"steps": (Step("Work.", 1),), "explore_minutes": 0.0},
        hands_on={"steps": (Step("Work.", step_minutes),), "set_up_minutes": 0.0, "clean_up_minutes": 0.0},
        teacher_led={"read": None, "questions": (), "quick_check": ()},
        round_minutes=bounds,
    )
    found = round_range(unit, Defaults())
    assert (found and (found.low, found.target)) == expected


def test_stretch_goes_to_the_bound() -> None:
    """A unit that asks to stretch aims at its upper bound; a department's own bounds and extra minutes are used."""
    unit = tiny_unit(stretch=True)
    found = round_range(unit, Defaults())
    assert found is not None
    assert found.target == 30
    wider = round_range(tiny_unit(), replace(Defaults(), round_least=15, round_most=40, target_extra=4.5))
    assert wider is not None
    assert (wider.low, wider.target) == (21, 25)
