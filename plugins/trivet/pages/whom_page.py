"""Who has worked with whom in a class: for those who ask. From public kept groups alone; off the navigation, linked from lesson sheets."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.page import Page
from trivet.model.plan import Plans
from trivet.pages.build_info import BuildInfo
from trivet.pages.links import lesson_address, relative, whom_address
from trivet.pages.quality import locks_of, pairs_again, sentence
from trivet.pages.render import render
from trivet.pages.spoken import long_date, sentence_list
from trivet.pages.whom_drawing import field
from trivet.pages.words import Words
from trivet.planning.grouping.for_class import runs_in_order
from trivet.planning.grouping.ledger import Two, ledger_of


@dataclass(frozen=True, slots=True)
class WhomLine:
    """A student by number, and the others by number, with how often where it is more than once."""

    number: str
    others: str


@dataclass(frozen=True, slots=True)
class UnitProof:
    """One unit's kept groups: what is said about them, and what proves it. `weights` is () where nothing needs a proof."""

    title: str
    href: str
    drawn: str
    said: str
    claim: str
    weights: tuple[tuple[str, int], ...]
    command: str


def whom_pages(department: Department, plans: Plans, build: BuildInfo, words: Words) -> tuple[Page, ...]:
    """Return a page for each class that has kept groups."""
    return tuple(page for class_id in department.school.classes if (page := _page(class_id, department, plans, build, words)) is not None)


def _page(class_id: str, department: Department, plans: Plans, build: BuildInfo, words: Words) -> Page | None:
    locks = locks_of(department, class_id)
    order = [run.unit for run in runs_in_order(department, class_id) if run.unit in locks and plans.of(class_id, run.unit)]
    if not order:
        return None
    page = whom_address(class_id)
    seats = department.school.classes[class_id].seats
    here = set(seats)
    teams = ledger_of(locks[unit].groups for unit in order).teams
    met = {two: times for two, times in teams.items() if here.issuperset(two)}
    titles = [department.units[unit].title for unit in order]
    body = render(
        "whom.html",
        words,
        class_id=class_id,
        summary=_summary(seats, met, titles, words),
        field=field(seats, met),
        label=words("whom.label", n=len(seats), met=len(met), again=sum(times > 1 for times in met.values())),
        lines=tuple(_lines(seats, met, words)),
        units=tuple(_unit(locks[unit], locks, department, page, words) for unit in order),
        built=long_date(build.date, words),
        version=build.version,
    )
    title = words("whom.page_title", class_id=class_id)
    return Page(page, {"title": title, "kind": "whom", "lang": words.language, "search": False}, body)


def _summary(seats: Sequence[int], met: Mapping[Two, int], titles: Sequence[str], words: Words) -> tuple[str, ...]:
    pairs = len(seats) * (len(seats) - 1) // 2
    again = sum(times > 1 for times in met.values())
    return (
        words("whom.after", students=len(seats), titles=sentence_list(titles, words)),
        words("whom.met", n=len(met), pairs=pairs),
        words("whom.again", n=again) if again else words("whom.never_again"),
    )


def _lines(seats: Sequence[int], met: Mapping[Two, int], words: Words) -> Iterator[WhomLine]:
    for seat in seats:
        mine = [(other, met.get((min(seat, other), max(seat, other)), 0)) for other in seats if other != seat]
        said = [f"{other:02d}" if times == 1 else words("whom.often", number=f"{other:02d}", n=times) for other, times in mine if times]
        yield WhomLine(f"{seat:02d}", ", ".join(said) or words("whom.nobody"))


def _unit(lock: Lock, locks: Mapping[str, Lock], department: Department, page: str, words: Words) -> UnitProof:
    proved = lock.proved_minimum
    return UnitProof(
        title=department.units[lock.unit].title,
        href=relative(page, lesson_address(lock.class_id, lock.unit)),
        drawn=words("whom.drawn", date=long_date(lock.drawn_on, words)),
        said=sentence(lock.repeats, pairs_again(lock, locks), proved, words),
        claim=words("whom.claim", n=proved) if proved else "",
        weights=tuple((number.rpartition("-")[2], weight) for number, weight in lock.certificate.items()) if proved else (),
        command=f"trivet groups --check school/groups/{lock.class_id}/{lock.unit}.yml",
    )
