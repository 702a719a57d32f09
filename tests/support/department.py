"""A tiny department in code: one unit, one class, one room, no files. Variants come through keyword arguments."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import date, time
from decimal import Decimal
from typing import Any

from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.school import (
    Calendar,
    DayType,
    Defaults,
    Period,
    Role,
    Room,
    Run,
    School,
    SchoolClass,
    Settings,
    StockItem,
)
from trivet.model.station import (
    CheckItem,
    HandsOnStation,
    Kind,
    Material,
    OnlineStation,
    Per,
    Question,
    Reading,
    Record,
    Step,
    TeacherLedStation,
)
from trivet.model.unit import Unit, WriteUp

FIRST_DAY = date(2026, 8, 24)
LAST_DAY = date(2027, 6, 4)
STARTS = date(2026, 11, 30)
"""A Monday with no closure near it."""

ROLES = (
    Role("leader", "Leader", "Keeps the team on the step and the time.", "asks before telling"),
    Role("recorder", "Recorder", "Writes what the team sees, with units.", "writes while it happens"),
    Role("materials", "Materials manager", "Fetches, checks and puts away; watches safety.", "counts before and after"),
    Role("reporter", "Reporter", "Tells the class what the team learned.", "says what the data show"),
    Role("timekeeper", "Timekeeper", "Says when half the time is gone.", "looks at the clock"),
)

EXPECTATIONS = (
    "We keep hands, feet and things where they belong.",
    "We ask three peers first. Danger goes to the nearest adult at once.",
)


def words(count: int) -> str:
    """Return a text of exactly `count` words."""
    return " ".join(["mass"] * count)


def tiny_unit(slug: str = "float-or-sink", **changes: Any) -> Unit:
    """Return a unit whose needed minutes are 17 online (with 2 exploring), 21 hands-on and 15 teacher-led (at 133 words a minute).

    `online`, `hands_on` and `teacher_led` may be mappings of fields to change in that station; other keywords change fields of the unit.
    """
    online = OnlineStation(
        goal="Find what decides whether a block floats.",
        open="sim/index.html",
        use="mass, volume, drop",
        leave_alone="liquid",
        steps=(
            Step("Set the volume to 100 mL. Drop a 50 g block and write what happens.", 3),
            Step("Raise the mass by 20 g and drop it again.", 2, 3),
            Step("Find where sinking begins. Do it again for 50 mL.", 6),
        ),
        done_when="You have both volumes in the table.",
        record=Record(columns=("volume (mL)", "mass (g)", "floats?"), rows=("", "", "", "")),
    )
    hands_on = HandsOnStation(
        goal="Find which solid is which by its density.",
        materials=(
            Material(Decimal(1), "graduated cylinder 25 mL", Per.TEAM),
            Material(Decimal(1), "balance 0.1 g", Per.TEAM, per_count=2),
            Material(Decimal(60), "water", Per.TEAM, unit="mL", used_up=True),
        ),
        hazards=("glass", "spill"),
        set_up_minutes=2.0,
        clean_up_minutes=2.0,
        steps=(
            Step("Weigh the dry solid.", 1, 3),
            Step("Read the water, slide the solid in, read again at eye level.", 3, 3),
            Step("Divide mass by volume and compare with the table.", 5),
        ),
        instead="data/another-class.csv",
        done_when="Three densities stand in the table and the team agrees which is which.",
    )
    teacher_led = TeacherLedStation(
        goal="Read an experiment and judge its claim.",
        read=Reading("story.md", words(532), 532),
        start_alone="Underline what they changed.",
        questions=(
            Question("What did they change, and what did they measure?", "the stone; mass and volume"),
            Question("Which point would you measure again, and why?", "the one off the line"),
        ),
        quick_check=(CheckItem("Name one thing they kept the same.", "the volume of water"),),
        done_when="You can say whether the data support the claim.",
    )
    unit = Unit(
        slug=slug,
        title="Float or sink?",
        question="Why does a lump of clay sink while the same clay floats as a boat?",
        grades=(6, 8),
        online=replace(online, **changes.pop("online", {})),
        hands_on=replace(hands_on, **changes.pop("hands_on", {})),
        teacher_led=replace(teacher_led, **changes.pop("teacher_led", {})),
        write_up=WriteUp(claim_starts="Whether an object floats depends on ..."),
        files=("data/another-class.csv", "sim/index.html", "story.md"),
    )
    return replace(unit, **changes)


def tiny_bells(minutes: int = 52, **others: int) -> dict[str, DayType]:
    """Return day type `regular` with one period P1 from 08:05, and one day type for each other keyword (`early_release=38`)."""
    return {name: DayType(name, {"P1": period("P1", length)}) for name, length in {"regular": minutes, **others}.items()}


def period(name: str, minutes: int, hour: int = 8, minute: int = 5) -> Period:
    """Return a period of that length from a clock time on."""
    end = hour * 60 + minute + minutes
    return Period(name, time(hour, minute), time(end // 60, end % 60))


def tiny_calendar(**changes: Any) -> Calendar:
    """Return the year 2026-08-24 to 2027-06-04, Monday to Friday regular, no closures, no rotation."""
    return replace(Calendar(first=FIRST_DAY, last=LAST_DAY, weekly=dict.fromkeys(range(5), "regular")), **changes)


def tiny_class(class_id: str = "p1", size: int = 31, **changes: Any) -> SchoolClass:
    """Return a grade 7 class in P1 and room r12 with seats 1 to `size`."""
    return replace(
        SchoolClass(
            id=class_id,
            name="Science 7, period 1",
            teacher="rowan",
            grade=7,
            period="P1",
            room="r12",
            seats=tuple(range(1, size + 1)),
        ),
        **changes,
    )


def tiny_room(room_id: str = "r12", **changes: Any) -> Room:
    """Return a room in which the teacher sees both other stations, with 18 devices."""
    return replace(
        Room(
            id=room_id,
            name="Room 12",
            stands={
                Kind.ONLINE: "tables by the window",
                Kind.HANDS_ON: "benches with sinks",
                Kind.TEACHER_LED: "half-round table by the board",
            },
            sees=(Kind.HANDS_ON, Kind.ONLINE),
            area_sq_ft=1500,
            devices=18,
            store="north prep room",
        ),
        **changes,
    )


def tiny_school(
    *,
    size: int = 31,
    minutes: int = 52,
    bells: Mapping[str, DayType] | None = None,
    calendar: Calendar | None = None,
    classes: Iterable[SchoolClass] | None = None,
    rooms: Iterable[Room] | None = None,
    runs: Iterable[Run] = (),
    defaults: Defaults | None = None,
    inventory: Iterable[StockItem] | None = None,
    **settings: Any,
) -> School:
    """Return a school with one class of `size` that meets daily for `minutes`; other keywords change the settings."""
    stock = (
        StockItem(item="graduated cylinder 25 mL", have=Decimal(12), store="north prep room"),
        StockItem(item="balance 0.1 g", have=Decimal(6), store="north prep room"),
    )
    return School(
        settings=replace(
            Settings(
                name="Marsh Lane Middle School",
                time_zone="America/Chicago",
                site="https://trivet.example/",
                teachers={"rowan": "Ms. Rowan"},
                simulations=("float-or-sink",),
                defaults=defaults or Defaults(),
            ),
            **settings,
        ),
        bells=dict(bells) if bells is not None else tiny_bells(minutes),
        calendar=calendar or tiny_calendar(),
        classes={c.id: c for c in (classes if classes is not None else (tiny_class(size=size),))},
        rooms={r.id: r for r in (rooms if rooms is not None else (tiny_room(),))},
        roles=ROLES,
        expectations=EXPECTATIONS,
        inventory=tuple(inventory) if inventory is not None else stock,
        runs=tuple(replace(r, index=i) for i, r in enumerate(runs)),
    )


def tiny_department(
    *,
    size: int = 31,
    minutes: int = 52,
    unit: Unit | None = None,
    units: Iterable[Unit] = (),
    starts: date = STARTS,
    way: str = "rotate",
    runs: Iterable[Run] | None = None,
    second_adult: Kind | None = None,
    lost: tuple[date, ...] = (),
    locks: Iterable[Lock] = (),
    **school: Any,
) -> Department:
    """Return a department in which class p1 of `size` students runs `unit` from `starts` on in periods of `minutes`.

    `units` come on top of `unit`; `runs` replaces the one run; every other keyword goes to `tiny_school`.
    """
    first = unit or tiny_unit()
    given = tuple(runs) if runs is not None else (
        Run(class_id="p1", unit=first.slug, starts=starts, way=way, second_adult=second_adult, lost=lost),
    )  # fmt: skip
    return Department(
        school=tiny_school(size=size, minutes=minutes, runs=given, **school),
        units={u.slug: u for u in (first, *units)},
        locks={(k.class_id, k.unit): k for k in locks},
    )
