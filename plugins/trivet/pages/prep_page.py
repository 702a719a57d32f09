"""Prep: what all classes need together, by week, by term and over the year. A script opens this week."""

from __future__ import annotations

from trivet.model.department import Department
from trivet.model.page import Page
from trivet.model.plan import Plans
from trivet.pages.build_info import BuildInfo
from trivet.pages.links import PREP
from trivet.pages.prep_week import SpanView, span_view, week_title
from trivet.pages.render import render
from trivet.pages.spoken import long_date, month_day
from trivet.pages.words import Words
from trivet.planning.department_materials import Span, department_materials


def prep_page(department: Department, plans: Plans, build: BuildInfo, words: Words) -> Page:
    """Return the page for whoever gets the materials ready."""
    found = department_materials(department, plans)
    days = sorted(day.date for plan in plans.plans for day in plan.days)

    def week(span: Span) -> SpanView:
        last = max(day for day in days if span.first <= day <= span.last)
        return span_view(span, week_title(span, words), last.isoformat(), department, words)

    def whole(span: Span) -> SpanView:
        title = words(
            "prep.span", name=span.name or words("prep.year"), first=month_day(span.first, words), last=month_day(span.last, words)
        )
        return span_view(span, title, "", department, words)

    body = render(
        "prep.html",
        words,
        weeks=tuple(week(span) for span in found.weeks),
        wholes=tuple(whole(span) for span in (*found.terms, *((found.year,) if found.year else ()))),
        built=long_date(build.date, words),
    )
    return Page(PREP, {"title": words("prep.title"), "kind": "prep", "lang": words.language, "search": False}, body)
