"""How students share devices: nobody left out, no more than three at one, pairs as many as can be."""

from __future__ import annotations

import re

import pytest

from trivet.planning.sharing import MOST, cure_of, sharing

SIZES = {"student alone": 1, "pair": 2, "pairs": 2, "trio": 3, "trios": 3}


@pytest.mark.parametrize(
    ("students", "devices", "whole_class", "said"),
    [
        (37, 16, True, "let them work as 11 pairs and 5 trios"),
        (31, 12, True, "let them work as 5 pairs and 7 trios"),
        (31, 10, True, "let halves of the class take turns, 8 pairs at a time, and change at half time"),
        (36, 8, True, "let halves of the class take turns, 6 pairs and 2 trios at a time, and change at half time"),
        (36, 5, True, ""),
        (11, 4, False, "let them work as 1 pair and 3 trios"),
        (12, 3, False, ""),
        (4, 0, True, ""),
    ],
)
def test_what_is_said(students: int, devices: int, whole_class: bool, said: str) -> None:
    """Trios where they are enough, else halves in turn in a whole-class round, else it is said that it is not."""
    assert sharing(students, devices, whole_class=whole_class) == said


@pytest.mark.parametrize("whole_class", [True, False])
def test_everyone_has_a_device(whole_class: bool) -> None:
    """For every number of students and devices the parts add up to the students (or half of them) on the devices there are."""
    for students in range(1, 41):
        for devices in range(41):
            said = sharing(students, devices, whole_class=whole_class)
            parts = [(int(count), SIZES[name]) for count, name in re.findall(r"(\d+) (student alone|pairs?|trios?)", said)]
            at_once = -(-students // 2) if "halves" in said else students
            if not parts:
                assert students > MOST * devices and not (whole_class and devices and -(-students // 2) <= MOST * devices)
                continue
            assert sum(count * size for count, size in parts) == at_once
            assert sum(count for count, _ in parts) <= devices
            trios = sum(count for count, size in parts if size == 3)
            assert trios == (at_once % 2 if at_once <= 2 * devices else at_once - 2 * devices) or at_once == 1


def test_the_cure_in_words() -> None:
    """Sharing or borrowing; borrowing alone where sharing would not do; teams at one device take turns."""
    assert cure_of(37, 16, 2, "pairs", whole_class=True) == "let them work as 11 pairs and 5 trios, or borrow 2"
    assert cure_of(12, 3, 3, "pairs", whole_class=False) == "borrow 3, since even trios are too many for them"
    assert cure_of(12, 2, 1, "team", whole_class=False) == "let teams take turns, or borrow 1"
