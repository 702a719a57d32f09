from __future__ import annotations

from tests.support.sheets import sheet
from trivet.reading.school.builtin import EXPECTATIONS
from trivet.reading.school.expectations import read_expectations


def test_the_department_s_sentences_replace_the_built_in_ones() -> None:
    """Sentences stand in the order of the file."""
    assert read_expectations(sheet("expectations", "expectations:\n  - One.\n  - Two.\n")) == ("One.", "Two.")


def test_built_in_expectations_never_send_danger_to_classmates() -> None:
    """Wherever three classmates come first, danger goes to the nearest adult at once, in the very next sentence."""
    built_in = read_expectations(None)
    assert built_in == EXPECTATIONS
    asks = next(i for i, sentence in enumerate(built_in) if "three classmates" in sentence)
    for word in ("hurt", "broken", "spilled", "smoking", "frightening", "nearest adult at once"):
        assert word in built_in[asks + 1]
