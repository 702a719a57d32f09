"""The questions of the teacher's own station, all of them: which group needs which is never published."""

from __future__ import annotations

from dataclasses import dataclass

from trivet.model.station import Prompt
from trivet.model.unit import Unit
from trivet.pages.words import Words


@dataclass(frozen=True, slots=True)
class Asked:
    """A question, what to listen for, and who it is for ("" for everyone)."""

    ask: str
    listen_for: str
    who: str


def questions(unit: Unit, words: Words) -> tuple[Asked, ...]:
    """Return the core questions with their support and challenge, in the author's order."""
    return tuple(
        Asked(each.ask, each.listen_for, "" if each.prompt is Prompt.CORE else words(f"unit.prompt.{each.prompt}"))
        for each in unit.teacher_led.questions
    )
