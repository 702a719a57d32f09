"""The page of a unit, for teachers: minutes, three stations side by side, what to ask, safety, write-up, who runs it when."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from trivet.model.department import Department
from trivet.model.page import Page
from trivet.model.plan import Plan, Plans
from trivet.model.station import AnyStation, HandsOnStation, Kind, OnlineStation, Prompt, TeacherLedStation
from trivet.model.unit import Unit
from trivet.pages.build_info import BuildInfo
from trivet.pages.days import week
from trivet.pages.links import lesson_address, relative, student_address, unit_address
from trivet.pages.plot import data_view
from trivet.pages.prose import render_prose
from trivet.pages.prose_links import UnitLinks
from trivet.pages.questions import questions
from trivet.pages.render import render
from trivet.pages.spoken import grades, long_date, material, minutes, month_day, times
from trivet.pages.stations import StationBar, Tag, station_bar, tag
from trivet.pages.student_card import StepView
from trivet.pages.unit_bar import Link, plans_of, unit_bar
from trivet.pages.unit_links import FileLink, open_link, task, unit_links
from trivet.pages.words import Words
from trivet.planning.cautions import at_hand, cautions
from trivet.planning.hazards import POLICY
from trivet.planning.minutes import Needed, needed


@dataclass(frozen=True, slots=True)
class Term:
    """A word in the margin and what it says; `spoken` is what a person says or reads aloud, `href` where it can be seen."""

    word: str
    says: tuple[str, ...]
    spoken: bool = False
    href: str = ""


@dataclass(frozen=True, slots=True)
class StationView:
    """A station as the teacher's page shows it."""

    tag: Tag
    title: str
    goal: str
    bar: StationBar
    terms: tuple[Term, ...]
    steps: tuple[StepView, ...]
    after: tuple[Term, ...]
    open: FileLink | None


@dataclass(frozen=True, slots=True)
class RunView:
    """A class that runs the unit: where its sheet is, or why there is none."""

    class_id: str
    name: str
    dates: str
    href: str
    why: str


def unit_page(unit: Unit, department: Department, plans: Plans, build: BuildInfo, words: Words) -> Page:
    """Return the page of `unit`."""
    page = unit_address(unit.slug)
    defaults = department.school.settings.defaults
    asks = needed(unit, defaults)
    shown = next(iter(plans_of(unit, plans)), None)
    length = _round_minutes(shown, asks)
    links = unit_links(unit, department, page)
    body = render(
        "unit.html",
        words,
        unit=unit,
        bar=unit_bar(unit, plans, page, words),
        facts=(*unit.standards, grades(unit.grades, words)),
        week=week(shown, words) if shown else None,
        week_title=_week_title(shown, words) if shown else "",
        week_who=_week_who(shown, department, words) if shown else "",
        round_fact=_round_fact(asks, length, words),
        stations=tuple(_station(station, unit, links, words, asks=asks, length=length) for station in unit.stations),
        questions=questions(unit, words),
        data=data_view(replace(unit.teacher_led.data, drawn=True)) if unit.teacher_led.data else None,
        cautions=cautions(unit),
        supervision=_supervision(unit, words),
        policy=POLICY,
        instead=task(unit, links, words),
        returns=_returns(unit, department, page),
        rubric_levels=range(max((len(row.levels) for row in unit.rubric), default=0)),
        runs=_runs(unit, department, plans, page, words),
        prose=render_prose(unit.body, links, shift=1, table_label=words("prose.table")),
        built=long_date(build.date, words),
        version=build.version,
    )
    return Page(page, {"title": unit.title, "description": unit.question, "kind": "unit", "lang": words.language}, body)


def _round_minutes(plan: Plan | None, asks: Needed) -> float:
    """The round the bars are drawn over: the planned one, else the least that the unit allows and needs."""
    return plan.rounds[0].minutes if plan and plan.rounds else max(asks.least, asks.minutes)


def _week_title(plan: Plan, words: Words) -> str:
    low, high = min(day.minutes for day in plan.days), max(day.minutes for day in plan.days)
    count = len(plan.days)
    counted = words(f"unit.count.{count}") if words.knows(f"unit.count.{count}") else str(count)
    key = "unit.days_of" if low == high else "unit.days_from_to"
    return words(key, n=count, count=counted, minutes=high, low=low, high=high)


def _week_who(plan: Plan, department: Department, words: Words) -> str:
    size = department.school.classes[plan.class_id].size
    return words("unit.who", class_id=plan.class_id, n=size)


def _round_fact(asks: Needed, length: float, words: Words) -> str:
    left = length - asks.minutes
    spare = words("unit.to_spare", minutes=minutes(left)) if left > 0 else ""
    return words("unit.round_fact", minutes=minutes(asks.minutes), spare=spare, least=asks.least, most=asks.most)


def _station(station: AnyStation, unit: Unit, links: UnitLinks, words: Words, *, asks: Needed, length: float) -> StationView:
    name = tag(station.kind, words)
    terms = [*_variables(station, words), *_own_terms(station, unit, links, words)]
    if station.done_when:
        terms.append(Term(words("unit.done"), (station.done_when,)))
    if station.again:
        terms.append(Term(words("unit.again"), (station.again,)))
    return StationView(
        tag=name,
        title=station.title or words(f"station.titles.{station.kind}"),
        goal=station.goal,
        bar=station_bar(asks.of(station.kind), length, words),
        terms=tuple(terms),
        steps=tuple(StepView(step.text, times(step.minutes, step.times, words)) for step in station.steps),
        after=tuple(_after(station, words)),
        open=open_link(unit, links, words) if station.kind is Kind.ONLINE else None,
    )


def _variables(station: AnyStation, words: Words) -> list[Term]:
    found = station.variables
    if found is None:
        return []
    values = {"change": found.change, "measure": found.measure, "keep": found.keep}
    return [Term(words(f"unit.{key}"), (value,)) for key, value in values.items() if value]


def _after(station: AnyStation, words: Words) -> list[Term]:
    """What comes after the last step."""
    put_away = station.put_away if isinstance(station, HandsOnStation) else ""
    said = ((words("unit.early"), station.finished_early), (words("unit.put_away"), put_away))
    return [Term(word, (text,)) for word, text in said if text]


def _own_terms(station: AnyStation, unit: Unit, links: UnitLinks, words: Words) -> list[Term]:
    terms: dict[str, tuple[str, ...]] = {}
    match station:
        case OnlineStation():
            terms = {
                "use": (station.use,),
                "leave_alone": (station.leave_alone,),
                "work_in": (_work_in(station.work_in or "pairs", words),),
                "if_down": (station.if_down,),
            }
        case HandsOnStation():
            hazards = ", ".join(station.hazards) or words("unit.no_hazards")
            terms = {"materials": tuple(material(line, words) for line in station.materials), "safety": (hazards,)}
        case TeacherLedStation():
            read = (words("unit.reading", n=station.read.words),) if station.read else ()
            terms = {"read": read, "start_alone": (station.start_alone,), "ask": tuple(_first_asks(station))}
    spoken = ("start_alone", "ask")
    reading = relative(links.page, f"{student_address(unit.slug)}#reading")
    return [Term(words(f"unit.{key}"), says, key in spoken, reading if key == "read" else "") for key, says in terms.items() if any(says)]


def _first_asks(station: TeacherLedStation) -> list[str]:
    return [q.ask for q in station.questions if q.prompt is Prompt.CORE][:1]


def _work_in(how: str, words: Words) -> str:
    key = f"work_in.{how}"
    return words(key) if words.knows(key) else how


def _supervision(unit: Unit, words: Words) -> str:
    if not unit.hands_on.hazards:
        return ""
    near = at_hand(unit)
    names = ", ".join(hazard.tag for hazard in near)
    return words("unit.at_hand", hazards=names) if near else words("unit.in_sight")


def _returns(unit: Unit, department: Department, page: str) -> tuple[Link, ...]:
    """Earlier units that this one returns to, and later ones that return to it, where they exist."""
    back = [slug for slug in unit.returns_to if slug in department.units]
    later = [u.slug for u in department.units.values() if unit.slug in u.returns_to]
    return tuple(Link(department.units[s].title, relative(page, unit_address(s))) for s in dict.fromkeys([*back, *later]))


def _runs(unit: Unit, department: Department, plans: Plans, page: str, words: Words) -> tuple[RunView, ...]:
    found = []
    missing: Mapping[str, str] = {each.run.class_id: each.reason for each in plans.not_planned if each.run.unit == unit.slug}
    for run in department.school.runs:
        if run.unit != unit.slug:
            continue
        plan = plans.of(run.class_id, unit.slug)
        school_class = department.school.classes.get(run.class_id)
        name = school_class.name if school_class else ""
        if plan and plan.days:
            first, last = plan.days[0].date, plan.days[-1].date
            dates = words("unit.from_to", first=month_day(first, words), last=month_day(last, words), n=len(plan.days))
            found.append(RunView(run.class_id, name, dates, relative(page, lesson_address(run.class_id, unit.slug)), ""))
        else:
            starts = words("unit.from", first=month_day(run.starts, words))
            found.append(RunView(run.class_id, name, starts, "", missing.get(run.class_id, words("unit.not_planned"))))
    return tuple(found)
