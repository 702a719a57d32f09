"""The lines of a run, and the file with one run more."""

from __future__ import annotations

import pytest

from tests.support.department import STARTS
from trivet.command.run_lines import as_item, run_lines, with_run
from trivet.model.school import UNSETTLED, Run
from trivet.model.station import Kind

LINES = ("class: p1", "unit: sound")


@pytest.mark.parametrize(
    ("text", "new"),
    [
        ("", "runs:\n  - class: p1\n    unit: sound\n"),
        ("# all of them\nruns: []  # none so far\n", "# all of them\nruns:  # none so far\n  - class: p1\n    unit: sound\n"),
        ("runs:\n- class: p2\n  unit: x\n", "runs:\n- class: p2\n  unit: x\n- class: p1\n  unit: sound\n"),
        (
            "runs:\n    -   class: p2\n        unit: x",
            "runs:\n    -   class: p2\n        unit: x\n    -   class: p1\n        unit: sound\n",
        ),
        ("runs:\r\n  - class: p2\r\n\r\n# end\r\n", "runs:\r\n  - class: p2\r\n  - class: p1\r\n    unit: sound\r\n\r\n# end\r\n"),
        ("\ufeffruns:\n  - class: p2\n", "\ufeffruns:\n  - class: p2\n  - class: p1\n    unit: sound\n"),
    ],
)
def test_the_file_with_one_run_more(text: str, new: str) -> None:
    """Indentation, comments, line ends and a byte-order mark stay as they are; the new lines are indented as the others."""
    made, number = with_run(text, LINES)
    assert made == new
    assert "class: p1" in made.splitlines()[number - 1]
    assert set(as_item(LINES, text)) <= set(made.splitlines())


def test_the_keys_of_a_run() -> None:
    """A run is written with the keys that differ from what goes without saying."""
    assert run_lines(Run(class_id="p1", unit="sound", starts=STARTS)) == ("class: p1", "unit: sound", "starts: 2026-11-30")
    made = Run(
        class_id="p1", unit="sound", starts=UNSETTLED, begins="after", after="x", gap_days=10, by=STARTS, way="whole_class",
        second_adult=Kind.HANDS_ON,
    )  # fmt: skip
    assert run_lines(made)[2:] == ("after: x", "gap: 10 days", "by: 2026-11-30", "way: whole class", "second adult: hands-on")
