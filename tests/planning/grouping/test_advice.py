"""What a pre-check says about how to group."""

from __future__ import annotations

import pytest

from trivet.planning.grouping.advice import Reason, advice, in_words

SEATS = tuple(range(1, 13))


def scores(*percents: int) -> dict[int, int]:
    return dict(enumerate(percents, start=1))


@pytest.mark.parametrize(
    ("taken", "reason"),
    [
        ({}, Reason.NOT_TAKEN),
        (scores(0, 0, 100, 100, 50, 50, 50), Reason.TOO_FEW),
        (scores(0, 40, 100, 80, 50, 50, 50, 50), Reason.SPLIT),
        (scores(0, 41, 100, 80, 50, 50, 50, 50), Reason.NOT_SPLIT),
        (scores(0, 40, 100, 79, 50, 50, 50, 50), Reason.NOT_SPLIT),
        (scores(*[50] * 12), Reason.NOT_SPLIT),
        (scores(*[0] * 6, *[100] * 6), Reason.SPLIT),
    ],
)
def test_the_rule(taken: dict[int, int], reason: Reason) -> None:
    """Two in three must have taken it; split is one in four at 40 % or less and one in four at 80 % or more, bounds included."""
    assert advice(taken, SEATS).reason is reason


def test_a_score_of_someone_else_does_not_count() -> None:
    """Only students of today's class count."""
    assert advice({99: 10}, SEATS).reason is Reason.NOT_TAKEN


def test_words() -> None:
    """The advice says what it rests on, and that the teacher decides; leveled groups are never drawn by it."""
    split = in_words(advice(scores(*[0] * 6, *[100] * 6), SEATS), leveled=False)
    assert "of the 12 who took the pre-check, 6 scored 40 % or less and 6 scored 80 % or more" in split
    assert "--leveled draws them" in split and split.endswith("so the choice is yours.")
    assert "as you have chosen" in in_words(advice(scores(*[0] * 6, *[100] * 6), SEATS), leveled=True)
    assert "Only 2 of 12 took" in in_words(advice(scores(1, 2), SEATS), leveled=False)
    assert "no pre-check of this unit was taken" in in_words(advice(None, SEATS), leveled=False)
