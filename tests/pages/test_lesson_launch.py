"""The launch on a lesson sheet: a lesson whose groups are not drawn can be taught all the same."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from tests.pages.scenario import BUILD
from tests.support.department import STARTS, tiny_class, tiny_department, tiny_unit
from tests.support.lock import tiny_lock
from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.school import Run
from trivet.model.station import Kind, SpotCheckLine
from trivet.model.unit import Unit
from trivet.model.wish import Wish
from trivet.pages.site import make_site
from trivet.planning.department import plan_department

OWN = (
    SpotCheckLine(Kind.ONLINE, "What will you change first?", "the mass"),
    SpotCheckLine(Kind.HANDS_ON, "Where are your eyes when you read?", "level with the water"),
    SpotCheckLine(Kind.TEACHER_LED, "What will you underline?", "what they changed"),
)


def sheet(department: Department) -> str:
    """The lesson sheet of p1's run."""
    site = make_site(department, plan_department(department), (), BUILD, {})
    return next(page.body for page in site.pages if page.path == "lesson/p1/float-or-sink/")


def department(unit: Unit | None = None, way: str = "rotate", locks: tuple[Lock, ...] = ()) -> Department:
    return tiny_department(unit=unit or tiny_unit(spot_checks=OWN), way=way, locks=locks)


def launch(body: str, number: int) -> str:
    """The launch of one round as text."""
    part = body.partition(f"<h2>Launch round {number}</h2>")[2].partition('<div class="said">')[0]
    return " ".join(re.sub(r"<[^>]+>", " ", part).split())


@pytest.mark.parametrize("number", [1, 2, 3])
def test_an_undrawn_round_lists_the_units_own_spot_checks(number: int) -> None:
    """Each round that is not drawn has the author's questions of both stations that the teacher leaves, with what to listen for."""
    said = launch(sheet(department()), number)
    assert re.search(r"Online What will you change first\? listen for the mass Hands-on Where are your eyes when you read\?", said)
    assert "level with the water" in said
    assert "What will you underline?" not in said


def test_an_undrawn_round_asks_about_safety() -> None:
    """At a station with hazards its safety is asked for, whatever the author asks; at others nothing is."""
    said = launch(sheet(department()), 1)
    assert "Show me what you do if a glass breaks." in said.partition("Hands-on Where")[2]
    quiet = tiny_unit(spot_checks=OWN, hands_on={"hazards": ()})
    assert "glass breaks" not in launch(sheet(department(quiet)), 1)


def test_a_unit_without_own_questions_has_those_of_any_station() -> None:
    """Without the author's questions the first step, the table and the end are asked for, from the unit itself."""
    said = launch(sheet(department(tiny_unit())), 1)
    for part in ("Set the volume to 100 mL.", "volume (mL), mass (g), floats?", "Weigh the dry solid.", "Three densities stand"):
        assert part in said


def test_a_whole_class_round_asks_at_its_own_station() -> None:
    """Where everyone is at one kind of station, only that station's questions stand in its round."""
    body = sheet(department(way="whole_class"))
    found = [[line.ask for line in OWN if line.ask in launch(body, number)] for number in (1, 2, 3)]
    assert sorted(len(asked) for asked in found) == [1, 1, 1]
    assert {asked[0] for asked in found} == {line.ask for line in OWN}


def test_a_drawn_round_names_students_instead() -> None:
    """A drawn plan asks its own students, and the list by station is gone."""
    drawn = sheet(department(locks=(tiny_lock(tiny_class()),)))
    assert "data-seat=" in drawn
    assert '<li class="ck at"' not in drawn
    assert '<li class="ck at"' in sheet(department())


@pytest.mark.parametrize("way", ["rotate", "whole_class"])
def test_leveled_and_undrawn_are_the_same_bytes(way: str) -> None:
    """The sheet of a leveled unit is the one of a unit that is not drawn, to the byte."""
    leveled = replace(tiny_lock(tiny_class()), leveled=True)
    assert sheet(department(way=way, locks=(leveled,))) == sheet(department(way=way))


def test_the_sheet_has_the_units_own_safety_notes_and_the_task_instead() -> None:
    """What the author wrote about safety, and what a student does who may not take part, stand on the sheet with or without hazards."""
    for hazards in (("glass",), ()):
        changes = {"hazards": hazards, "safety_notes": ("Keep the tray dry.",), "instead": "Keep the time."}
        kit = sheet(department(tiny_unit(hands_on=changes))).partition('id="bring"')[2]
        assert "Keep the tray dry." in kit
        assert "Keep the time." in kit


def test_the_sheet_says_which_wish_is_not_met() -> None:
    """Beside the groups stands which wish on the order of stations can't be met, and why; nothing where all are met or none is asked."""
    lock = tiny_lock(tiny_class())

    def said(*order: Wish) -> str:
        run = Run(class_id="p1", unit="float-or-sink", starts=STARTS, order=order)
        return sheet(tiny_department(runs=(run,), locks=[lock])).partition('data-panel="groups"')[2].partition('id="ask"')[0]

    refused = said(Wish(Kind.ONLINE, before=Kind.HANDS_ON))
    assert (
        "can&#39;t be at the online station before the hands-on one: groups A and C are, and no order of the stations gives all of that."
        in refused
    )
    assert "can&#39;t be" not in said(Wish(Kind.ONLINE, "A", Kind.HANDS_ON)) + said()
