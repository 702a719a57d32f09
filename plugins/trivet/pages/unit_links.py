"""Links from a unit's own fields: what the online station opens, what a student does instead."""

from __future__ import annotations

from dataclasses import dataclass

from trivet.model.department import Department
from trivet.model.unit import Unit
from trivet.pages.prose_links import UnitLinks
from trivet.pages.words import Words


@dataclass(frozen=True, slots=True)
class FileLink:
    """Words, and an address where there is one."""

    text: str
    href: str = ""


def unit_links(unit: Unit, department: Department, page: str) -> UnitLinks:
    """Return what resolves addresses of `unit` as seen from `page`."""
    return UnitLinks(slug=unit.slug, files=unit.files, units=department.units, page=page)


def open_link(unit: Unit, links: UnitLinks, words: Words) -> FileLink | None:
    """Return the link that opens the online station's simulation, or None where its address leads nowhere."""
    found = links.link(unit.online.open)
    return FileLink(words("station.open"), found) if found else None


def task_link(unit: Unit, links: UnitLinks) -> FileLink:
    """Return the task that replaces the hands-on station: a link where it is a file, else its sentence."""
    text = unit.hands_on.instead
    return FileLink(text, (links.link(text) if text in unit.files else None) or "")
