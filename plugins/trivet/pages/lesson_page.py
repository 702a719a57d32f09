"""The lesson sheet of a class's run: each day to scale, the launch, the groups, what to bring. It runs the day."""

from __future__ import annotations

from dataclasses import dataclass

from trivet.model.department import Department
from trivet.model.page import Page
from trivet.model.plan import Day, MaterialTotal, Plan, Plans
from trivet.model.school import Run
from trivet.model.station import Kind
from trivet.pages.build_info import BuildInfo
from trivet.pages.lesson_blanks import blank_boards, blank_checks, for_script
from trivet.pages.lesson_day import Timeline, timeline
from trivet.pages.lesson_groups import GroupBoard, boards, without_station
from trivet.pages.lesson_launch import LaunchView, launches
from trivet.pages.lesson_run import LessonRun
from trivet.pages.links import HOME, lesson_address, relative, whom_address
from trivet.pages.quality import quality_of
from trivet.pages.questions import questions
from trivet.pages.render import render
from trivet.pages.spoken import amount, clock, long_date, minutes, sentence_list, short_date, stock
from trivet.pages.stations import tag
from trivet.pages.unit_bar import unit_bar
from trivet.pages.unit_links import task, unit_links
from trivet.pages.when import run_of, when_lines
from trivet.pages.words import Words
from trivet.planning.hazards import POLICY
from trivet.planning.materials import DEVICE

COUNTED = "each"
"""The unit of a total that is counted."""


@dataclass(frozen=True, slots=True)
class RoundBoards:
    """The groups of one round of a day; `boards` is () where they are not public. `without` says which groups have no station in it."""

    number: int
    title: str
    boards: tuple[GroupBoard, ...]
    without: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class DayView:
    """One day of the sheet."""

    id: str
    date: str
    rounds: str
    facts: tuple[str, ...]
    timeline: Timeline
    launches: tuple[LaunchView, ...]
    groups: tuple[RoundBoards, ...]
    expectations: tuple[str, ...]
    write_up: bool
    watch: bool


@dataclass(frozen=True, slots=True)
class MaterialRow:
    """What the run needs of one item, what there is, and what is missing in words."""

    item: str
    need: str
    have: str
    short: str


def lesson_page(plan: Plan, department: Department, plans: Plans, build: BuildInfo, words: Words) -> Page:
    """Return the lesson sheet of `plan`."""
    unit = department.units[plan.unit]
    page = lesson_address(plan.class_id, plan.unit)
    school = department.school
    made = LessonRun(plan, unit, school, words)
    body = render(
        "lesson.html",
        words,
        plan=plan,
        unit=unit,
        home=relative(page, HOME),
        bar=unit_bar(unit, plans, page, words),
        days=tuple(_day(made, day) for day in plan.days),
        roles=school.roles if made.whole_class else (),
        questions=questions(unit, words),
        drawn=plan.groups is not None,
        for_script=for_script(made),
        blank_boards=blank_boards(made),
        blank_checks=blank_checks(words),
        quality=quality_of(plan, department, words),
        whom=relative(page, whom_address(plan.class_id)) if (plan.class_id, plan.unit) in department.locks else "",
        adult=_second_adult(run_of(plan, department), words),
        when=when_lines(plan, department, words),
        unmet=[note.text for note in plan.notes if note.code == "order_wish"],
        pre_check=_pre_check(plan, words),
        materials=tuple(_material(total, words) for total in plan.materials),
        instead=task(unit, unit_links(unit, department, page), words),
        policy=POLICY,
        claim=unit.write_up.claim_starts,
        drawn_on=long_date(plan.drawn_on, words) if plan.drawn_on else "",
        built=long_date(build.date, words),
        version=build.version,
    )
    title = words("lesson.page_title", class_id=plan.class_id, title=unit.title)
    return Page(page, {"title": title, "kind": "lesson", "lang": words.language, "search": False}, body)


def _day(run: LessonRun, day: Day) -> DayView:
    numbers = [block.round for block in day.blocks if block.kind == "station" and block.round is not None]
    kinds = {block.kind for block in day.blocks}
    return DayView(
        id=day.date.isoformat(),
        date=short_date(day.date, run.words),
        rounds=rounds_of(day, run.plan, run.words),
        facts=_facts(run, day),
        timeline=timeline(run, day),
        launches=launches(run, day),
        groups=tuple(
            RoundBoards(n, run.words("lesson.groups_title", n=n), boards(run, day, n), without_station(run, day, n)) for n in numbers
        ),
        expectations=run.school.expectations if "expectations" in kinds else (),
        write_up="write_up" in kinds,
        watch=run.whole_class and bool(numbers),
    )


def rounds_of(day: Day, plan: Plan, words: Words) -> str:
    """Return what a day holds: round 1 of 3; rounds 2 and 3 of 3; round 3 of 3, write-up; write-up."""
    numbers = [str(block.round) for block in day.blocks if block.kind == "station"]
    write_up = any(block.kind == "write_up" for block in day.blocks)
    parts = []
    if numbers:
        of = max(each.round for each in plan.rounds)  # a round that was stopped stands in the plan twice
        parts.append(words("lesson.rounds", n=len(numbers), rounds=sentence_list(numbers, words), of=of))
    if write_up:
        parts.append(words("lesson.write_up"))
    text = ", ".join(parts)
    return text[:1].upper() + text[1:]


def _facts(run: LessonRun, day: Day) -> tuple[str, ...]:
    words, counted = run.words, run.headcount(day)
    facts = [
        words("lesson.from_to", start=clock(day.start), end=clock(day.end)),
        words("time.min", minutes=minutes(day.minutes)),
        run.room.name if run.room else "",
        words("lesson.students", n=counted.students),
        words("lesson.teams", n=counted.teams),
        "" if day.day_type == "regular" else words("lesson.day_type", name=day.day_type.replace("_", " ")),
    ]
    return tuple(fact for fact in facts if fact)


def _second_adult(run: Run | None, words: Words) -> str:
    if run is None or run.second_adult is None:
        return ""
    return words("lesson.second_adult", station=tag(Kind(run.second_adult), words).name)


def _pre_check(plan: Plan, words: Words) -> str:
    found = plan.pre_check
    if found is None:
        return ""
    return words("lesson.pre_check", date=short_date(found.date, words), start=clock(found.start), minutes=minutes(found.minutes))


def _material(total: MaterialTotal, words: Words) -> MaterialRow:
    unit = "" if total.unit == COUNTED else total.unit
    have = words("lesson.not_counted") if total.have is None else stock(total.have, unit)
    short = words("lesson.short", amount=amount(total.short, unit)) if total.short else ""
    item = words("lesson.device", n=int(total.need)) if total.item == DEVICE else total.item
    return MaterialRow(item, amount(total.need, unit), have, short)
