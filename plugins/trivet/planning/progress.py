"""What a run has behind it: the part that planning the rest may not change."""

from __future__ import annotations

from dataclasses import dataclass

from trivet.planning.costs import Costs, DayParts

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

    def day_parts(self, done: int, rounds: int, *, write_up: int = 0) -> DayParts:
        """Return what a day with so many rounds holds, where `done` of those left are held before it."""
        opens = done == 0 and rounds > 0
        return DayParts(rounds, first=opens and not self.begun, write_up=write_up, resumes=self.resumes if opens else 0)

    def write_up(self, costs: Costs, *, short: bool) -> int:
        """Return the half minutes of the write-up that is left to do; `short` where each round day has its evidence line."""
        return 0 if self.written else (costs.write_up_with_evidence if short else costs.write_up) or 0


NOTHING = Progress()
