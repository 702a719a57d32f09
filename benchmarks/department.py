"""A department of any size in files: copies of the demo's units under names of their own, classes, and runs through the year."""

from __future__ import annotations

import re
import shutil
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import count
from math import gcd
from pathlib import Path

from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.school import Run
from trivet.planning.dates import school_days
from trivet.planning.engine import ENGINE
from trivet.planning.grouping.draw import with_cards_and_partners
from trivet.planning.grouping.for_class import Unseated, counted_before, request_for
from trivet.planning.grouping.kept import replace_lock
from trivet.planning.grouping.letters import in_seat_order
from trivet.planning.team_sizes import class_shape
from trivet.reading.department import read_department
from trivet.reading.lock import write_lock

ROOT = Path(__file__).resolve().parent.parent
CLASS_SIZES = (31, 36, 34, 28, 37, 31, 23)
PERIODS = 6
DEVICES = 20
FIRST_RUN = date(2026, 9, 14)
SCHOOL_WEEKS = 36


@dataclass(frozen=True, slots=True)
class Size:
    """How large a department is; each class runs `runs_each` units, and the first as a whole class.

    The stores hold the demo school's kit so many times; 0 is twice for each teacher, which is enough for all lessons at one time.
    """

    units: int
    classes: int
    runs_each: int
    kits: int = 0

    def __str__(self) -> str:
        """Say it in words."""
        return f"{self.units} units, {self.classes} classes, {self.classes * self.runs_each} runs"


def write_department(to: Path, size: Size) -> Path:
    """Write a department below `to` and return it; every run has kept groups, dealt in turn without a search."""
    shutil.copytree(ROOT / "school", to / "school", ignore=shutil.ignore_patterns("groups"))
    shutil.copytree(ROOT / "units", to / "units")
    shutil.copy(ROOT / "mkdocs.yml", to)
    slugs = _write_units(to / "units", size.units)
    teachers = -(-size.classes // PERIODS)
    _write_settings(to / "school" / "school.yml", slugs, teachers)
    _write_house(to / "school", teachers, size.kits or 2 * teachers)
    classes = [f"c{number:02d}" for number in range(1, size.classes + 1)]
    (to / "school" / "classes.yml").write_text(_classes(classes), encoding="utf-8")
    (to / "school" / "runs.yml").write_text(_runs(classes, slugs, size.runs_each), encoding="utf-8")
    _write_locks(to)
    return to


def department_at(root: Path) -> Department:
    """Read a department, or stop."""
    found = read_department(root).department
    if found is None:
        raise SystemExit(f"the department at {root} can't be read")
    return found


def _write_units(units: Path, wanted: int) -> list[str]:
    """Fill up with copies of the demo's units, in turn; return all slugs."""
    demo = sorted(path.parent.name for path in units.glob("*/index.md") if path.parent.name != "guide")
    slugs = demo[:wanted]
    for number in count(2):
        for slug in demo:
            if len(slugs) == wanted:
                return slugs
            copy = units / f"{slug}-{number}"
            shutil.copytree(units / slug, copy)
            for path in copy.glob("index*.md"):
                text = path.read_text(encoding="utf-8")
                path.write_text(re.sub(r"^title: (.*)$", rf"title: \1 {number}", text, count=1, flags=re.MULTILINE), encoding="utf-8")
            slugs.append(copy.name)
    raise AssertionError("count() does not end")


def _write_settings(path: Path, slugs: list[str], teachers: int) -> None:
    """Name the teachers, and list every unit's simulation as reviewed."""
    before, _, after = path.read_text(encoding="utf-8").partition("simulations:\n")
    rest = re.sub(r"\A(  - .*\n)+", "", after)
    before = re.sub(
        r"(?<=^teachers:\n)(  .*\n)+", "".join(f"  t{n}: Ms. T{n}\n" for n in range(1, teachers + 1)), before, flags=re.MULTILINE
    )
    path.write_text(before + "simulations:\n" + "".join(f"  - {slug}\n" for slug in slugs) + rest, encoding="utf-8")


def _write_house(school: Path, teachers: int, kits: int) -> None:
    """Give each teacher a room with devices for a class, and the school its kit so many times."""
    rooms = (school / "rooms.yml").read_text(encoding="utf-8")
    own = rooms[rooms.index("    name:") : rooms.index("  room14:")]
    own = re.sub(r"devices: \d+", f"devices: {DEVICES}", own)
    (school / "rooms.yml").write_text("rooms:\n" + "".join(f"  r{n}:\n{own}" for n in range(1, teachers + 1)), encoding="utf-8")
    stock = school / "inventory.yml"
    more = re.sub(r"have: (\d+)", lambda found: f"have: {kits * int(found[1])}", stock.read_text(encoding="utf-8"))
    stock.write_text(more, encoding="utf-8")


def _classes(ids: list[str]) -> str:
    rows = ["classes:"]
    for place, class_id in enumerate(ids):
        period = place % PERIODS + 1
        rows += [
            f"  {class_id}:",
            f"    name: Science 7, class {place + 1}",
            f"    teacher: t{place // PERIODS + 1}",
            "    grade: 7",
            f"    period: P{period}",
            f"    room: r{place // PERIODS + 1}",
            f"    numbers: 1-{CLASS_SIZES[place % len(CLASS_SIZES)]}",
            "    adults: 2",
        ]
    return "\n".join(rows) + "\n"


def _runs(classes: list[str], slugs: list[str], runs_each: int) -> str:
    """Spread the runs of each class over the year; classes take the units from different places on, so that all are run."""
    held = [day.date for day in school_days(department_at(ROOT).school.calendar)]
    step = timedelta(weeks=SCHOOL_WEEKS // runs_each)
    rows = ["runs:"]
    for place, class_id in enumerate(classes):
        for number in range(runs_each):
            rows += [
                f"  - class: {class_id}",
                f"    unit: {slugs[(place * runs_each + number) % len(slugs)]}",
                f"    starts: {next(day for day in held if day >= FIRST_RUN + number * step)}",
                "    second adult: hands-on",
                *(["    way: whole class"] if number == 0 else []),
            ]
    return "\n".join(rows) + "\n"


def _write_locks(root: Path) -> None:
    """Keep groups for every run, in order of its date."""
    department = department_at(root)
    for run in sorted(department.school.runs, key=lambda run: (run.starts, run.index)):
        lock = _dealt(department, run)
        department = replace_lock(department, lock)
        path = root / "school" / "groups" / run.class_id / f"{run.unit}.yml"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(write_lock(lock), encoding="utf-8")


def _dealt(department: Department, run: Run) -> Lock:
    """Deal a class over its teams, each unit in other steps, with duties and partners as a draw would give them."""
    request = request_for(department, run, None)
    if isinstance(request, Unseated):
        raise AssertionError("groups by number need no tables")
    seats = list(request.seats)
    places = [(group, team) for group, sizes in enumerate(class_shape(len(seats))) for team, size in enumerate(sizes) for _ in range(size)]
    stride = next(step for step in range(run.index % 7 + 2, 99) if gcd(step, len(seats)) == 1)
    groups: list[list[list[int]]] = [[[] for _ in sizes] for sizes in class_shape(len(seats))]
    for number, (group, team) in enumerate(places):
        groups[group][team].append(seats[number * stride % len(seats)])
    return Lock(
        unit=run.unit,
        class_id=run.class_id,
        drawn_on=department.school.calendar.first,
        engine=ENGINE,
        drawn_from="numbers",
        counted=tuple(lock.unit for lock in counted_before(department, run)),
        inputs="",
        seal="",
        groups=with_cards_and_partners(request, in_seat_order(groups)),
    )
