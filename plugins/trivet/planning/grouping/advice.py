"""What a pre-check says about how to group. Advice: the teacher decides."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

LOW, HIGH = 40, 80
"""In percent. Ours, no source: who scores 40 or less has most still to learn, who scores 80 or more has most of it."""

PART = 4
"""A class is split where one in four scores low and one in four scores high."""

TAKEN = (2, 3)
"""The share of the class that must have taken it, for it to speak for the class."""


class Reason(StrEnum):
    """What the advice rests on."""

    NOT_TAKEN = "not taken"
    TOO_FEW = "too few"
    SPLIT = "split"
    NOT_SPLIT = "not split"


@dataclass(frozen=True, slots=True)
class Advice:
    """How many of the class's `students` took the pre-check, and how many of them scored `low` and `high`."""

    reason: Reason
    students: int
    taken: int = 0
    low: int = 0
    high: int = 0

    @property
    def speaks(self) -> bool:
        """Whether enough took it for their scores to count as levels."""
        return self.reason in (Reason.SPLIT, Reason.NOT_SPLIT)


def advice(scores: Mapping[int, int] | None, seats: tuple[int, ...]) -> Advice:
    """Return what the scores (percent by seat) of a pre-check say for a class of `seats`."""
    mine = [scores[seat] for seat in seats if seat in scores] if scores else []
    count = len(seats)
    if not mine:
        return Advice(Reason.NOT_TAKEN, count)
    low, high = sum(score <= LOW for score in mine), sum(score >= HIGH for score in mine)
    if TAKEN[1] * len(mine) < TAKEN[0] * count:
        return Advice(Reason.TOO_FEW, count, len(mine), low, high)
    split = PART * low >= len(mine) and PART * high >= len(mine)
    return Advice(Reason.SPLIT if split else Reason.NOT_SPLIT, count, len(mine), low, high)


def in_words(given: Advice, *, leveled: bool) -> str:
    """Return the advice in plain words; `leveled` says that the teacher has chosen station groups of near levels already."""
    rule = f"one in {PART} at {LOW} % or less and one in {PART} at {HIGH} % or more"
    if given.reason is Reason.NOT_TAKEN:
        return "Advice: mixed groups, since no pre-check of this unit was taken."
    if given.reason is Reason.TOO_FEW:
        return f"Advice: mixed groups. Only {given.taken} of {given.students} took the pre-check, too few to speak for the class."
    found = f"of the {given.taken} who took the pre-check, {given.low} scored {LOW} % or less and {given.high} scored {HIGH} % or more"
    if given.reason is Reason.NOT_SPLIT:
        return f"Advice: mixed groups. The pre-check does not split the class ({rule} would): {found}."
    chosen = "as you have chosen" if leveled else "--leveled draws them, and they stay in the private folder"
    return (
        f"Advice: station groups of near levels ({chosen}). The pre-check splits the class: {found}. "
        "Studies favor neither way clearly (Lou and others 1996), so the choice is yours."
    )
