"""What a run records as done can be so."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.support.sheets import codes, said, sheet
from trivet.model.problem import Problem
from trivet.reading.school.checks.record import check_record
from trivet.reading.school.runs import read_runs

STARTS = date(2026, 11, 30)
MEETS = tuple(STARTS + timedelta(days=day) for day in (0, 1, 2, 3, 4, 7, 8, 9))


def found(*lines: str, more: str = "", starts: date | None = STARTS) -> list[Problem]:
    """Hold a run with these `done` and other lines against the dates on which its class meets."""
    text = f"runs:\n  - class: p1\n    unit: float-or-sink\n    starts: {starts}\n{more}"
    text += "    done:\n" + "".join(f"      - {line}\n" for line in lines) if lines else ""
    written = sheet("runs", text)
    (run,) = read_runs(written)[0]
    return list(check_record(written, run, MEETS))


@pytest.mark.parametrize(
    ("line", "more", "code"),
    [
        ("2026-11-30, round 1", "", None),
        ("2026-11-27, round 1", "", "done-before-start"),
        ("2026-12-05, round 1", "", "done-no-meeting"),
        ("2026-12-01, round 1", "    lost:\n      - 2026-12-01\n", "lost-and-done"),
        ("2026-11-30, round 1, without A", "", None),
        ("2026-11-30, round 1, without A", "    way: whole class\n", "without-in-whole-class"),
    ],
)
def test_a_record_is_of_a_day_that_was_held(line: str, more: str, code: str | None) -> None:
    """A round is recorded for a meeting of the class, from the run's start on, that was not lost; groups miss rounds of their own only."""
    assert codes(found(line, more=more)) == ([code] if code else [])


@given(st.lists(st.integers(1, 3), min_size=1, max_size=6))
def test_each_round_is_done_once(rounds: list[int]) -> None:
    """Of several lines for one round all but the first are told, with the line on which it is done already."""
    told = found(*(f"{day}, round {number}" for day, number in zip(MEETS, rounds, strict=False)))
    assert codes(told) == ["round-done-twice"] * (len(rounds) - len(set(rounds)))
    for problem in told:
        number = rounds[problem.place.line - 6]
        assert f"round {number} is done already on line {6 + rounds.index(number)}" in problem.sentence


def test_one_round_is_stopped_on_a_day() -> None:
    """Two rounds can't both have been stopped in one lesson."""
    half = "    half:\n      - 2026-12-01, round 2, 9 min\n      - 2026-12-01, round 3, 4 min\n"
    (sentence,) = said(found(more=half))
    assert sentence.startswith("7: ") and "a round was stopped on 2026-12-01 already" in sentence
