"""What a command was asked about."""

from __future__ import annotations

from datetime import date

import click
import pytest

from tests.support.department import STARTS, tiny_class, tiny_department
from trivet.command.asked import as_day, known_names, remedy, run_asked, stop_for, tell
from trivet.model.problem import Place, Problem, Severity
from trivet.model.school import Run

DAY, WEEK = click.Option(["--day"]), click.Option(["--week"])
CONTEXT = click.Context(click.Command("x"))


def test_a_run_is_found_by_class_and_unit() -> None:
    """Of the runs of two classes the one asked for is found; without a row of its own the lines to write are said."""
    runs = [Run(class_id="p2", unit="float-or-sink", starts=STARTS)]
    made = tiny_department(classes=[tiny_class(), tiny_class("p2")], runs=runs)
    assert run_asked(made, "float-or-sink", "p2") == made.school.runs[0]
    with pytest.raises(click.UsageError, match="no row for class p1 and unit float-or-sink; write `- class: p1`, `unit: float-or-sink`"):
        run_asked(made, "float-or-sink", "p1")


@pytest.mark.parametrize(
    ("unit", "class_id", "said"),
    [
        ("float-or-sinc", "", "there is no unit float-or-sinc; did you mean float-or-sink?"),
        ("volcano", "", "write one that stands in units/: float-or-sink"),
        ("", "p11", "there is no class p11; did you mean p1?"),
        ("", "zz", "write one that stands in school/classes.yml: p1"),
    ],
)
def test_names_that_are_not_there(unit: str, class_id: str, said: str) -> None:
    """A unit or class that is not there is misuse, answered with the nearest one, or with where all stand."""
    with pytest.raises(click.UsageError, match=said.replace("?", r"\?")):
        known_names(tiny_department(), unit, class_id)


def test_nothing_asked_is_fine() -> None:
    """Names that are there, and none at all, pass; where nothing is known yet, that is said."""
    known_names(tiny_department(), "float-or-sink", "p1")
    known_names(tiny_department())
    assert remedy("x", (), "units/") == "write one that stands in units/: none so far"


def test_days() -> None:
    """A date is taken, none stays none, and anything else is misuse with the option's own words."""
    assert as_day(CONTEXT, DAY, "2026-11-30") == date(2026, 11, 30)
    assert as_day(CONTEXT, DAY, None) is None
    with pytest.raises(click.UsageError, match="2026-11-31 is no date; write --day with a day such as 2026-11-30"):
        as_day(CONTEXT, DAY, "2026-11-31")
    with pytest.raises(click.UsageError, match="write --week with any day of the week, such as 2026-11-30"):
        as_day(CONTEXT, WEEK, "next")


def test_problems_are_told_without_their_lines(capsys: pytest.CaptureFixture[str]) -> None:
    """Problems go to the error output with a count and no quotation, none says nothing, and stopping exits with 1."""
    problem = Problem("x", Severity.ERROR, Place("private/roster-p1.csv", 2, 1, 4), "this is odd", "mend it")
    tell([])
    assert capsys.readouterr() == ("", "")
    with pytest.raises(click.exceptions.Exit) as stopped:
        stop_for(CONTEXT, [problem])
    assert stopped.value.exit_code == 1
    assert capsys.readouterr() == ("", "private/roster-p1.csv:2:1: this is odd; mend it\n1 error in 1 file\n")
