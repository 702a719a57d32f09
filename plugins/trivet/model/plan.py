"""A plan (`plan: 1`): one class, one unit, on real dates. Minutes are multiples of 0.5, exact."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, time
from decimal import Decimal

from trivet.model.lock import Groups
from trivet.model.problem import Problem
from trivet.model.school import Run
from trivet.model.station import Kind

BLOCK_KINDS = (
    "settle_in", "expectations", "places", "launch", "recap", "station", "clean_up", "move",
    "evidence", "reflection", "write_up", "pack_up",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Block:
    """A stretch of a day. `at` is minutes after the bell, `start` the clock rounded down; `round` from 1, None outside rounds."""

    kind: str
    at: float
    start: time
    minutes: float
    round: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Day:
    """One planned meeting of the class. Blocks and `surplus_minutes` add up to `minutes` exactly."""

    date: date
    day_type: str
    start: time
    end: time
    minutes: int
    surplus_minutes: float
    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Round:
    """One round. `stations`: letter to kind, None where groups are not public and the run rotates."""

    round: int
    date: date
    minutes: int
    stations: Mapping[str, Kind] | None
    half: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotCheck:
    """One open question to one student of a team. `kind`: first_step, your_job, record, done, safety, or own (the author's line)."""

    round: int
    team: str
    seat: str
    kind: str
    ask: str
    listen_for: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MaterialTotal:
    """What this run needs of one item; `have` is None where the inventory does not know it."""

    item: str
    need: Decimal
    unit: str
    use: str
    have: Decimal | None
    short: Decimal


@dataclass(frozen=True, slots=True)
class Caution:
    """A hazard tag with its caution and what protects."""

    hazard: str
    text: str
    protect: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Note:
    """A decision in plain words ("why 23 minutes?")."""

    code: str
    text: str


@dataclass(frozen=True, slots=True)
class Quality:
    """How good kept groups are, by the public ledger."""

    repeats: int
    pair_repeats: int
    proved_minimum: int | None
    role_spread: int


@dataclass(frozen=True, slots=True)
class PreCheck:
    """The pre-check, at the end of an earlier meeting."""

    date: date
    start: time
    minutes: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """All that was worked out for one run. `engine`, `drawn_on`, `groups`, `quality` are None where groups are not public."""

    unit: str
    class_id: str
    way: str
    engine: str | None
    drawn_on: date | None
    pre_check: PreCheck | None
    days: tuple[Day, ...]
    rounds: tuple[Round, ...]
    groups: Groups | None
    quality: Quality | None
    spot_checks: tuple[SpotCheck, ...]
    materials: tuple[MaterialTotal, ...]
    cautions: tuple[Caution, ...]
    notes: tuple[Note, ...]


@dataclass(frozen=True, slots=True)
class NotPlanned:
    """A run without a plan, with the reason in plain words."""

    run: Run
    reason: str


@dataclass(frozen=True, slots=True)
class Plans:
    """The plans of a department, in the order of runs.yml, what could not be planned, and the problems met on the way."""

    plans: tuple[Plan, ...]
    not_planned: tuple[NotPlanned, ...]
    problems: tuple[Problem, ...]

    def of(self, class_id: str, unit: str) -> Plan | None:
        """The plan of one run, or None."""
        return next((p for p in self.plans if p.class_id == class_id and p.unit == unit), None)
