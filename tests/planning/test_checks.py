"""Problems that need a computation, each with its place, words and remedy."""

from __future__ import annotations

import subprocess
import sys
from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from tests.support.department import STARTS, tiny_class, tiny_department, tiny_room, tiny_unit, words
from trivet.model.department import Department
from trivet.model.places import Places
from trivet.model.problem import Place, Problem, Severity
from trivet.model.school import Run, StockItem
from trivet.model.station import Kind, Material, Per, Reading, Step
from trivet.model.unit import Unit
from trivet.planning.checks import CODES, check_units
from trivet.planning.department import plan_department

FILE = "units/float-or-sink/index.md"


def placed(unit: Unit) -> Unit:
    """The unit with places of its stations, as reading gives them."""
    lines = {"stations": 5, "online": 6, "hands-on": 20, "teacher-led": 40}
    keys = {("stations", name): Place(FILE, line, 3, len(name)) for name, line in lines.items() if name != "stations"}
    return replace(unit, places=Places(FILE, {}, {**keys, ("stations",): Place(FILE, 5, 1, 8)}))


def quiet_unit(**changes: Any) -> Unit:
    """A unit about which there is nothing to say."""
    changes["hands_on"] = {"materials": tiny_unit().hands_on.materials[:2], **changes.get("hands_on", {})}
    unit = tiny_unit(
        online={"steps": (Step("Try.", 18),)},
        teacher_led={"read": Reading("story.md", words(900), 900)},
        **changes,
    )
    return placed(unit)


def found(department: Department) -> list[tuple[str, str, str]]:
    return [(problem.code, str(problem.severity), problem.sentence) for problem in plan_department(department).problems]


def only(department: Department, code: str) -> Problem:
    problems = [problem for problem in plan_department(department).problems if problem.code == code]
    assert len(problems) == 1, found(department)
    return problems[0]


def test_nothing_to_say() -> None:
    """A unit whose stations fit, in a class of 24, gives no problem."""
    assert found(tiny_department(size=24, unit=quiet_unit())) == []


def test_station_too_long_names_its_steps() -> None:
    """A station over the longest round is an error at the station that names every part and the minutes to cut."""
    unit = placed(tiny_unit(hands_on={"steps": (Step("Weigh.", 3, 3), Step("Read.", 19.5))}))
    problem = only(tiny_department(unit=unit), "station-too-long")
    assert problem.severity is Severity.ERROR
    assert problem.place == Place(FILE, 20, 3, 8)
    assert problem.sentence == (
        "hands-on: this station needs 32½ min, more than the longest round of 30: set up 2 + step 1 9 (3 min, 3 times) + step 2 19½ "
        "+ clean up 2; cut 2½ min, or write `round: 20-33 min` where a class has the time"
    )


def test_bounds_of_the_unit_outrank_the_departments() -> None:
    """A unit's own bounds decide: 34 minutes are too long for 20 to 30 and fit 20 to 35."""
    unit = quiet_unit(hands_on={"steps": (Step("Weigh.", 30),)})
    assert only(tiny_department(size=24, unit=unit), "station-too-long")
    wider = replace(unit, round_minutes=(20, 35), online=replace(unit.online, finished_early="Draw."))
    wider = replace(wider, teacher_led=replace(wider.teacher_led, finished_early="Read on."))
    assert found(tiny_department(size=24, minutes=60, unit=wider)) == []


def test_short_round_is_advice() -> None:
    """A unit that needs less than the shortest round is advice, with the longest station named."""
    unit = placed(tiny_unit(hands_on={"steps": (Step("Weigh.", 10),)}))
    problem = only(tiny_department(unit=unit), "round-short")
    assert (problem.severity, problem.place) == (Severity.ADVICE, Place(FILE, 5, 1, 8))
    assert problem.what == "no station fills the shortest round of 20 min: the longest, online, needs 17"
    assert problem.remedy == "add something for early finishers, or write `round: 17-30 min`"


@pytest.mark.parametrize(
    ("minutes", "idle"), [(12.5, None), (12, "idle for 6 min in a round of 20: it needs 14"), (11.5, "idle for 6½ min")]
)
def test_idle_from_six_minutes_on(minutes: float, idle: str | None) -> None:
    """A station that needs six minutes less than the round is advice, unless it says what to do when finished early."""
    unit = quiet_unit(hands_on={"steps": (Step("Weigh.", 14),)})
    unit = replace(unit, online=replace(unit.online, steps=(Step("Try.", minutes),)))
    said = [text for code, severity, text in found(tiny_department(size=24, unit=unit)) if code == "station-idle" and severity == "advice"]
    assert len(said) == (idle is not None)
    if idle:
        assert said[0].startswith(f"online: {idle}")
    early = replace(unit, online=replace(unit.online, finished_early="Try a block of your own."))
    assert not [code for code, _, _ in found(tiny_department(size=24, unit=early)) if code == "station-idle"]


def test_no_day_fits_stands_at_the_run() -> None:
    """A run that no day holds is an error at its place in runs.yml, with the shortest period that would do."""
    department = tiny_department(size=24, minutes=38, unit=quiet_unit())
    runs = Places("school/runs.yml", {("runs", 0): Place("school/runs.yml", 2, 5)})
    problem = only(replace(department, places={"school/runs.yml": runs}), "no-day-fits")
    assert (problem.severity, problem.place) == (Severity.ERROR, Place("school/runs.yml", 2, 5))
    assert problem.where == "p1, float-or-sink"
    assert "it needs 42 min (" in problem.what
    assert "is 38" in problem.what
    assert problem.remedy.startswith("cut 4 min: ")


@pytest.mark.parametrize(
    ("hazards", "second_adult", "way", "codes"),
    [
        (("open flame",), None, "rotate", {"second-adult-needed"}),
        (("open flame",), Kind.HANDS_ON, "rotate", set()),
        (("open flame",), Kind.ONLINE, "rotate", {"second-adult-needed"}),
        (("open flame",), None, "whole_class", set()),
        (("glass",), None, "rotate", set()),
        ((), None, "rotate", set()),
    ],
)
def test_an_adult_at_hand(hazards: tuple[str, ...], second_adult: Kind | None, way: str, codes: set[str]) -> None:
    """An at-hand hazard at a rotating station is an error unless a second adult is posted there."""
    department = tiny_department(size=24, unit=quiet_unit(hands_on={"hazards": hazards}), second_adult=second_adult, way=way)
    assert {code for code, severity, _ in found(department) if severity == "error"} == codes


@pytest.mark.parametrize(
    ("sees", "hazards", "second_adult", "codes"),
    [
        ((Kind.ONLINE,), ("glass",), None, ["hands-on-not-seen"]),
        ((), ("glass",), Kind.HANDS_ON, []),
        ((Kind.HANDS_ON,), ("glass",), None, []),
        ((), (), None, []),
    ],
)
def test_the_hands_on_station_is_seen(
    *, sees: tuple[Kind, ...], hazards: tuple[str, ...], second_adult: Kind | None, codes: list[str]
) -> None:
    """A hazard needs a room where the teacher-led station sees the hands-on one; one error a room, however many runs."""
    runs = [
        Run(class_id="p1", unit="float-or-sink", starts=STARTS, second_adult=second_adult),
        Run(class_id="p1", unit="circuits", starts=date(2027, 1, 11), second_adult=second_adult),
    ]
    unit = quiet_unit(hands_on={"hazards": hazards})
    department = tiny_department(size=24, unit=unit, units=(replace(unit, slug="circuits"),), runs=runs, rooms=[tiny_room(sees=sees)])
    assert [code for code, severity, _ in found(department) if severity == "error"] == codes


def test_class_size_is_advice_once_a_class() -> None:
    """More than 24 students with a hands-on hazard get one advice a class, which says how many are at the hazard (NSTA)."""
    runs = [Run(class_id="p1", unit=slug, starts=day) for slug, day in (("float-or-sink", STARTS), ("circuits", date(2027, 1, 11)))]
    unit = quiet_unit()
    department = tiny_department(size=36, unit=unit, units=(replace(unit, slug="circuits"),), runs=runs)
    problem = only(department, "class-size")
    assert problem.severity is Severity.ADVICE
    assert problem.what.startswith("36 students: NSTA advises at most 24")
    assert "About 12 are at the hands-on station at once" in problem.what
    assert "local code and your district's policy" in problem.what
    assert not [code for code, _, _ in found(tiny_department(size=36, unit=quiet_unit(hands_on={"hazards": ()})))]


def test_avoided_item_is_replaced_for_the_whole_class() -> None:
    """An item that contains what the class avoids is a warning at the run, and names no student."""
    unit = quiet_unit(hands_on={"materials": (Material(Decimal(1), "Balloon", Per.TEAM),)})
    stock = [StockItem(item="balloon", have=Decimal(20), contains=("latex",))]
    department = tiny_department(unit=unit, classes=[tiny_class(size=24, avoid=("peanut", "latex"))], inventory=stock)
    problem = only(department, "item-avoided")
    assert problem.severity is Severity.WARNING
    assert problem.what == "Balloon contains latex, which this class avoids"
    assert "whole class" in problem.remedy
    assert found(tiny_department(size=24, unit=unit, inventory=stock)) == []


def test_every_code_is_listed() -> None:
    """Every code that these checks give is in the list that the documentation reads."""
    package = Path(sys.modules[check_units.__module__].__file__ or "").parent
    text = "".join(path.read_text() for path in package.glob("*.py") if path.name != "__init__.py")
    text += (package.parent / "untimed.py").read_text()
    assert all(f'"{code}"' in text for code in CODES)
    departments = [
        tiny_department(minutes=38),
        tiny_department(starts=date(2027, 6, 3)),
        tiny_department(classes=[tiny_class(period="P9")]),
        tiny_department(unit=tiny_unit(hands_on={"hazards": ("heat",)}), rooms=[tiny_room(sees=())]),
        tiny_department(unit=tiny_unit(hands_on={"steps": (Step("a", 31),)})),
    ]
    codes = {problem.code for department in departments for problem in plan_department(department).problems}
    assert codes <= set(CODES)
    assert len(codes) >= 6


def test_units_alone() -> None:
    """Units can be checked without runs, in order of file and line."""
    units = check_units(tiny_department(unit=placed(tiny_unit()), runs=[]))
    assert [(problem.code, problem.place.line) for problem in units] == [("station-idle", 6), ("station-idle", 40)]


def test_checks_import_nothing_slow() -> None:
    """Checking imports neither the library of units of measure nor of dates nor of schemas: their import costs more than the checks."""
    code = (
        "import sys, trivet.planning.checks; print([m for m in ('pint', 'dateutil', 'jsonschema', 'yaml', 'random') if m in sys.modules])"
    )
    result = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=60)
    assert result.stdout.strip() == "[]"
