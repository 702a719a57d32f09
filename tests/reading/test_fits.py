"""The quick walk says yes only where the schema library finds nothing."""

from __future__ import annotations

import copy
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from tests.reading.test_validate import good
from trivet.reading.fits import UnknownKeywordError, compiled
from trivet.reading.schemas import schema

WILD = [
    None,
    True,
    False,
    0,
    3,
    -1,
    91,
    Decimal("2.5"),
    Decimal("3.0"),
    "",
    "x",
    "none",
    "3 min",
    "6-8",
    "true",
    [],
    ["x"],
    [1],
    {},
    {"x": 1},
]
PARTS: list[tuple[str, dict[str, Any]]] = [
    ("type", {"type": ["string", "integer"]}),
    ("enum", {"enum": ["x", "none"]}),
    ("const", {"const": 3}),
    ("pattern", {"pattern": "^[0-9]"}),
    ("lengths", {"minLength": 2, "maxLength": 4, "minItems": 1, "maxItems": 1, "minProperties": 1, "maxProperties": 1}),
    ("numbers", {"minimum": 0, "maximum": 90, "exclusiveMinimum": -1, "multipleOf": Decimal("0.5")}),
    ("mapping", {"properties": {"x": {"type": "string"}}, "additionalProperties": False, "required": ["x"]}),
    ("names", {"patternProperties": {"^x$": {"type": "integer"}}, "additionalProperties": False, "propertyNames": {"pattern": "^x$"}}),
    ("list", {"items": {"type": "string"}, "uniqueItems": True}),
    ("if", {"if": {"type": "string"}, "then": {"pattern": "^x$"}, "else": {"type": "object"}}),
    ("allOf", {"allOf": [{"type": "string"}, {"minLength": 1}]}),
    ("$ref", {"$ref": "#/$defs/a", "$defs": {"a": {"type": "array", "items": {"$ref": "#/$defs/a"}}}}),
]


@pytest.mark.parametrize(("name", "part"), PARTS, ids=[name for name, _ in PARTS])
def test_keyword_agrees_with_the_library(name: str, part: dict[str, Any]) -> None:
    """Each keyword gives the library's own answer on values of every shape."""
    quick, library = compiled(part), Draft202012Validator(part)
    for value in [*WILD, [[]], [["x"]], ["x", "x"], {"x": "y"}, {"y": 1}]:
        assert quick(value) == library.is_valid(value), value


@pytest.mark.parametrize("part", [{"oneOf": []}, {"type": "date"}, {"additionalProperties": True}, {"$defs": {}, "contains": {}}])
def test_unknown_keyword_is_refused(part: dict[str, Any]) -> None:
    """A schema with a keyword that the walk does not know is refused, never waved through."""
    with pytest.raises(UnknownKeywordError):
        compiled(part)


def spots(value: Any, path: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    """Every path in a value but the root."""
    inside = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    return [found for key, child in inside for found in ((*path, key), *spots(child, (*path, key)))]


@settings(max_examples=400, deadline=None)
@given(st.data())
def test_unit_agrees_with_the_library(data: st.DataObject) -> None:
    """A unit changed anywhere gets the same yes or no from both."""
    unit = copy.deepcopy(good())
    for _ in range(data.draw(st.integers(1, 2))):
        path = data.draw(st.sampled_from(spots(unit)))
        spot: Any = unit
        for step in path[:-1]:
            spot = spot[step]
        spot[path[-1]] = copy.deepcopy(data.draw(st.sampled_from(WILD)))
    assert compiled(schema("unit"))(unit) == Draft202012Validator(schema("unit")).is_valid(unit)
