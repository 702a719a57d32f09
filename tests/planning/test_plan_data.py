"""A plan as published data: keys in order, numbers, and the schema."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date, time
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from tests.planning.test_department import of, scene
from tests.support.department import tiny_class, tiny_department, tiny_unit
from tests.support.lock import tiny_lock
from trivet.model.lock import StationGroup
from trivet.model.plan import Caution, MaterialTotal, Note, Plan, PreCheck, Quality, SpotCheck
from trivet.model.station import CheckItem
from trivet.planning.department import plan_department
from trivet.planning.plan_data import plan_json

CONTRACT = json.loads(
    """
{"plan": 1, "unit": "float-or-sink", "class": "p1", "way": "rotate", "engine": "1", "drawn_on": "2026-11-23",
 "pre_check": null,
 "days": [{"date": "2026-11-30", "day_type": "regular", "start": "08:05", "end": "08:57", "minutes": 52, "surplus_minutes": 0,
   "blocks": [
     {"kind": "settle_in", "at": 0, "start": "08:05", "minutes": 4}, {"kind": "expectations", "at": 4, "start": "08:09", "minutes": 1},
     {"kind": "places", "at": 5, "start": "08:10", "minutes": 2}, {"kind": "launch", "round": 1, "at": 7, "start": "08:12", "minutes": 7},
     {"kind": "station", "round": 1, "at": 14, "start": "08:19", "minutes": 23},
     {"kind": "clean_up", "round": 1, "at": 37, "start": "08:42", "minutes": 1},
     {"kind": "evidence", "at": 38, "start": "08:43", "minutes": 2}, {"kind": "reflection", "at": 40, "start": "08:45", "minutes": 10},
     {"kind": "pack_up", "at": 50, "start": "08:55", "minutes": 2}]}],
 "rounds": [{"round": 1, "date": "2026-11-30", "minutes": 23, "stations": {"A": "online", "B": "hands_on", "C": "teacher_led"}}],
 "groups": {"A": {"teams": {"A1": {"p1-01": ["leader", "timekeeper"], "p1-12": ["recorder"],
                                   "p1-20": ["materials"], "p1-31": ["reporter"]}},
                  "pairs": [["p1-01", "p1-14"]]}},
 "quality": {"repeats": 0, "pair_repeats": 0, "proved_minimum": 0, "role_spread": 1},
 "spot_checks": [{"round": 1, "team": "A1", "seat": "p1-01", "kind": "first_step", "ask": "…", "listen_for": "…"}],
 "materials": [{"item": "balance 0.1 g", "need": 2, "unit": "each", "use": "reusable", "have": 3, "short": 0}],
 "cautions": [{"hazard": "glass", "text": "…", "protect": ["…"]}], "notes": [{"code": "…", "text": "…"}]}
"""
)
"""The example that the contract prints."""


@pytest.fixture(scope="module")
def validator(root: Path) -> Draft202012Validator:
    return Draft202012Validator(json.loads((root / "schema" / "plan.schema.json").read_text(encoding="utf-8")))


def the_example() -> Plan:
    """The contract's example as a value: the scene's first day and round, with one team, one check, one item."""
    made = of(plan_department(scene(locks=[tiny_lock(tiny_class())])))
    team = {"p1-01": ("leader", "timekeeper"), "p1-12": ("recorder",), "p1-20": ("materials",), "p1-31": ("reporter",)}
    return replace(
        made,
        days=made.days[:1],
        rounds=made.rounds[:1],
        groups={"A": StationGroup({"A1": team}, (("p1-01", "p1-14"),))},
        quality=Quality(0, 0, 0, 1),
        spot_checks=(SpotCheck(round=1, team="A1", seat="p1-01", kind="first_step", ask="…", listen_for="…"),),
        materials=(
            MaterialTotal(item="balance 0.1 g", need=Decimal(2), unit="each", use="reusable", have=Decimal("3.0"), short=Decimal(0)),
        ),
        cautions=(Caution("glass", "…", ("…",)),),
        notes=(Note("…", "…"),),
    )


def keys(value: Any) -> Any:
    """The keys of all mappings, in order."""
    if isinstance(value, dict):
        return [(key, keys(child)) for key, child in value.items()]
    return [keys(child) for child in value] if isinstance(value, list) else None


def test_the_contracts_example() -> None:
    """The scene gives the contract's example to the letter, keys in the same order, whole numbers without a point."""
    data = plan_json(the_example())
    assert data == CONTRACT
    assert keys(data) == keys(CONTRACT)
    assert json.dumps(data, ensure_ascii=False) == json.dumps(CONTRACT, ensure_ascii=False)


@pytest.mark.parametrize("drawn", [True, False])
@pytest.mark.parametrize("way", ["rotate", "whole_class"])
def test_plans_fit_the_schema(validator: Draft202012Validator, way: str, drawn: bool) -> None:
    """Every kind of plan fits the published schema: drawn or not, rotating or whole class, with a pre-check and half minutes."""
    unit = tiny_unit(pre_check=(CheckItem("a", "b"),))
    locks = [tiny_lock(tiny_class(size=37))] if drawn else []
    plan = of(plan_department(tiny_department(size=37, unit=unit, locks=locks, way=way)))
    data = json.loads(json.dumps(plan_json(plan)))
    assert [error.message for error in validator.iter_errors(data)] == []
    assert any(isinstance(block["at"], float) for day in data["days"] for block in day["blocks"]) == (way == "rotate")


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("plan",), 2),
        (("days", 0, "blocks", 0, "kind"), "recess"),
        (("days", 0, "blocks", 0, "at"), 0.25),
        (("days", 0, "start"), "8:05"),
        (("rounds", 0, "stations", "A"), "outdoors"),
        (("rounds", 0, "half"), False),
        (("groups", "D"), {"teams": {}, "pairs": []}),
        (("groups", "A", "teams", "A1", "Maria"), ["leader"]),
        (("materials", 0, "use"), "lost"),
        (("levels",), [1]),
    ],
)
def test_the_schema_refuses(validator: Draft202012Validator, path: tuple[str | int, ...], value: object) -> None:
    """The schema refuses other versions, kinds, times, numbers and any key that is not in the contract."""
    data: Any = plan_json(replace(the_example(), notes=()))
    assert validator.is_valid(data)
    inner = data
    for step in path[:-1]:
        inner = inner[step]
    inner[path[-1]] = value
    assert not validator.is_valid(data)


def test_what_is_left_out_and_what_is_null() -> None:
    """A half-done round says so, other rounds don't; a pre-check has its clock time; nothing drawn is null."""
    plan = the_example()
    half = plan_json(replace(plan, rounds=(replace(plan.rounds[0], half=True),)))
    assert half["rounds"][0]["half"] is True
    assert "half" not in plan_json(plan)["rounds"][0]
    checked = plan_json(replace(plan, pre_check=PreCheck(date(2026, 11, 20), time(8, 52), 4.5)))
    assert checked["pre_check"] == {"date": "2026-11-20", "start": "08:52", "minutes": 4.5}
    undrawn = plan_json(replace(plan, groups=None, quality=None, drawn_on=None, engine=None, spot_checks=()))
    assert [undrawn[key] for key in ("engine", "drawn_on", "groups", "quality", "spot_checks")] == [None, None, None, None, []]
    unknown = replace(plan.materials[0], have=None, need=Decimal("2.25"))
    assert plan_json(replace(plan, materials=(unknown,)))["materials"][0] == {
        "item": "balance 0.1 g", "need": 2.25, "unit": "each", "use": "reusable", "have": None, "short": 0,
    }  # fmt: skip


def test_quality_counts_roles_over_counted_units() -> None:
    """Repeats are the lock's own; the spread of roles is counted over the units that the lock counts, and over this one."""
    own = tiny_class()
    earlier = tiny_lock(own, "circuits")
    lock = replace(tiny_lock(own), counted=("circuits",), repeats=54, pair_repeats=15, proved_minimum=3)
    department = tiny_department(units=(tiny_unit("circuits"),), locks=[earlier, lock])
    quality = of(plan_department(department)).quality
    assert quality == Quality(54, 15, 3, 2)
