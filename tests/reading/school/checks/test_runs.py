from __future__ import annotations

from datetime import date

from tests.support.department import tiny_bells, tiny_calendar, tiny_class
from tests.support.sheets import said, sheet
from trivet.model.problem import Severity
from trivet.model.school import Calendar, Closure
from trivet.reading.school.checks.runs import check_run_dates, check_run_names, sound_runs
from trivet.reading.school.runs import read_runs

ONE = "runs:\n  - class: p1\n    unit: float-or-sink\n    starts: 2026-11-30\n"
TWO = ONE + "  - class: p1\n    unit: moving-plates\n    starts: 2026-12-07\n"
BREAK = tiny_calendar(closures=(Closure(date(2026, 11, 25), date(2026, 11, 27), "fall break"),))


def names(
    text: str, classes: tuple[str, ...] | None = ("p1", "p2"), units: tuple[str, ...] = ("float-or-sink", "moving-plates")
) -> list[str]:
    """Hold runs against classes and units."""
    written = sheet("runs", text)
    return said(check_run_names(written, read_runs(written)[0], classes, units))


def dates(text: str, calendar: Calendar = BREAK, meets: tuple[str, ...] = ()) -> list[str]:
    """Hold runs against the calendar."""
    written = sheet("runs", text)
    return said(check_run_dates(written, read_runs(written)[0], {"p1": tiny_class(meets=meets)}, calendar, tiny_bells()))


def test_known_classes_and_units_pass() -> None:
    """One class may run several units."""
    assert names(TWO) == []


def test_an_unknown_class_or_unit_gets_the_nearest_one() -> None:
    """Both names of a run are looked at."""
    assert names(ONE.replace("p1", "p11").replace("float-or-sink", "float-and-sink")) == [
        '2: run 1, class: there is no class "p11"; write p1',
        '3: run 1, unit: there is no unit "float-and-sink"; write float-or-sink',
    ]


def test_a_class_that_could_not_be_read_is_not_called_unknown() -> None:
    """While classes.yml is broken, runs are asked for their units alone."""
    assert names(ONE, classes=None) == []


def test_a_class_runs_a_unit_once_a_year() -> None:
    """The second run is the one that is answered, and the first is named with its line."""
    assert names(TWO.replace("moving-plates", "float-or-sink")) == [
        "6: run 2, unit: p1 already runs float-or-sink (line 2), and a class runs a unit once a school year; leave one of the two out"
    ]


def test_a_start_outside_the_year_is_an_error() -> None:
    """Before the first day and after the last one nothing can be planned."""
    written = sheet("runs", TWO.replace("2026-11-30", "2026-08-17").replace("2026-12-07", "2027-12-07"))
    found = list(check_run_dates(written, read_runs(written)[0], {"p1": tiny_class()}, BREAK, tiny_bells()))
    assert said(found) == [
        "4: run 1, starts: 2026-08-17 lies before the school year; write a day from 2026-08-24 to 2027-06-04",
        "7: run 2, starts: 2027-12-07 lies after the school year; write a day from 2026-08-24 to 2027-06-04",
    ]
    assert {problem.severity for problem in found} == {Severity.ERROR}


def test_a_start_on_a_day_without_the_class_is_answered_with_its_next_day() -> None:
    """Closed days, weekends and other rotation days are warnings: the unit can begin at the next meeting."""
    assert dates(ONE.replace("2026-11-30", "2026-11-26")) == [
        "4: run 1, starts: school is closed on 2026-11-26; write 2026-11-30, the next day on which it meets"
    ]
    assert dates(ONE.replace("2026-11-30", "2026-11-28")) == [
        "4: run 1, starts: p1 does not meet on 2026-11-28; write 2026-11-30, the next day on which it meets"
    ]
    assert dates(ONE.replace("2026-11-30", "2026-08-25"), tiny_calendar(rotation=("A", "B")), meets=("A",)) == [
        "4: run 1, starts: p1 does not meet on 2026-08-25; write 2026-08-26, the next day on which it meets"
    ]
    assert dates(ONE.replace("2026-11-30", "2027-06-04"), tiny_calendar(weekly={0: "regular"})) == [
        "4: run 1, starts: p1 does not meet on 2027-06-04; write an earlier day: it does not meet again"
    ]


def test_a_lost_day_is_a_meeting_of_the_run() -> None:
    """A day before the start or without a meeting can't have been lost."""
    lost = ONE + "    lost:\n      - 2026-12-01\n      - 2026-11-24\n      - 2026-12-05\n"
    assert dates(lost) == [
        "7: run 1, lost day 2: 2026-11-24 comes before this run starts on 2026-11-30; leave it out, or mend the date",
        "8: run 1, lost day 3: p1 does not meet on 2026-12-05 anyway; leave it out, or mend the date",
    ]


def test_only_sound_runs_are_planned() -> None:
    """Unknown names, a second run of the same unit and starts outside the year are left out; all others keep their order."""
    text = (
        TWO
        + "  - class: p1\n    unit: float-or-sink\n    starts: 2027-01-11\n  - class: p9\n    unit: float-or-sink\n    starts: 2027-01-11\n"
    )
    text += (
        "  - class: p2\n    unit: float-or-sink\n    starts: 2025-01-11\n  - class: p2\n    unit: moving-plates\n    starts: 2027-01-11\n"
    )
    runs, _ = read_runs(sheet("runs", text))
    kept = sound_runs(runs, ("p1", "p2"), ("float-or-sink", "moving-plates"), tiny_calendar())
    assert [run.index for run in kept] == [0, 1, 5]
