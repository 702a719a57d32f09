"""How much paper a run needs: station cards, help slips, write-ups."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from trivet.model.department import Department
from trivet.model.plan import Plan
from trivet.model.station import Kind
from trivet.planning.materials import working_together
from trivet.planning.stores.uses import headcount_of

SLIPS_A_TEAM = 2
"""Common practice, no source: a team that has used up two slips in a unit needs the teacher for more than a slip."""

SLIPS_A_PAGE = 6
"""As the sheet of slips is cut."""

KINDS = ("station_cards", "help_slips", "write_ups")


@dataclass(frozen=True, slots=True)
class Print:
    """A kind of paper with how many each run needs: `parts` of (class id, unit slug, count). `pages` of paper hold them."""

    kind: str
    count: int
    pages: int
    parts: tuple[tuple[str, str, int], ...]


def prints(department: Department, plans: Sequence[Plan]) -> tuple[Print, ...]:
    """Return the paper of some runs, all of which are printed before their first round; () for none.

    A station card is filled in, so everyone who works together at a station has one: a pair at the online station, a team at the
    other two, unless the unit says otherwise. A write-up is a student's own.
    """
    if not plans:
        return ()
    found = []
    for kind in KINDS:
        parts = tuple((plan.class_id, plan.unit, _count(kind, department, plan)) for plan in plans)
        count = sum(many for _, _, many in parts)
        pages = sum(-(-many // SLIPS_A_PAGE) for _, _, many in parts) if kind == "help_slips" else count
        found.append(Print(kind, count, pages, parts))
    return tuple(found)


def _count(kind: str, department: Department, plan: Plan) -> int:
    headcount = headcount_of(department, plan)
    if kind == "write_ups":
        return headcount.students
    if kind == "help_slips":
        return SLIPS_A_TEAM * headcount.teams
    usual = {Kind.ONLINE: "pairs"}
    return sum(
        working_together(station.work_in or usual.get(station.kind, "team"), group)
        for station in department.units[plan.unit].stations
        for group in headcount.groups.values()
    )
