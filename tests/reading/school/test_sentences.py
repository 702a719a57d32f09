from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from tests.support.sheets import said, schema_problems, sheet
from trivet.model.problem import Problem
from trivet.reading import forms
from trivet.reading.schemas import schema
from trivet.reading.school.sentences import FORMS, read_key, read_sentence

SCHEMAS = ("school", "bells", "calendar", "classes", "rooms", "roles", "expectations", "inventory", "runs", "lock")
PATTERNS = {
    "date": forms.DATE_PATTERN,
    "days": forms.DATE_RANGE_PATTERN,
    "term": forms.TERM_PATTERN,
    "times": forms.CLOCK_RANGE_PATTERN,
    "numbers": forms.NUMBERS_PATTERN,
    "late": forms.LATE_PATTERN,
    "gap": forms.GAP_PATTERN,
    "done": forms.DONE_PATTERN,
    "half": forms.HALF_PATTERN,
    "order": forms.ORDER_PATTERN,
    "amount": forms.AMOUNT_PATTERN,
    "area": forms.AREA_PATTERN,
    "share": forms.PERCENT_PATTERN,
}


def parts(schema_part: Any) -> Iterator[dict[str, Any]]:
    """Every mapping inside a schema."""
    if isinstance(schema_part, dict):
        yield schema_part
        for child in schema_part.values():
            yield from parts(child)
    elif isinstance(schema_part, list):
        for child in schema_part:
            yield from parts(child)


@pytest.mark.parametrize("name", SCHEMAS)
def test_a_schema_and_its_reader_have_one_pattern(name: str) -> None:
    """What an editor accepts by the schema is what the sentence form reads."""
    for part in parts(schema(name)):
        if isinstance(part.get("x-form"), str):
            assert part["pattern"] == PATTERNS[part["x-form"]], part


def test_every_form_is_used_and_has_a_pattern() -> None:
    """No form stands here without a place in a file."""
    used = {part["x-form"] for name in SCHEMAS for part in parts(schema(name)) if isinstance(part.get("x-form"), str)}
    assert used == set(FORMS) == set(PATTERNS)


@pytest.mark.parametrize("name", SCHEMAS)
def test_every_property_is_described_and_shown(name: str) -> None:
    """Each key of a school file has a description and an example, for editors and for the guide."""
    for part in parts(schema(name)):
        properties = part.get("properties", {})
        if isinstance(properties, dict) and part.get("type") == "object":
            assert part.get("additionalProperties") is False
            for key, said in properties.items():
                assert said.get("description"), key
                assert said.get("examples"), key


@pytest.mark.parametrize("name", SCHEMAS)
def test_examples_fit_their_own_part(name: str) -> None:
    """An example that the schema itself refuses would teach a mistake."""
    for part in parts(schema(name)):
        for example in part["examples"] if isinstance(part.get("examples"), list) else []:
            assert list(Draft202012Validator(part).iter_errors(example)) == [], example


def test_a_slip_is_answered_with_the_corrected_line() -> None:
    """The key stands in the remedy, so that the line can be copied."""
    assert schema_problems("runs", "runs:\n  - class: p1\n    unit: float-or-sink\n    starts: 11/30/2026\n") == [
        "4: run 1, starts: this date can't be read: 11/30/2026; write starts: 2026-11-30"
    ]


def test_what_fits_its_pattern_and_can_not_be_is_answered_too() -> None:
    """30 February has the form of a date; as a value and as a key it is answered with the last day of the month."""
    written = sheet("calendar", "first day: 2027-02-30\nlast day: 2027-06-04\nweek:\n  Monday: regular\ndays:\n  2027-02-29: regular\n")
    problems: list[Problem] = []
    assert read_sentence(written, ("first day",), "date", "2027-02-30", problems) is None
    assert read_key(written, ("days", "2027-02-29"), "date", problems) is None
    assert said(problems) == [
        "1: first day: February 2027 has 28 days; write first day: 2027-02-28",
        "6: day 2027-02-29: February 2027 has 28 days; write 2027-02-28",
    ]
