"""One table maps spoken keys to model fields: it covers the schema and the model, both ways."""

from __future__ import annotations

from dataclasses import fields
from typing import Any

import pytest

from trivet.model import station as stations
from trivet.model.station import Kind
from trivet.model.unit import RubricRow, StationText, Unit, WriteUp
from trivet.reading import spoken
from trivet.reading.schemas import schema

MADE = {"slug", "online", "hands_on", "teacher_led", "translations", "body", "body_line", "files", "places"}
"""Fields of a unit that stand under no top-level key of their own."""

RULES = schema("unit")
CHECKED = [
    (spoken.OF_STATION[Kind.ONLINE], RULES["$defs"]["online"], stations.OnlineStation),
    (spoken.OF_STATION[Kind.HANDS_ON], RULES["$defs"]["hands-on"], stations.HandsOnStation),
    (spoken.OF_STATION[Kind.TEACHER_LED], RULES["$defs"]["teacher-led"], stations.TeacherLedStation),
    (spoken.CHECK_ITEM, RULES["$defs"]["check item"], stations.CheckItem),
    (spoken.VARIABLES, RULES["$defs"]["variables"], stations.Variables),
    (spoken.RECORD, RULES["$defs"]["record"], stations.Record),
    (spoken.SPOT_CHECK, RULES["properties"]["spot checks"]["items"], stations.SpotCheckLine),
    (spoken.WRITE_UP, RULES["properties"]["write-up"], WriteUp),
    (spoken.RUBRIC, RULES["properties"]["rubric"]["items"], RubricRow),
    (spoken.EXPECTED, RULES["$defs"]["hands-on"]["properties"]["expected"]["items"], stations.Expected),
    (spoken.DATA, RULES["$defs"]["teacher-led"]["properties"]["data"], stations.DataTable),
    (spoken.MISCONCEPTION, RULES["$defs"]["teacher-led"]["properties"]["misconceptions"]["items"], stations.Misconception),
]


@pytest.mark.parametrize(("table", "part", "model"), CHECKED, ids=[model.__name__ for _, _, model in CHECKED])
def test_table_covers_schema_and_model(table: dict[str, str], part: dict[str, Any], model: type[Any]) -> None:
    """Each key of the schema has a field, and each field of the model a key."""
    assert set(table) == set(part["properties"])
    assert set(table.values()) == {field.name for field in fields(model)}


def test_unit_keys_cover_schema_and_model() -> None:
    """The top level too; stations stand in their own table, and what is made from files in none."""
    assert set(spoken.UNIT) | {"stations"} == set(RULES["properties"])
    assert set(spoken.UNIT.values()) == {field.name for field in fields(Unit)} - MADE
    assert set(spoken.STATIONS) == set(RULES["properties"]["stations"]["properties"])


def test_question_keys_are_the_schema_s() -> None:
    """A question has two keys; whom it is for stands at the end of the text."""
    assert set(spoken.QUESTION) == set(RULES["$defs"]["question"]["properties"])


def test_translation_keys_are_a_part_of_the_unit_s() -> None:
    """A translation knows only student text, under the unit's own keys."""
    part = schema("unit-translation")["properties"]["stations"]["properties"]
    keys = {key for station in part.values() for key in station["properties"]}
    assert keys - {"record"} == set(spoken.TRANSLATED_STATION)
    assert set(spoken.TRANSLATED_STATION.values()) | {"record_columns", "record_rows"} == {field.name for field in fields(StationText)}
    for key, kind in spoken.STATIONS.items():
        assert set(part[key]["properties"]) <= set(spoken.OF_STATION[kind])


def test_stations_are_named_both_ways() -> None:
    """A spoken name leads to its kind and back."""
    assert all(spoken.spoken_of(spoken.station_of(name)) == name for name in spoken.STATIONS)
