"""Home: every planned week by class, what could not be planned, the units. A script opens this week."""

from __future__ import annotations

from trivet.model.department import Department
from trivet.model.page import Page
from trivet.model.plan import Plans
from trivet.pages.build_info import BuildInfo
from trivet.pages.decisions import decisions
from trivet.pages.home_weeks import terms
from trivet.pages.links import HOME
from trivet.pages.render import render
from trivet.pages.spoken import long_date
from trivet.pages.stations import tags
from trivet.pages.units_page import unit_lines
from trivet.pages.words import Words


def home_page(department: Department, plans: Plans, build: BuildInfo, words: Words) -> Page:
    """Return the home page."""
    body = render(
        "home.html",
        words,
        school=department.school.settings.name,
        stations=tags(words),
        terms=terms(department, plans, words),
        not_planned=tuple(
            words("home.not_planned_line", class_id=each.run.class_id, unit=_title(each.run.unit, department), why=each.reason)
            for each in plans.not_planned
        ),
        decisions=decisions(plans),
        units=unit_lines(department, plans, HOME, words),
        built=long_date(build.date, words),
    )
    return Page(HOME, {"title": words("home.title"), "kind": "home", "lang": words.language, "search": False}, body)


def _title(slug: str, department: Department) -> str:
    return department.units[slug].title if slug in department.units else slug
