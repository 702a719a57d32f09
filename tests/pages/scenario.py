"""One scenario for all pages: the tiny department with a rich unit, run by p1 (drawn), p2 (not drawn) and n1 (first unit).

The days are those of the design's pictures, written out by hand: 4 + 1 + 2 + 7 + 23 + 1 + 2 + 10 + 2 = 52 minutes on Monday,
4 + 2 + 7 + 23 + 1 + 2 + 10 + 3 = 52 on Tuesday and Wednesday, and 4 + 12 + 10 + 3 = 29 with 23 left on Thursday.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, time, timedelta
from decimal import Decimal
from functools import cache

from tests.support.department import tiny_class, tiny_department, tiny_unit
from tests.support.lock import tiny_lock
from trivet.model.department import Department
from trivet.model.lock import Groups
from trivet.model.page import Page, Site
from trivet.model.plan import (
    Block,
    Caution,
    Day,
    MaterialTotal,
    Note,
    NotPlanned,
    Plan,
    Plans,
    PreCheck,
    Quality,
    Round,
    SpotCheck,
)
from trivet.model.problem import Place, Problem, Severity
from trivet.model.school import Run, SchoolClass, Term
from trivet.model.station import (
    CheckItem,
    DataTable,
    Expected,
    Kind,
    Misconception,
    Prompt,
    Question,
    Reading,
    Record,
    SpotCheckLine,
    Variables,
)
from trivet.model.unit import RubricRow, StationText, Translation, Unit, WriteUp
from trivet.pages.site import BuildInfo, make_site

BUILD = BuildInfo(date(2026, 11, 22), "3")
MONDAY = date(2026, 11, 30)

ANSWERS = (
    "the volume of water", "the stone; mass and volume", "the one off the line", "Say that the boat holds air",
    "Weigh it before and after", "2.70 g/mL", "handbook of densities", "The log floats", "mass changes first", "the mass we change",
)  # fmt: skip
"""Texts of the rich unit that are the teacher's alone."""

PROSE = """## What this is after

See [the data](data/another-class.csv) and [more](https://example.org/a).

| a | b |
| - | -: |
| 1 | 2 |
"""

SPANISH = Translation(
    language="es",
    title="¿Flota o se hunde?",
    question="¿Por qué se hunde un trozo de plastilina y la misma plastilina flota como barco?",
    stations={
        Kind.ONLINE: StationText(
            goal="Descubran qué decide si un bloque flota.",
            steps=("Pongan 100 mL.", "Aumenten la masa.", "Busquen dónde empieza a hundirse."),
            done_when="Los dos volúmenes están en la tabla.",
            record_columns=("volumen (mL)", "masa (g)", "¿flota?"),
        ),
        Kind.HANDS_ON: StationText(goal="Descubran cuál es cuál.", steps=("Pesen.", "Lean el agua.", "Dividan.")),
        Kind.TEACHER_LED: StationText(goal="Juzguen un experimento.", start_alone="Subraya lo que cambiaron."),
    },
)


def rich_unit() -> Unit:
    """The tiny unit with every optional field filled in."""
    unit = tiny_unit()
    return replace(
        unit,
        standards=("MS-PS1-2",),
        new_words=("density", "volume"),
        returns_to=("moving-plates",),
        online=replace(
            unit.online,
            title="Blocks in a tank",
            variables=Variables("the mass we change", "whether it floats", "the liquid"),
            finished_early="Guess the mass that sinks for 80 mL.",
            if_down="Sort the printed blocks.",
            work_in="pairs",
        ),
        hands_on=replace(
            unit.hands_on,
            title="Measure the density",
            variables=Variables("which solid", "mass and volume", "the cylinder", printed=True),
            record=Record(("solid", "mass (g)", "water before (mL)", "density (g/mL)"), ("solid 1", "solid 2", "solid 3")),
            finished_early="Measure the solid you trust least once more.",
            put_away="Dry the solids. Wipe the tray.",
            expected=(Expected("aluminum", "2.70 g/mL", "0.17 g/mL", "handbook of densities"),),
        ),
        teacher_led=replace(
            unit.teacher_led,
            title="A report from another class",
            read=Reading("story.md", "# The clay report\n\nFive rolls of clay sank. A boat of *clay* floated.", 10),
            questions=(
                *unit.teacher_led.questions,
                Question("What could be inside roll 4?", "Say that the boat holds air", Prompt.CHALLENGE),
            ),
            misconceptions=(Misconception("Heavy things sink.", "Weigh it before and after."),),
            data=DataTable(("volume (mL)", "mass (g)"), (("5", "8.4"), ("10", "17.1"), ("30", "51.2"))),
        ),
        write_up=WriteUp("Whether an object floats depends on ...", ("one number from each station",), "why the numbers fit"),
        pre_check=(CheckItem("Which floats, a log or a coin?", "The log floats", "compares mass and volume"),),
        spot_checks=(SpotCheckLine(Kind.ONLINE, "What will you change first?", "mass changes first"),),
        reflection="Today our team found out that ...",
        rubric=(RubricRow("Claim", ("no claim", "mass counts", "mass and volume count")),),
        translations=(SPANISH,),
        body=PROSE,
        body_line=60,
    )  # fmt: skip


def blocks(*parts: tuple[str, float] | tuple[str, float, int], start: time = time(8, 5)) -> tuple[Block, ...]:
    """Blocks end to end from the bell: (kind, minutes) or (kind, minutes, round)."""
    found, at = [], 0.0
    for part in parts:
        total = start.hour * 60 + start.minute + int(at)
        found.append(Block(part[0], at, time(total // 60, total % 60), part[1], part[2] if len(part) > 2 else None))
        at += part[1]
    return tuple(found)


def day(when: date, surplus: float, *parts: tuple[str, float] | tuple[str, float, int], minutes: int = 52) -> Day:
    """One day from 8:05 on; the parts and the surplus must fill it."""
    made = blocks(*parts)
    assert sum(block.minutes for block in made) + surplus == minutes
    end = 8 * 60 + 5 + minutes
    return Day(
        date=when,
        day_type="regular",
        start=time(8, 5),
        end=time(end // 60, end % 60),
        minutes=minutes,
        surplus_minutes=surplus,
        blocks=made,
    )


def four_days(first: date = MONDAY) -> tuple[Day, ...]:
    """The four days of the design's scenario."""
    monday = day(
        first, 0, ("settle_in", 4), ("expectations", 1), ("places", 2), ("launch", 7, 1), ("station", 23, 1), ("clean_up", 1, 1),
        ("evidence", 2), ("reflection", 10), ("pack_up", 2),
    )  # fmt: skip
    middle = [
        day(
            first + timedelta(days=n - 1), 0, ("settle_in", 4), ("places", 2), ("launch", 7, n), ("station", 23, n), ("clean_up", 1, n),
            ("evidence", 2), ("reflection", 10), ("pack_up", 3),
        )
        for n in (2, 3)
    ]  # fmt: skip
    thursday = day(first + timedelta(days=3), 23, ("settle_in", 4), ("write_up", 12), ("reflection", 10), ("pack_up", 3))
    return (monday, *middle, thursday)


ORDER = {
    "A": (Kind.ONLINE, Kind.HANDS_ON, Kind.TEACHER_LED),
    "B": (Kind.HANDS_ON, Kind.TEACHER_LED, Kind.ONLINE),
    "C": (Kind.TEACHER_LED, Kind.ONLINE, Kind.HANDS_ON),
}


def plan(school_class: SchoolClass, *, groups: Groups | None, way: str = "rotate", first: date = MONDAY) -> Plan:
    """A plan over the four days; `groups` None is a plan whose groups are not public."""
    days = four_days(first)
    rounds = []
    for n in (1, 2, 3):
        stations = {letter: (list(Kind)[n - 1] if way == "whole_class" else kinds[n - 1]) for letter, kinds in ORDER.items()}
        public = groups is not None or way == "whole_class"
        rounds.append(Round(round=n, date=days[n - 1].date, minutes=23, stations=stations if public else None))
    checks = ()
    if groups is not None:
        checks = tuple(
            SpotCheck(
                round=n,
                team=team,
                seat=min(members),
                kind="safety" if team == "B1" else "first_step",
                ask="What will you do first?",
                listen_for="weigh the dry solid",
            )
            for n in (1, 2, 3)
            for letter, group in groups.items()
            for team, members in group.teams.items()
            if ORDER[letter][n - 1] is not Kind.TEACHER_LED
        )
    return Plan(
        unit="float-or-sink",
        class_id=school_class.id,
        way=way,
        engine="1" if groups is not None else None,
        drawn_on=date(2026, 11, 23) if groups is not None else None,
        pre_check=PreCheck(first - timedelta(days=7), time(8, 52), 5),
        days=days,
        rounds=tuple(rounds),
        groups=groups,
        quality=Quality(0, 0, 0, 1) if groups is not None else None,
        spot_checks=checks,
        materials=(
            MaterialTotal(item="balance 0.1 g", need=Decimal(2), unit="each", use="reusable", have=Decimal(1), short=Decimal(1)),
            MaterialTotal(item="water", need=Decimal("594"), unit="mL", use="used_up", have=None, short=Decimal(0)),
        ),
        cautions=(Caution("glass", "Keep glass away from the edge.", ("safety glasses",)),),
        notes=(Note("station_minutes", "Each station lasts 23 min."),),
    )


def department() -> Department:
    """Three classes and a unit; a second unit that the first returns to."""
    classes = [tiny_class("p1", 31), tiny_class("p2", 28, period="P1"), tiny_class("n1", 27)]
    runs = [Run(class_id=c.id, unit="float-or-sink", starts=MONDAY, way="whole_class" if c.id == "n1" else "rotate") for c in classes]
    runs.append(Run(class_id="p1", unit="moving-plates", starts=date(2027, 1, 11)))
    made = tiny_department(
        unit=rich_unit(),
        units=[tiny_unit("moving-plates", title="Moving plates", question="How fast does a plate move?", write_up=WriteUp(at_home=True))],
        classes=classes,
        runs=runs,
        locks=[tiny_lock(classes[0])],
    )
    calendar = replace(made.school.calendar, terms=(Term("Fall", date(2026, 8, 24), date(2027, 1, 15)),))
    return replace(made, school=replace(made.school, calendar=calendar))


def plans(made: Department) -> Plans:
    """A drawn plan, one that is not drawn, one for a first unit, and a run that could not be planned."""
    classes = made.school.classes
    return Plans(
        plans=(
            plan(classes["p1"], groups=made.locks["p1", "float-or-sink"].groups),
            plan(classes["p2"], groups=None, first=date(2026, 12, 7)),
            plan(classes["n1"], groups=None, way="whole_class"),
        ),
        not_planned=(NotPlanned(made.school.runs[-1], "No day fits a round: it needs 41 min, and the longest is 38."),),
        problems=(),
    )


SOURCE = "---\ntitle: Broken\nstations:\n  hands-on:\n    hazards: glas, spill\n    set up: 2 min\n---\n"
PROBLEMS = (
    Problem(
        "hazard-unknown",
        Severity.ERROR,
        Place("units/broken/index.md", 5, 14, 4),
        '"glas" is not one of the hazard words',
        "write glass",
        "hands-on, hazards",
    ),
    Problem(
        "closed-question",
        Severity.WARNING,
        Place("units/broken/index.md", 2, 8, 6),
        "this can be answered with yes",
        "ask what they changed",
    ),
)


@cache
def site() -> Site:
    """The whole site of the scenario."""
    made = department()
    return make_site(made, plans(made), PROBLEMS, BUILD, {"units/broken/index.md": SOURCE})


def pages() -> dict[str, Page]:
    """Every page by its address."""
    return {page.path: page for page in site().pages}
