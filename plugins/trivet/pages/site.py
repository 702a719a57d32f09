"""All pages and assets of a department: the one recipe of this package."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from trivet.model.department import Department
from trivet.model.page import Page, Site
from trivet.model.plan import Plans
from trivet.model.problem import Problem
from trivet.pages.build_info import BuildInfo
from trivet.pages.calendar_files import calendar_files
from trivet.pages.data_files import data_files
from trivet.pages.home_page import home_page
from trivet.pages.lesson_page import lesson_page
from trivet.pages.prep_page import prep_page
from trivet.pages.problem_page import problem_pages, school_problem_page
from trivet.pages.student_page import student_pages
from trivet.pages.style import style_assets
from trivet.pages.unit_page import unit_page
from trivet.pages.units_page import units_page
from trivet.pages.whom_page import whom_pages
from trivet.pages.words import load_words
from trivet.pages.year_page import year_page

__all__ = ["BuildInfo", "make_site"]


def make_site(
    department: Department | None, plans: Plans, problems: Sequence[Problem], build: BuildInfo, sources: Mapping[str, str]
) -> Site:
    """Return the site. A unit that could not be read has a page with its problems; without a department home is such a page.

    `sources` gives the text of a file by its path, for the lines that a problem shows.
    """
    words = load_words()
    if department is None:
        pages = [school_problem_page(problems, sources, words)]
    else:
        pages = [
            home_page(department, plans, build, words),
            units_page(department, plans, words),
            prep_page(department, plans, build, words),
            year_page(department, plans, build, words),
            *(page for unit in department.units.values() for page in _unit_pages(unit.slug, department, plans, build)),
            *(lesson_page(plan, department, plans, build, words) for plan in plans.plans if plan.days),
            *whom_pages(department, plans, build, words),
            *problem_pages(department, problems, sources, words),
        ]
    calendars = calendar_files(department, plans, words) if department else ()
    return Site(tuple(pages), (*style_assets(page.body for page in pages), *data_files(plans, build), *calendars))


def _unit_pages(slug: str, department: Department, plans: Plans, build: BuildInfo) -> list[Page]:
    unit = department.units[slug]
    return [unit_page(unit, department, plans, build, load_words()), *student_pages(unit, department, build)]
