from __future__ import annotations

from datetime import date

from tests.support.sheets import codes, schema_problems, sheet
from trivet.model.school import Run
from trivet.model.station import Kind
from trivet.reading.school.runs import read_runs

ONE = "runs:\n  - class: p1\n    unit: float-or-sink\n    starts: 2026-11-30\n"


def test_a_run_is_a_class_a_unit_and_a_date() -> None:
    """It rotates, with no second adult and no lost day, unless it says otherwise."""
    assert read_runs(sheet("runs", ONE)) == ((Run(class_id="p1", unit="float-or-sink", starts=date(2026, 11, 30)),), ())


def test_everything_else_of_a_run() -> None:
    """`whole class` is the model's `whole_class`, a second adult is a post, and lost days are sorted and each there once."""
    more = "    way: whole class\n    second adult: hands-on\n    lost:\n      - 2026-12-02\n      - 2026-12-01\n      - 2026-12-02\n"
    (run,), problems = read_runs(sheet("runs", ONE + more))
    assert problems == ()
    assert (run.way, run.second_adult, run.lost) == ("whole_class", Kind.HANDS_ON, (date(2026, 12, 1), date(2026, 12, 2)))


def test_a_run_without_a_date_that_exists_is_left_out_and_the_others_keep_their_place() -> None:
    """`index` points into the file, so that a later problem is shown at the right line."""
    text = ONE.replace("2026-11-30", "2026-11-31") + ONE.partition("\n")[2].replace("p1", "p2")
    runs, problems = read_runs(sheet("runs", text))
    assert [(run.class_id, run.index) for run in runs] == [("p2", 1)]
    assert codes(problems) == ["date-unreadable"]


def test_a_second_adult_stands_at_a_station() -> None:
    """A post that is no station is answered with the nearest one."""
    assert schema_problems("runs", ONE + "    second adult: hands on\n") == [
        '5: run 1, second adult: "hands on" is not one of the words known here; write hands-on'
    ]
