"""The questions of the teacher's own station."""

from __future__ import annotations

from dataclasses import replace

from tests.support.department import tiny_unit
from trivet.model.station import Prompt, Question
from trivet.pages.questions import questions
from trivet.pages.words import load_words


def test_every_prompt_is_shown_to_everyone() -> None:
    """Core, support and challenge stand in the author's order; only the two alternatives say whom they are for."""
    unit = tiny_unit()
    asked = tuple(Question(f"Why {prompt}?", "a reason", prompt) for prompt in (Prompt.CHALLENGE, Prompt.CORE, Prompt.SUPPORT))
    shown = questions(replace(unit, teacher_led=replace(unit.teacher_led, questions=asked)), load_words("en"))
    assert [(each.ask, each.who) for each in shown] == [("Why challenge?", "challenge"), ("Why core?", ""), ("Why support?", "support")]
