"""`school/runs.yml`: which class runs which unit from when."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from trivet.model.problem import Problem
from trivet.model.school import Run
from trivet.reading.school.rooms import STATIONS
from trivet.reading.school.sentences import read_sentence
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.values import snake


def read_runs(sheet: Sheet) -> tuple[tuple[Run, ...], tuple[Problem, ...]]:
    """Return the runs in the order of the file, and which dates do not exist.

    A run without a date to start on is left out; `index` is its place in the file, from 0.
    """
    problems: list[Problem] = []
    runs = [_run(sheet, index, said, problems) for index, said in enumerate(sheet.data["runs"])]
    return tuple(run for run in runs if run), tuple(problems)


def _run(sheet: Sheet, index: int, said: Mapping[str, Any], problems: list[Problem]) -> Run | None:
    starts = read_sentence(sheet, ("runs", index, "starts"), "date", said["starts"], problems)
    lost, done, half = (_listed(sheet, index, key, said, problems) for key in ("lost", "done", "half"))
    if starts is None:
        return None
    return Run(
        class_id=said["class"],
        unit=said["unit"],
        starts=starts,
        way=snake(said.get("way", "rotate")),
        second_adult=STATIONS.get(said.get("second adult", "")),
        lost=tuple(sorted(set(lost))),
        done=tuple(sorted(done, key=lambda each: (each.date, each.rounds))),
        half=tuple(sorted(half, key=lambda each: each.date)),
        index=index,
    )


FORMS = {"lost": "date", "done": "done", "half": "half"}
"""The sentence form of each list of a run."""


def _listed(sheet: Sheet, index: int, key: str, said: Mapping[str, Any], problems: list[Problem]) -> list[Any]:
    read = (read_sentence(sheet, ("runs", index, key, at), FORMS[key], text, problems) for at, text in enumerate(said.get(key, [])))
    return [each for each in read if each is not None]
