"""The year for a department lead: classes by weeks, what asks for a decision, each class in words, standards."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from trivet.model.department import Department
from trivet.model.page import Page
from trivet.model.plan import Plan, Plans
from trivet.model.school import Term
from trivet.model.standards import CODES, HOW_MANY
from trivet.pages.build_info import BuildInfo
from trivet.pages.decisions import decisions
from trivet.pages.links import YEAR, calendar_address, lesson_address, relative, unit_address
from trivet.pages.render import render
from trivet.pages.spoken import long_date, month_day, sentence_list
from trivet.pages.when import run_of, when_lines
from trivet.pages.words import Words
from trivet.pages.year_strip import closed_days, mondays_of, strips, unit_numbers
from trivet.planning.class_years import ClassYear, class_years
from trivet.planning.covered import Covered, covered
from trivet.planning.dates import school_days
from trivet.planning.halves import spoken
from trivet.planning.timed_runs import time_runs


@dataclass(frozen=True, slots=True)
class UnitKey:
    """A unit's number on the strip, its title and its page."""

    number: int
    title: str
    href: str


@dataclass(frozen=True, slots=True)
class RunLine:
    """A unit of a class with its dates."""

    number: int
    title: str
    href: str
    dates: str


@dataclass(frozen=True, slots=True)
class ClassLine:
    """A class: what a first round of its units needs, and its units in order."""

    class_id: str
    name: str
    teacher: str
    meets: str
    period: str
    runs: tuple[RunLine, ...]
    calendar: str
    calendar_name: str


@dataclass(frozen=True, slots=True)
class StandardLine:
    """A code with the units that name it and who meets it."""

    code: str
    units: str
    classes: str
    again: str


def year_page(department: Department, plans: Plans, build: BuildInfo, words: Words) -> Page:
    """Return the page of the year."""
    numbers = unit_numbers(plans.plans)
    found = covered(department, plans.plans)
    met = [each for each in found if each.classes]
    calendar = department.school.calendar
    days = [day.date for day in school_days(calendar)]
    years = class_years(department, time_runs(department))
    body = render(
        "year.html",
        words,
        weeks=len(mondays_of(calendar)),
        strips=strips(department, plans, numbers, years, words),
        summary=(words("year.school_days", n=len(days)), *_summary(plans, numbers, met, words)),
        units=tuple(UnitKey(number, department.units[slug].title, relative(YEAR, unit_address(slug))) for slug, number in numbers.items()),
        has_least=any(each.least for each in years),
        has_first=any(plan.way == "whole_class" for plan in plans.plans),
        decisions=decisions(plans),
        classes=tuple(_class(each, department, plans, numbers, words) for each in years),
        standards=tuple(_standard(each, department, words) for each in met),
        unused=tuple(_standard(each, department, words) for each in found if not each.classes),
        missing=tuple(_missing({each.code for each in met}, words)),
        closed=closed_days(calendar, words),
        terms=tuple(_term(term, days, words) for term in calendar.terms),
        built=long_date(build.date, words),
    )
    return Page(YEAR, {"title": words("year.title"), "kind": "year", "lang": words.language, "search": False}, body)


def _summary(plans: Plans, numbers: Mapping[str, int], met: list[Covered], words: Words) -> tuple[str, ...]:
    ours = sum(each.code in CODES for each in met)
    classes = len({plan.class_id for plan in plans.plans})
    return (
        words("year.runs", n=len(plans.plans), units=words("year.units", n=len(numbers)), classes=words("year.classes", n=classes)),
        words("year.met", n=ours, all=len(CODES)),
    )


def _class(each: ClassYear, department: Department, plans: Plans, numbers: Mapping[str, int], words: Words) -> ClassLine:
    school_class = department.school.classes[each.class_id]
    own = sorted((plan for plan in plans.plans if plan.class_id == each.class_id and plan.days), key=lambda plan: plan.days[0].date)
    return ClassLine(
        class_id=each.class_id,
        name=school_class.name,
        teacher=department.school.settings.teachers.get(school_class.teacher, ""),
        meets=words("year.meets", n=each.meetings, minutes=f"{each.minutes:,}"),
        period=_period(each, words),
        runs=tuple(_run(plan, department, numbers, words) for plan in own),
        calendar=relative(YEAR, calendar_address(each.class_id)),
        calendar_name=words("year.calendar_of", class_id=each.class_id),
    )


def _period(each: ClassYear, words: Words) -> str:
    """What a first round needs, and which days are too short for it."""
    if each.least is None or each.most is None:
        return words("year.no_unit")
    key = "year.shortest" if each.least == each.most else "year.shortest_of_several"
    text = words(key, least=spoken(each.least), most=spoken(each.most))
    if each.too_short:
        days = [words("year.short_day", name=short.day_type.replace("_", " "), minutes=short.minutes) for short in each.too_short]
        text += words("year.too_short", days=sentence_list(days, words))
    return text


def _run(plan: Plan, department: Department, numbers: Mapping[str, int], words: Words) -> RunLine:
    dates = _span(plan.days[0].date, plan.days[-1].date, words)
    said = [words("year.whole_class", dates=dates) if plan.way == "whole_class" else dates, *when_lines(plan, department, words)]
    run = run_of(plan, department)
    lost = [day for day in (run.lost if run else ()) if day <= plan.days[-1].date]
    if lost:
        said.append(words("year.lost", days=sentence_list([month_day(day, words) for day in lost], words)))
    return RunLine(
        number=numbers[plan.unit],
        title=department.units[plan.unit].title,
        href=relative(YEAR, lesson_address(plan.class_id, plan.unit)),
        dates="; ".join([said[0], *(each[0].lower() + each[1:] for each in said[1:])]),
    )


def _term(term: Term, days: Sequence[date], words: Words) -> tuple[str, str]:
    """Its name, its dates and how many days of school it has."""
    held = sum(term.first <= day <= term.last for day in days)
    return term.name, words("year.term_days", dates=_span(term.first, term.last, words), days=words("year.school_days", n=held))


def _span(first: date, last: date, words: Words) -> str:
    if first == last:
        return month_day(first, words)
    return words("year.span", first=month_day(first, words), last=month_day(last, words))


def _standard(each: Covered, department: Department, words: Words) -> StandardLine:
    return StandardLine(
        code=each.code,
        units=sentence_list((department.units[slug].title for slug in each.units), words),
        classes=", ".join(each.classes),
        again=words("year.again", classes=sentence_list(each.again, words), n=len(each.again)) if each.again else "",
    )


def _missing(met: set[str], words: Words) -> Iterator[str]:
    """The codes that no run covers, a line for each core idea."""
    for idea, count in HOW_MANY.items():
        numbers = [str(number) for number in range(1, count + 1) if f"MS-{idea}-{number}" not in met]
        if numbers:
            yield words("year.missing_of", idea=f"MS-{idea}", numbers=", ".join(numbers))
