from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from tests.support.department import tiny_bells, tiny_calendar, tiny_class, tiny_room, tiny_school
from tests.support.sheets import said, sheet
from trivet.model.school import DayType, LateSeat
from trivet.reading.school.checks.classes import Around, check_classes, sound_classes

TEXT = """
    classes:
      p1:
        name: Science
        teacher: rowan
        grade: 7
        period: P1
        room: r12
        numbers: 1-31
        meets: A
        late: 32 from 2026-10-05
    """
AROUND = Around(tiny_school().settings, {"r12": tiny_room()}, tiny_bells(), tiny_calendar(rotation=("A", "B")))
PLAIN = tiny_class(meets=("A",))


def check(around: Around = AROUND, **changes: Any) -> list[str]:
    """Hold one class against the school around it."""
    return said(check_classes(sheet("classes", TEXT), {"p1": tiny_class(**{"meets": ("A",), **changes})}, around))


def test_a_class_whose_names_are_known_passes() -> None:
    """Teacher, room, period and rotation day are all there."""
    assert check() == []


@pytest.mark.parametrize(
    ("field", "name", "sentence"),
    [
        ("teacher", "rowen", '4: class p1, teacher: there is no teacher "rowen"; write rowan'),
        ("room", "q9", '7: class p1, room: there is no room "q9"; write one of: r12; or add it to school/rooms.yml'),
        ("period", "P7", '6: class p1, period: there is no period "P7"; write one of: P1; or add it to school/bells.yml'),
        (
            "meets",
            ("C",),
            '9: class p1, meets: there is no rotation day "C"; write one of: A, B; or add it to `rotation: days:` in school/calendar.yml',
        ),
    ],
)
def test_an_unknown_name_is_answered_at_its_line(field: str, name: Any, sentence: str) -> None:
    """Each name is looked up where such names are written, and the nearest known one is offered."""
    assert check(**{field: name}) == [sentence]


def test_a_period_that_some_days_lack_is_fine() -> None:
    """A class does not meet on days without its period; only a period on no day at all is a slip."""
    bells = {**tiny_bells(), "assembly": DayType("assembly", {})}
    assert check(Around(AROUND.settings, AROUND.rooms, bells, AROUND.calendar)) == []


def test_rotation_days_need_a_rotation() -> None:
    """Where the calendar has none, there is nothing to offer, and the remedy says where to write it."""
    around = Around(AROUND.settings, AROUND.rooms, AROUND.bells, tiny_calendar())
    assert check(around) == ['9: class p1, meets: there is no rotation day "A"; add it to `rotation: days:` in school/calendar.yml first']


def test_a_late_date_lies_in_the_year() -> None:
    """Nobody joins after the last day of school."""
    assert check(late=(LateSeat(32, date(2027, 10, 5)),)) == [
        "10: class p1, late: 32 joins on 2027-10-05, outside the school year; write a date from 2026-08-24 to 2027-06-04"
    ]


def test_nothing_is_said_about_files_that_could_not_be_read() -> None:
    """A room can't be called unknown while rooms.yml is broken."""
    assert check(Around(None, None, None, None), room="q9", teacher="nobody", period="P9") == []


@pytest.mark.parametrize("change", [{"room": "q9"}, {"teacher": "nobody"}, {"period": "P9"}, {"seats": ()}])
def test_only_sound_classes_are_planned(change: dict[str, Any]) -> None:
    """A class that names nothing, or has nobody, is left out."""
    assert sound_classes({"p1": PLAIN, "p2": tiny_class("p2", **change)}, AROUND) == {"p1": PLAIN}
