"""`school/rooms.yml`: where each station stands, and what the teacher sees."""

from __future__ import annotations

import re
from collections.abc import Mapping
from decimal import ROUND_HALF_EVEN, Decimal
from typing import Any

from trivet.model.problem import Problem
from trivet.model.school import Room
from trivet.model.station import Kind
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.values import comma_list

STATIONS = {"online": Kind.ONLINE, "hands-on": Kind.HANDS_ON, "teacher-led": Kind.TEACHER_LED}
"""Spoken stations, as teachers write them."""

FOOT_M = Decimal("0.3048")
"""The international foot in meters, exact since 1959."""


def read_rooms(sheet: Sheet) -> tuple[Mapping[str, Room], tuple[Problem, ...]]:
    """Return the rooms by id; the schema has asked all that there is to ask."""
    return {room_id: _room(room_id, said) for room_id, said in sheet.data["rooms"].items()}, ()


def _room(room_id: str, said: Mapping[str, Any]) -> Room:
    sees = comma_list(said.get("teacher sees", []))
    return Room(
        id=room_id,
        name=said["name"],
        stands={kind: said[spoken] for spoken, kind in STATIONS.items()},
        sees=tuple(kind for spoken, kind in STATIONS.items() if spoken in sees),
        area_sq_ft=square_feet(said["area"]) if "area" in said else None,
        devices=said.get("devices"),
        store=said.get("store", ""),
    )


def square_feet(text: str) -> int:
    """Return the floor that `1200 sq ft` or `110 sq m` says, in whole square feet."""
    amount = Decimal(re.match("[0-9]+", text)[0])  # type: ignore[index] # the schema has seen the digits
    feet = amount if "ft" in text else amount / FOOT_M**2
    return int(feet.to_integral_value(ROUND_HALF_EVEN))
