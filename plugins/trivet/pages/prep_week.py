"""One stretch of the year for whoever gets the materials ready: what is short, kit, devices, shopping, paper, tasks."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal

from trivet.model.department import Department
from trivet.pages.prep_chart import Chart, chart
from trivet.pages.spoken import amount, clock, month_day, number, stock, weekday
from trivet.pages.words import Words
from trivet.planning.cautions import hazards_of
from trivet.planning.department_materials import Shortage, Span
from trivet.planning.say import say_money
from trivet.planning.stores.cures import Cure
from trivet.planning.stores.needs import Reusable, UsedUp
from trivet.planning.stores.prints import Print
from trivet.planning.stores.purchases import Purchase, total
from trivet.planning.stores.sentences import clash, headline, place, task_text, turn_round_text, why, why_used_up
from trivet.planning.stores.tasks import RoomDays

TOGETHER = "\u00a0×"
"""Keeps a count and its sign on one line."""


@dataclass(frozen=True, slots=True)
class Row:
    """A line of a table: what is needed, what there is, what is short ("" for nothing), and why so many."""

    item: str
    need: str
    have: str
    short: str
    why: str


@dataclass(frozen=True, slots=True)
class Table:
    """The lines of one store, or of the rooms' devices, or of paper; `have` is the head of the column beside the need."""

    title: str
    key: str
    have: str
    rows: tuple[Row, ...]
    paper: bool = False


@dataclass(frozen=True, slots=True)
class LackView:
    """Something short. `chart` is None for what is used up."""

    title: str
    text: str
    chart: Chart | None
    cures: tuple[Cure, ...]


@dataclass(frozen=True, slots=True)
class Buy:
    """A line of the shopping list."""

    item: str
    amount: str
    note: str
    cost: str


@dataclass(frozen=True, slots=True)
class Shopping:
    """The shopping list with its sum, "" where there is one line or none."""

    lines: tuple[Buy, ...]
    total: str


@dataclass(frozen=True, slots=True)
class TaskLine:
    """A thing to do around a bell. `word` is before or after."""

    word: str
    at: str
    text: str


@dataclass(frozen=True, slots=True)
class TaskList:
    """What is done in one room on some days."""

    where: str
    lines: tuple[TaskLine, ...]


@dataclass(frozen=True, slots=True)
class SpanView:
    """A week, a term or the year. `last_day` is its last lesson's; `tasks`, `advice` and `clean_up` are a week's alone."""

    id: str
    last_day: str
    title: str
    runs: tuple[str, ...]
    lacks: tuple[LackView, ...]
    short: tuple[str, ...]
    tables: tuple[Table, ...]
    shopping: Shopping
    tasks: tuple[TaskList, ...]
    advice: tuple[str, ...]
    clean_up: tuple[str, ...]


def span_view(span: Span, title: str, last_day: str, department: Department, words: Words) -> SpanView:
    """Return a stretch of the year as the page shows it."""
    rooms, units = department.school.rooms, department.units
    return SpanView(
        id=span.first.isoformat(),
        last_day=last_day,
        title=title,
        runs=tuple(_runs(span, department, words)),
        lacks=tuple(_lack(each, span, department, words) for each in span.shortages),
        short=tuple(headline(each, rooms) for each in span.short),
        tables=tuple(_tables(span, department, words)),
        shopping=_shopping(span.purchases, department, words),
        tasks=tuple(_tasks(each, department, words) for each in span.tasks),
        advice=tuple(
            turn_round_text(each, units[each.unit].title, rooms[each.room].name if each.room in rooms else each.room)
            for each in span.turn_rounds
        ),
        clean_up=tuple(_clean_up(span, department)) if span.tasks else (),
    )


def _runs(span: Span, department: Department, words: Words) -> Iterator[str]:
    for slug in dict.fromkeys(run.unit for run in span.runs):
        own = [run for run in span.runs if run.unit == slug]
        teams = words("lesson.teams", n=sum(run.teams for run in own))
        yield words("prep.runs", unit=department.units[slug].title, classes=", ".join(run.class_id for run in own), teams=teams)


def _lack(shortage: Shortage, span: Span, department: Department, words: Words) -> LackView:
    lack, rooms = shortage.lack, department.school.rooms
    drawn = chart(lack, span.first, words) if isinstance(lack, Reusable) else None
    return LackView(headline(lack, rooms), clash(lack, rooms), drawn, shortage.cures)


def _tables(span: Span, department: Department, words: Words) -> Iterator[Table]:
    everything: tuple[Reusable | UsedUp, ...] = (*span.reusable, *span.used_up)
    for store in sorted({each.pool.place for each in everything}):
        here = [each for each in everything if each.pool.place == store]
        title = f"{store[0].upper()}{store[1:]}" if store else words("prep.all_stores")
        yield Table(title, words("prep.kit_key"), words("lesson.have"), tuple(_row(each, each.pool.item, words) for each in here))
    if span.devices:
        rows = tuple(_row(each, place(each.pool, department.school.rooms) or words("prep.device"), words) for each in span.devices)
        yield Table(words("prep.devices"), words("prep.devices_key"), words("lesson.have"), rows)
    if span.prints:
        rows = tuple(_paper(each, words) for each in span.prints)
        yield Table(words("prep.print"), words("prep.print_key"), words("prep.pages"), rows, paper=True)


def _row(need: Reusable | UsedUp, item: str, words: Words) -> Row:
    unit = "" if isinstance(need, Reusable) or need.unit == "each" else need.unit
    return Row(
        item=f"{item[0].upper()}{item[1:]}",
        need=amount(need.need, unit),
        have=words("lesson.not_counted") if need.have is None else stock(need.have, unit),
        short=amount(need.short, unit) if need.short else "",
        why=why(need) if isinstance(need, Reusable) else words("prep.used_up", parts=why_used_up(need)),
    )


def _paper(paper: Print, words: Words) -> Row:
    parts = " + ".join(f"{class_id} {count}" for class_id, _, count in paper.parts)
    pages = number(Decimal(paper.pages))
    return Row(
        words(f"prep.paper.{paper.kind}.name"), number(Decimal(paper.count)), pages, "", f"{parts}: {words(f'prep.paper.{paper.kind}.why')}"
    )


def _shopping(purchases: Iterable[Purchase], department: Department, words: Words) -> Shopping:
    locale = department.school.settings.locale
    bought = tuple(purchases)
    lines = tuple(_buy(each, locale, words) for each in bought)
    return Shopping(lines, say_money(total(bought), locale) if len(lines) > 1 else "")


def _buy(each: Purchase, locale: str, words: Words) -> Buy:
    unit = "" if each.unit == "each" else each.unit
    packs = words("prep.packs", n=each.packs, size=number(each.pack)) if each.packs and each.pack else ""
    notes = (each.place, packs, words("prep.or_borrow") if each.use == "reusable" else "")
    cost = words("prep.no_price") if each.cost is None else say_money(each.cost, locale)
    return Buy(f"{each.item[0].upper()}{each.item[1:]}", amount(each.amount, unit), ", ".join(filter(None, notes)), cost)


def _tasks(each: RoomDays, department: Department, words: Words) -> TaskList:
    rooms = department.school.rooms
    days = ", ".join(weekday(day, words) for day in each.dates)
    lines = tuple(
        TaskLine(
            words("prep.after" if task.kind == "take_in" else "prep.before"),
            clock(task.at),
            task_text(task, department.units[task.unit].title).replace(" ×", TOGETHER),
        )
        for task in each.tasks
    )
    return TaskList(", ".join(filter(None, (rooms[each.room].name if each.room in rooms else each.room, days))), lines)


def _clean_up(span: Span, department: Department) -> Iterator[str]:
    """What the cautions of this week's units ask of an adult, each sentence once."""
    found = [
        hazard
        for slug in dict.fromkeys(task.unit for each in span.tasks for task in each.tasks)
        for hazard in hazards_of(department.units[slug])
    ]
    yield from dict.fromkeys(f"{hazard.tag}: {hazard.clean_up}" for hazard in found if hazard.clean_up)


def week_title(span: Span, words: Words) -> str:
    """Return the name of a week by its Monday."""
    return words("home.week", date=month_day(span.first, words))
