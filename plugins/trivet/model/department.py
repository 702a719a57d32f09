"""A department: its school, its units and their kept groups, read from committed files alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from trivet.model.lock import Lock
from trivet.model.places import Places
from trivet.model.school import School
from trivet.model.unit import Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class Department:
    """`locks` by (class id, unit slug). `places` by file under school/ (`school/runs.yml`); a unit carries its own."""

    school: School
    units: Mapping[str, Unit]
    locks: Mapping[tuple[str, str], Lock] = field(default_factory=dict)
    places: Mapping[str, Places] = field(default_factory=dict, compare=False, repr=False)
