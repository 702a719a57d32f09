"""The plan of a run with what only the private folder knows."""

from __future__ import annotations

from collections.abc import Mapping

from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.plan import Plan
from trivet.planning.department import plan_department, plan_privately


def private_plan(department: Department, leveled: Mapping[str, Lock], class_id: str, unit: str) -> Plan | None:
    """Return the plan of a run with its leveled groups where the private folder has some, else the published one; None without dates.

    `leveled` are the class's leveled groups by unit. A unit that is published is the same for a teacher's eyes as on the site.
    """
    if unit in leveled and (class_id, unit) not in department.locks:
        return plan_privately(department, leveled[unit])
    return plan_department(department).of(class_id, unit)
