"""Where in school/ something stands."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.support.department import STARTS, tiny_department
from trivet.model.places import Path, Places
from trivet.model.problem import Place
from trivet.model.school import Run
from trivet.planning.checks.places import ROOMS, RUNS, in_file, named, of_run

RUN = Run(class_id="p1", unit="float-or-sink", starts=STARTS, index=1)
AT: dict[Path, Place] = {
    ("runs",): Place(RUNS, 1, 1, 5),
    ("runs", 0): Place(RUNS, 2, 5),
    ("runs", 1): Place(RUNS, 6, 5),
    ("runs", 1, "starts"): Place(RUNS, 8, 13, 10),
}


@pytest.mark.parametrize(("path", "line"), [((), 6), (("starts",), 8), (("second adult",), 6), (("starts", "at"), 8)])
def test_the_nearest_thing_above_stands_in(path: tuple[str, ...], line: int) -> None:
    """A value that was not written is shown at its run; one that was, at itself."""
    department = replace(tiny_department(), places={RUNS: Places(RUNS, AT)})
    assert of_run(department, RUN, *path).line == line


def test_a_run_past_the_last_is_shown_at_the_list() -> None:
    """A run whose own place nobody kept is shown at the list of runs."""
    department = replace(tiny_department(), places={RUNS: Places(RUNS, AT)})
    assert of_run(department, replace(RUN, index=9)) == AT["runs",]


def test_a_file_nobody_read_is_shown_at_its_first_line() -> None:
    """Without kept places the file itself is named, at its first character."""
    assert in_file(tiny_department(), ROOMS, "rooms", "r12") == Place("school/rooms.yml", 1, 1, 1)


def test_a_run_is_called_by_class_and_unit() -> None:
    """A message names a run as its file does: the class, then the unit's slug."""
    assert named(RUN) == "p1, float-or-sink"
