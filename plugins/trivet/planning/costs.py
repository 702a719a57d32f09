"""What the fixed parts of a lesson cost, in half minutes, and what the chosen parts of one day need."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from trivet.model.school import Defaults
from trivet.planning.halves import halves
from trivet.planning.headcount import Headcount


@dataclass(frozen=True, slots=True, kw_only=True)
class Costs:
    """Half minutes of everything in a run's days but the station minutes. `write_up` is None where it is done at home."""

    settle_in: int
    expectations: int
    places: int
    launch: int
    clean_up: int
    move: int
    evidence: int
    reflection: int
    reflection_most: int
    pack_up: int
    pack_up_most: int
    write_up: int | None
    write_up_with_evidence: int | None
    recap: int


@dataclass(frozen=True, slots=True)
class DayParts:
    """What one day holds: how many rounds, and the write-up's half minutes (0 for none). `first`: the unit's first day.

    `resumes` are the half minutes left of a round that was stopped on an earlier day; where it is not 0, that round is the first of
    `rounds`, and opens with a recap in place of a launch.
    """

    rounds: int
    first: bool = False
    write_up: int = 0
    resumes: int = 0

    def lengths(self, station_minutes: int) -> tuple[int, ...]:
        """Return the half minutes at the stations in each round, where a whole one lasts `station_minutes`."""
        whole = 2 * station_minutes
        return (self.resumes, *(whole for _ in range(self.rounds - 1))) if self.resumes else (whole,) * self.rounds


def costs(defaults: Defaults, headcount: Headcount, launch: int, *, full_expectations: bool, at_home: bool) -> Costs:
    """Work out the costs of a run. `launch` is in half minutes; the reflection lasts half a minute a team, but never under its least."""
    per_team = Fraction(str(defaults.reflection_per_team))
    reflection = max(halves(defaults.reflection_least), halves(headcount.teams * per_team))
    pack_up = halves(defaults.pack_up)
    return Costs(
        settle_in=halves(defaults.settle_in),
        expectations=halves(defaults.expectations_first if full_expectations else defaults.expectations_later),
        places=halves(defaults.places),
        launch=launch,
        clean_up=halves(defaults.clean_up),
        move=halves(defaults.move),
        evidence=halves(defaults.evidence),
        reflection=reflection,
        reflection_most=max(reflection, halves(defaults.reflection_most)),
        pack_up=pack_up,
        pack_up_most=max(pack_up, halves(defaults.pack_up_most)),
        write_up=None if at_home else halves(defaults.write_up),
        write_up_with_evidence=None if at_home else halves(defaults.write_up_with_evidence),
        recap=halves(defaults.recap),
    )


def overhead(parts: DayParts, costs: Costs) -> int:
    """Return the half minutes that a day needs besides its station minutes and its evidence line."""
    total = costs.settle_in + costs.reflection + costs.pack_up + parts.write_up
    if parts.first:
        total += costs.expectations
    if parts.rounds:
        total += costs.places + parts.rounds * (costs.launch + costs.clean_up) + (parts.rounds - 1) * costs.move
    if parts.resumes:
        total += costs.recap - costs.launch
    return total


def shortest_period(low: int, costs: Costs) -> int:
    """Return the half minutes of the shortest period that holds a round of `low` whole minutes as the first of a unit."""
    return overhead(DayParts(1, first=True), costs) + 2 * low
