"""Runs of two units in one or two classes, for tests of checks that look at several runs."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

from tests.support.department import STARTS, tiny_class, tiny_department, tiny_unit
from trivet.model.department import Department
from trivet.model.school import Run
from trivet.planning.department import plan_department

UNITS = ("float-or-sink", "circuits")


def run(class_id: str = "p1", unit: str = "float-or-sink", starts: date = STARTS, **how: Any) -> Run:
    return Run(class_id=class_id, unit=unit, starts=starts, **how)


def department(*runs: Run, **school: Any) -> Department:
    return tiny_department(units=[tiny_unit(unit) for unit in UNITS[1:]], runs=runs, **school)


def said(made: Department, code: str) -> list[str]:
    return [problem.sentence for problem in plan_department(made).problems if problem.code == code]


def rewritten(made: Department, place: int, sentence: str) -> Department:
    """The department with the first date of a remedy written into a run, as its words say."""
    line = sentence.split("`starts: ")[1][:10]
    changed = replace(made.school.runs[place], starts=date.fromisoformat(line), begins="date", after="", gap_days=0)
    runs = tuple(changed if at == place else each for at, each in enumerate(made.school.runs))
    return replace(made, school=replace(made.school, runs=runs))


def classes(**other: Any) -> list[Any]:
    return [tiny_class(), tiny_class("p2", **{"period": "P1", **other})]
