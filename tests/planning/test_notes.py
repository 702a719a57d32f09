"""Notes: why a plan is as it is."""

from __future__ import annotations

import re
from datetime import date
from typing import Any

import pytest

from tests.support.department import tiny_bells, tiny_calendar, tiny_class, tiny_department, tiny_room, tiny_unit, words
from tests.support.lock import tiny_lock
from trivet.model.school import Closure, SpecialDay
from trivet.model.station import CheckItem, Kind, Step
from trivet.planning.class_size import area_advice, class_size_advice
from trivet.planning.department import plan_department
from trivet.planning.halves import spoken
from trivet.planning.say import say_count, say_date, say_dates, say_list


def told(**changes: Any) -> dict[str, list[str]]:
    """The notes of the one plan of a tiny department, by code."""
    plans = plan_department(tiny_department(**changes))
    assert plans.plans, plans.not_planned
    found: dict[str, list[str]] = {}
    for note in plans.plans[0].notes:
        found.setdefault(note.code, []).append(note.text)
    return found


def weigh(minutes: float, **changes: Any) -> object:
    """A unit whose hands-on station needs exactly `minutes` and the others less."""
    return tiny_unit(hands_on={"steps": (Step("Weigh.", minutes),), "set_up_minutes": 0.0, "clean_up_minutes": 0.0}, **changes)


@pytest.mark.parametrize(
    ("changes", "text"),
    [
        ({}, "Each station lasts 23 min, the same in all rounds. The longest, hands-on, needs 21; 2 more let every team finish."),
        (
            {"unit": weigh(17.5)},
            "Each station lasts 20 min, the same in all rounds. The longest, hands-on, needs 17½; no round is shorter than 20.",
        ),
        (
            {"unit": weigh(20, stretch=True), "minutes": 100},
            (
                "Each station lasts 30 min, the same in all rounds. The longest, hands-on, needs 20; "
                "the unit stretches to its longest round of 30."
            ),
        ),
        (
            {"unit": weigh(30), "minutes": 90},
            "Each station lasts 30 min, the same in all rounds. The longest, hands-on, needs 30; no round is longer than 30.",
        ),
        (
            {"minutes": 44},
            (
                "Each station lasts 22 min, the same in all rounds. The longest, hands-on, needs 21; "
                "23 were wanted, but Monday, November 30 (44 min) holds no more."
            ),
        ),
    ],
)
def test_why_so_many_minutes(changes: dict[str, Any], text: str) -> None:
    """The station minutes are explained by need, bound, wish to stretch, or the day that holds no more."""
    assert told(**changes)["station_minutes"] == [text]


def test_rounds_of_different_lengths_are_explained() -> None:
    """A unit that prefers minutes to rounds of one length names each round's; where all come out the same, it reads as usual."""
    calendar = tiny_calendar(special={date(2026, 12, 1): SpecialDay("short")})
    changes: dict[str, Any] = {"bells": tiny_bells(52, short=40), "calendar": calendar}
    assert told(**changes)["station_minutes"][0].startswith("Each station lasts 21 min, the same in all rounds.")
    assert told(unit=tiny_unit(prefer="minutes"), **changes)["station_minutes"] == [
        "Rounds last 23, 21 and 23 min: the unit prefers more minutes to rounds of one length, up to 23. The longest, hands-on, needs 21."
    ]
    assert told(unit=tiny_unit(prefer="minutes")) == told()


def test_why_so_many_days() -> None:
    """The number of days is explained by what two rounds in one period would need."""
    (text,) = told()["days"]
    assert text == (
        "Four days: from Monday, November 30 on, no plan ends before Thursday, December 3. "
        "Two rounds in one period would need 70 min or more."
    )
    assert told(minutes=90, size=36)["days"] == ["Two days: from Monday, November 30 on, no plan ends before Tuesday, December 1."]


def test_launch_gives_its_parts() -> None:
    """The launch is explained by its parts and by what the reading time comes from."""
    unit = tiny_unit(online={"goal": words(192), "steps": (Step("", 5),), "done_when": "", "use": "", "leave_alone": ""})
    (text,) = told(unit=unit)["launch"]
    assert text == (
        "A launch takes 6½ min: 1½ to read (the longest card has 192 words; three of four students in grade 6 read 128 a minute or more), "
        "1 to explain to a partner, 1 to ask your partner, 3 for spot checks of up to six teams."
    )
    assert told(way="whole_class")["launch"][0].endswith("1 to ask your partner. The teacher asks while teams work.")


def test_evidence_and_write_up() -> None:
    """A day without time for its evidence line is named, and the write-up says why it takes as long as it does."""
    assert told()["write_up"] == ["The write-up takes 12 min, since an evidence line was written on every day with a round."]
    notes = told(minutes=44, unit=weigh(21.5))
    assert notes["write_up"] == ["The write-up takes 20 min, since not every day has time for its evidence line."]
    assert notes["evidence"] == ["Monday, November 30: no time for a written evidence line; tell it in the reflection."]


def test_minutes_left_are_told() -> None:
    """Every day that keeps minutes is named with them; a day with the write-up alone says what they are for."""
    plans = plan_department(tiny_department())
    kept = {say_date(day.date): day.surplus_minutes for day in plans.plans[0].days if day.surplus_minutes}
    notes = told()["left_over"]
    assert len(notes) == len(kept) == 3
    assert all(any(text.startswith(f"{day} keeps {minutes:g} min") for text in notes) for day, minutes in kept.items())
    assert notes[-1] == "Thursday, December 3 keeps 23 min at its end for make-ups and the next unit's pre-check."


def test_devices_are_short_in_words() -> None:
    """Where devices are short the note says by how many and what would cure it; where there are enough it says nothing."""
    assert "devices" not in told()
    assert told(rooms=[tiny_room(devices=4)])["devices"] == [
        "5 devices are in use at once and the room has 4: let them work as 1 pair and 3 trios, or borrow 1."
    ]
    assert told(rooms=[tiny_room(devices=10)], way="whole_class")["devices"] == [
        (
            "15 devices are in use at once and the room has 10: let halves of the class take turns, 8 pairs at a time, "
            "and change at half time, or borrow 5."
        )
    ]


def test_order_and_first_time() -> None:
    """A rotating run says how the order was found or that groups are not shown, a whole-class run why everyone goes together."""
    assert told()["order"][0].startswith("Groups are not shown here.")
    assert told(locks=[tiny_lock(tiny_class())])["order"][0].startswith("Every group meets every station once.")
    assert "order" not in told(way="whole_class")
    assert told(way="whole_class")["whole_class"][0].startswith("The whole class does one kind of station together")


def test_class_size_and_area() -> None:
    """24 students need 1,440 sq ft combined, 36 need 2,160 and still exceed 24 (references 4.1); everyone in the room is counted."""
    assert class_size_advice(24, 8) is None
    assert class_size_advice(25, 9) is not None
    assert area_advice(24, 0, 1440) is None
    assert area_advice(24, 0, 1439) is not None
    assert area_advice(36, 0, 2160) is None
    assert area_advice(35, 1, 2159) is not None
    assert area_advice(36, 1, None) is None
    assert class_size_advice(36, 12) == (
        "36 students: NSTA advises at most 24 where a class does hands-on science. About 12 are at the hands-on station at once; "
        "whoever is within reach of it is protected too. Follow your local code and your district's policy."
    )
    notes = told(size=36, rooms=[tiny_room(area_sq_ft=960)])
    assert notes["area"][0].startswith("960 square feet for 37 people are 25 each; NSTA advises at least 60")
    assert "class_size" in notes
    assert told(way="whole_class")["class_size"][0].count("All of them are at the hands-on station") == 1


def test_safety_notes_only_with_hazards() -> None:
    """A unit with hazards carries the policy sentence once; one without has none of the safety notes."""
    assert told(second_adult=Kind.HANDS_ON)["second_adult"] == ["A second adult is at the hands-on station."]
    assert len(told()["safety"]) == 1
    assert not {"safety", "class_size", "area"} & set(told(unit=tiny_unit(hands_on={"hazards": ()})))


def test_pre_check_is_told() -> None:
    """The pre-check's date is told."""
    unit = tiny_unit(pre_check=(CheckItem("a", "b"),))
    assert told(unit=unit)["pre_check"] == [
        "The pre-check stands at the end of Thursday, November 26, two school days or more before round 1."
    ]


def test_no_note_tells_how_groups_were_made() -> None:
    """No note names levels, ways of grouping or students: what is published must not tell."""
    for changes in ({}, {"locks": [tiny_lock(tiny_class())]}, {"way": "whole_class"}, {"minutes": 90}):
        for texts in told(unit=tiny_unit(group_by="auto"), **changes).values():
            for text in texts:
                assert not re.search(r"\blevel|\bmixed|\busual group|\bauto\b|p1-\d\d|\bwish", text), text
                assert text[0].isupper() or text[0].isdigit()
                assert text.endswith(".")


def test_said_as_people_say_it() -> None:
    """Dates, lists, counts and half minutes are written as people say them."""
    assert say_date(date(2026, 11, 30)) == "Monday, November 30"
    assert say_list(["a"]) == "a"
    assert say_list(["a", "b", "c"]) == "a, b and c"
    assert say_dates([date(2026, 11, day) for day in range(2, 9)]) == (
        "Monday, November 2, Tuesday, November 3, Wednesday, November 4, Thursday, November 5 and 3 more"
    )
    assert [say_count(n, "day") for n in (1, 2, 10, 11)] == ["one day", "two days", "ten days", "11 days"]
    assert [spoken(half) for half in (0, 1, 2, 15)] == ["0", "½", "1", "7½"]


def test_closed_days_inside_a_unit_are_told() -> None:
    """A closed day, or a stretch of them, between a unit's first day and its last is named with its reason; others are not."""
    repair, fog = Closure(date(2026, 12, 2), date(2026, 12, 2), "water main repair"), Closure(date(2026, 12, 3), date(2026, 12, 4))
    before, weekend = Closure(date(2026, 11, 26), date(2026, 11, 27), "fall break"), Closure(date(2026, 12, 5), date(2026, 12, 6), "fair")
    assert told(calendar=tiny_calendar(closures=(before, weekend, fog, repair)))["closed"] == [
        "Wednesday, December 2: no school (water main repair), so nothing is planned.",
        "Thursday, December 3 to Friday, December 4: no school, so nothing is planned.",
    ]
    after = Closure(date(2026, 12, 4), date(2026, 12, 4), "staff day")
    assert "closed" not in told(calendar=tiny_calendar(closures=(before, after)))
