"""Each sentence form is one pattern in the schema: the one that its reader uses."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.reading import forms
from trivet.reading.fits import compiled
from trivet.reading.form_problems import FORMS
from trivet.reading.forms import Unreadable
from trivet.reading.schemas import schema

RULES = schema("unit")
PATTERNS = {
    "step": (RULES["$defs"]["step"], forms.STEP_PATTERN),
    "material": (RULES["$defs"]["material"], forms.MATERIAL_PATTERN),
    "minutes": (RULES["$defs"]["minutes"], forms.MINUTES_PATTERN),
    "grades": (RULES["properties"]["grades"], forms.GRADES_PATTERN),
    "round": (RULES["properties"]["round"], forms.ROUND_PATTERN),
    "share": (RULES["properties"]["level tolerance"], forms.PERCENT_PATTERN),
    "seconds": (RULES["$defs"]["hands-on"]["properties"]["watch"], forms.SECONDS_PATTERN),
}
PIECES = st.sampled_from(
    ["Weigh it.", "(", ")", "1", "2.5", "90", "min", "minutes", ", ", "3 times", "per", "team", "2 teams", "mL", "used up", "-", "s", " "]
)


@pytest.mark.parametrize("form", PATTERNS)
def test_schema_carries_the_reader_s_pattern(form: str) -> None:
    """The pattern in the schema is the pattern of the reader, and the schema names the form."""
    part, pattern = PATTERNS[form]
    assert part["pattern"] == pattern
    assert part["x-form"] == form
    assert set(PATTERNS) == set(FORMS)


@pytest.mark.parametrize("form", ["step", "material", "minutes"])
@given(pieces=st.lists(PIECES, min_size=1, max_size=8))
def test_schema_and_reader_say_the_same(form: str, pieces: list[str]) -> None:
    """A text fits the schema exactly where its reader reads it."""
    text = " ".join(" ".join(pieces).split())
    part, _ = PATTERNS[form]
    assert compiled(part)(text) == (not isinstance(FORMS[form][1](text), Unreadable)), text
