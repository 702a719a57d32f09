"""All units of the department on one page, shortly."""

from __future__ import annotations

from dataclasses import dataclass

from trivet.model.department import Department
from trivet.model.page import Page
from trivet.model.plan import Plans
from trivet.pages.links import UNITS, relative, student_address, unit_address
from trivet.pages.render import render
from trivet.pages.spoken import grades
from trivet.pages.stations import Tag, tag
from trivet.pages.unit_bar import plans_of
from trivet.pages.words import Words


@dataclass(frozen=True, slots=True)
class UnitLine:
    """A unit in a list."""

    title: str
    href: str
    cards: str
    question: str
    facts: tuple[str, ...]
    stations: tuple[tuple[Tag, str], ...]
    classes: str


def units_page(department: Department, plans: Plans, words: Words) -> Page:
    """Return the list of units."""
    body = render("units.html", words, units=unit_lines(department, plans, UNITS, words))
    return Page(UNITS, {"title": words("units.title"), "kind": "units", "lang": words.language, "search": False}, body)


def unit_lines(department: Department, plans: Plans, page: str, words: Words) -> tuple[UnitLine, ...]:
    """Return every unit by title, as seen from `page`."""
    ordered = sorted(department.units.values(), key=lambda unit: (unit.title.casefold(), unit.slug))
    return tuple(
        UnitLine(
            title=unit.title,
            href=relative(page, unit_address(unit.slug)),
            cards=relative(page, student_address(unit.slug)),
            question=unit.question,
            facts=(*unit.standards, grades(unit.grades, words)),
            stations=tuple((tag(s.kind, words), s.title or words(f"station.titles.{s.kind}")) for s in unit.stations),
            classes=", ".join(plan.class_id for plan in plans_of(unit, plans)),
        )
        for unit in ordered
    )
