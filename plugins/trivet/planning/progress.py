"""What a run has behind it: the part that planning the rest may not change."""

from __future__ import annotations

from dataclasses import dataclass

ROUNDS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """`rounds_left` counts those still to be held, one that was stopped included; its half minutes left are `resumes`, else 0.

    `begun`: a day with a round has been. `minutes` are those at a station so far, which the rest should match; None before the first.
    `every_evidence`: each day with a round had its evidence line. `written`: the write-up is done.
    """

    rounds_left: int = ROUNDS
    resumes: int = 0
    begun: bool = False
    minutes: int | None = None
    every_evidence: bool = True
    written: bool = False


NOTHING = Progress()
