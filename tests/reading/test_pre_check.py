"""Scores of pre-checks, from the private folder."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.support.department import tiny_class
from tests.support.sheets import codes
from trivet.reading.pre_check import pre_checks_of, read_pre_checks

SIX = tiny_class(size=6)
UNITS = ("float-or-sink", "moving-plates")
SECRET = "Quillfeather"


def test_scores_are_read_as_shares_and_percents() -> None:
    """4/5, 4 of 5, 80 and 80 % are the same score; an empty one was not taken; units stand apart."""
    lines = ["unit,seat,score", *(f"float-or-sink,{seat},{score}" for seat, score in enumerate(("4/5", "4 of 5", "80", "80 %", ""), 1))]
    found, problems = pre_checks_of("\n".join([*lines, "moving-plates,p1-06,1/3"]), "f", SIX, UNITS)
    assert problems == ()
    assert found == {"float-or-sink": dict.fromkeys(range(1, 5), 80), "moving-plates": {6: 33}}


def test_without_a_file_there_are_no_scores(tmp_path: Path) -> None:
    """A pre-check need not be taken."""
    assert read_pre_checks(tmp_path, SIX, UNITS) == ({}, ())


@pytest.mark.parametrize(
    ("line", "code"),
    [
        (f"float-or-sink,{SECRET},3/5", "unknown-seat"),
        ("float-or-sink,7,3/5", "unknown-seat"),
        (f"float-or-sink,1,{SECRET}", "unreadable-score"),
        ("float-or-sink,1,6/5", "unreadable-score"),
        ("float-or-sink,1,3/0", "unreadable-score"),
        ("float-or-sink,1,101", "unreadable-score"),
        ("flaot-or-sink,1,3/5", "unknown-unit"),
        ("float-or-sink,2,3/5\nfloat-or-sink,2,4/5", "seat-twice"),
    ],
)
def test_what_cannot_be_read_is_told_and_never_repeated(line: str, code: str) -> None:
    """Each slip has its code and a remedy, and no message holds what stands in the cell."""
    _, problems = pre_checks_of(f"unit,seat,score\n{line}\n", "f", SIX, UNITS)
    assert codes(problems) == [code]
    assert all(SECRET not in f"{problem}" and problem.remedy.startswith(("write", "keep")) for problem in problems)


def test_titles_are_asked_for() -> None:
    """Without its three titles a list is not guessed at."""
    assert codes(pre_checks_of("seat,score\n1,2\n", "f", SIX, UNITS)[1]) == ["missing-column"]
