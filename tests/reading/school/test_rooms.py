from __future__ import annotations

import pytest

from tests.support.sheets import schema_problems, sheet
from trivet.model.station import Kind
from trivet.reading.school.rooms import read_rooms

LEAST = "rooms:\n  r12:\n    name: Room 12\n    online: tables\n    hands-on: benches\n    teacher-led: round table\n"


def test_a_room_says_where_each_station_stands() -> None:
    """The three places are the least that boards and cards print; sight, area, devices and store are not known without a line."""
    rooms, _ = read_rooms(sheet("rooms", LEAST))
    room = rooms["r12"]
    assert room.stands == {Kind.ONLINE: "tables", Kind.HANDS_ON: "benches", Kind.TEACHER_LED: "round table"}
    assert (room.sees, room.area_sq_ft, room.devices, room.store) == ((), None, None, "")


def test_what_the_teacher_sees_is_in_the_order_of_the_stations() -> None:
    """However the line is written, the model lists stations in one order."""
    rooms, _ = read_rooms(sheet("rooms", LEAST + "    teacher sees: hands-on, online\n"))
    assert rooms["r12"].sees == (Kind.ONLINE, Kind.HANDS_ON)


@pytest.mark.parametrize(("text", "feet"), [("1200 sq ft", 1200), ("1200 sqft", 1200), ("100 sq m", 1076), ("1 sq m", 11)])
def test_an_area_is_in_square_feet(text: str, feet: int) -> None:
    """One square meter is 10.7639 square feet: the international foot is 0.3048 m exactly (NIST SP 811, appendix B)."""
    rooms, problems = read_rooms(sheet("rooms", LEAST + f"    area: {text}\n"))
    assert problems == ()
    assert rooms["r12"].area_sq_ft == feet


def test_a_misspelled_station_gets_the_nearest_words() -> None:
    """`hands on` in a room is answered with `hands-on`."""
    assert schema_problems("rooms", LEAST.replace("hands-on", "hands on"))[-1].endswith("write hands-on")
