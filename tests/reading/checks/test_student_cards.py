"""Student cards fit their page and their readers."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.reading.unit_files import codes, only, read
from tests.support.department import tiny_unit
from trivet.model.station import CheckItem
from trivet.reading.checks.student_cards import check


def test_long_card_is_warned_of_from_the_limit_on(tmp_path: Path) -> None:
    """A card of 1,500 characters passes, one more is a warning, in every language."""
    spare = 1500 - sum(map(len, ("Judge a claim about carts.", "Write a question for the next group.")))
    fits = read(tmp_path / "a", ("    questions:", f"    start alone: {'x' * spare}\n    questions:"))
    over = read(tmp_path / "b", ("    questions:", f"    start alone: {'x' * (spare + 1)}\n    questions:"))
    assert "card-too-long" not in codes(fits)
    assert only(over, "card-too-long").what.startswith("the student card has 1501 characters")


def test_reading_level_warns_above_the_grades(tmp_path: Path) -> None:
    """Hard text above the highest grade is a warning, above the lowest advice, and new words do not count."""
    hard = (
        "Change the slope and guess first.",
        "Investigate systematically which characteristics influence the distance that vehicles travel beforehand and afterwards.",
    )
    words = "systematically, characteristics, influence, investigate, beforehand, vehicles, distance, afterwards"
    assert str(only(read(tmp_path / "a", hard, ("6-8", "1-2")), "reading-level").severity) == "warning"
    assert str(only(read(tmp_path / "b", hard, ("6-8", "1-12")), "reading-level").severity) == "advice"
    assert "reading-level" not in codes(read(tmp_path / "c", hard, ("6-8", "1-2"), ("stations:\n", f"new words: {words}\nstations:\n")))


@pytest.mark.parametrize(
    ("answer", "given_away"), [("Both lose the same.", True), ("both lose THE same", True), ("the same", False), ("One gains.", False)]
)
def test_an_answer_that_stands_on_a_card_is_advice(answer: str, *, given_away: bool) -> None:
    """An answer of twelve letters or more that a card says, whatever its capitals and last period, is answered; a shorter one is not."""
    unit = tiny_unit(
        hands_on={"goal": "See that both lose the same heat."}, teacher_led={"quick_check": (CheckItem("What do they lose?", answer),)}
    )
    assert ("answer-on-card" in [problem.code for problem in check(unit)]) == given_away


@pytest.mark.parametrize(("seconds", "long"), [(None, False), (30, False), (31, True)])
def test_a_long_watch_is_advice(seconds: int | None, *, long: bool) -> None:
    """Half a minute of counting passes, a second more is advice."""
    assert ("long-watch" in [problem.code for problem in check(tiny_unit(hands_on={"watch_seconds": seconds}))]) == long
