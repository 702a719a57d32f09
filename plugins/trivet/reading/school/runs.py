"""`school/runs.yml`: which class runs which unit from when."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from trivet.model.problem import Problem
from trivet.model.school import UNSETTLED, Run
from trivet.reading.school.rooms import STATIONS
from trivet.reading.school.sentences import read_sentence
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.values import snake


def read_runs(sheet: Sheet) -> tuple[tuple[Run, ...], tuple[Problem, ...]]:
    """Return the runs in the order of the file, and which dates do not exist.

    A run that nothing says the start of is left out; `index` is its place in the file, from 0.
    """
    problems: list[Problem] = []
    runs = [_run(sheet, index, said, problems) for index, said in enumerate(sheet.data["runs"])]
    return tuple(run for run in runs if run), tuple(problems)


def _run(sheet: Sheet, index: int, said: Mapping[str, Any], problems: list[Problem]) -> Run | None:
    before = len(problems)
    lost, done, half = (_listed(sheet, index, key, said, problems) for key in ("lost", "done", "half"))
    order = _listed(sheet, index, "order", said, problems)
    starts, gap, by = (
        read_sentence(sheet, ("runs", index, key), form, said[key], problems) if key in said else None
        for key, form in (("starts", "date"), ("gap", "gap"), ("by", "date"))
    )
    wrong = any(key in said and value is None for key, value in (("starts", starts), ("gap", gap), ("by", by)))
    if len(problems) == before or not wrong:
        problems += _beginning(sheet, index, said)
    if wrong or not {"starts", "after", "by"} & set(said):
        return None
    return Run(
        class_id=said["class"],
        unit=said["unit"],
        starts=UNSETTLED if starts is None else starts,
        begins="date" if starts is not None else "after" if "after" in said else "by",
        after="" if starts is not None else said.get("after", ""),
        gap_days=gap or 0,
        by=by,
        way=snake(said.get("way", "rotate")),
        second_adult=STATIONS.get(said.get("second adult", "")),
        order=tuple(order),
        lost=tuple(sorted(set(lost))),
        done=tuple(sorted(done, key=lambda each: (each.date, each.rounds))),
        half=tuple(sorted(half, key=lambda each: each.date)),
        index=index,
    )


def _beginning(sheet: Sheet, index: int, said: Mapping[str, Any]) -> Iterator[Problem]:
    """Yield what is wrong with how a run's start is given: not at all, or twice."""
    path = ("runs", index)
    if not {"starts", "after", "by"} & set(said):
        remedy = "write `starts:` with a date such as 2026-11-30, `after:` with a unit, or `by:` with the last date"
        yield sheet.error("start-missing", path, "nothing says when this run starts", remedy)
    if "starts" in said and "after" in said:
        what = "the start is given twice, as a date and after a unit"
        yield sheet.error("starts-and-after", (*path, "after"), what, "leave out `starts`, or `after`", at_key=True)
    if "gap" in said and "after" not in said:
        what = "a gap stands only beside `after`"
        yield sheet.error(
            "gap-without-after", (*path, "gap"), what, "write `after:` with the unit before it, or leave `gap` out", at_key=True
        )


FORMS = {"lost": "date", "done": "done", "half": "half", "order": "order"}
"""The sentence form of each list of a run."""


def _listed(sheet: Sheet, index: int, key: str, said: Mapping[str, Any], problems: list[Problem]) -> list[Any]:
    read = (read_sentence(sheet, ("runs", index, key, at), FORMS[key], text, problems) for at, text in enumerate(said.get(key, [])))
    return [each for each in read if each is not None]
