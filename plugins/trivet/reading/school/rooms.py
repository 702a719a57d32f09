"""`school/rooms.yml`: where each station stands, and what the teacher sees."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from trivet.model.problem import Problem
from trivet.model.school import Room
from trivet.model.station import Kind
from trivet.reading.school.sentences import read_sentence
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.values import listed

STATIONS = {"online": Kind.ONLINE, "hands-on": Kind.HANDS_ON, "teacher-led": Kind.TEACHER_LED}
"""Spoken stations, as teachers write them."""


def read_rooms(sheet: Sheet) -> tuple[Mapping[str, Room], tuple[Problem, ...]]:
    """Return the rooms by id, and which floors can't be read."""
    problems: list[Problem] = []
    return {room_id: _room(sheet, room_id, said, problems) for room_id, said in sheet.data["rooms"].items()}, tuple(problems)


def _room(sheet: Sheet, room_id: str, said: Mapping[str, Any], problems: list[Problem]) -> Room:
    sees = listed(said.get("teacher sees"))
    return Room(
        id=room_id,
        name=said["name"],
        stands={kind: said[spoken] for spoken, kind in STATIONS.items()},
        sees=tuple(kind for spoken, kind in STATIONS.items() if spoken in sees),
        area_sq_ft=read_sentence(sheet, ("rooms", room_id, "area"), "area", said["area"], problems) if "area" in said else None,
        devices=said.get("devices"),
        store=said.get("store", ""),
    )
