"""A name that nothing is called by gets the nearest one."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.reading.school.checks.known import LISTED_MOST, remedy_for

ROOMS = [f"room{number}" for number in range(10, 10 + LISTED_MOST)]


@pytest.mark.parametrize(
    ("name", "known", "remedy"),
    [
        ("rooom12", ROOMS, "write room12"),
        ("gym", ROOMS[:2], "write one of: room10, room11; or add it to rooms.yml"),
        ("gym", ROOMS, f"write one of: {', '.join(ROOMS)}; or add it to rooms.yml"),
        ("gym", [*ROOMS, "lab"], "write a name from rooms.yml"),
        ("gym", [], "add it to rooms.yml first"),
    ],
)
def test_the_nearest_else_all_else_where_they_stand(name: str, known: list[str], remedy: str) -> None:
    """The nearest name is told; where none is near all are listed if they are few, else the file is named."""
    assert remedy_for(name, known, "rooms.yml") == remedy


@given(st.text(max_size=6), st.lists(st.text(min_size=1, max_size=6), max_size=12))
def test_there_is_always_something_to_do(name: str, known: list[str]) -> None:
    """Any name gets a remedy; a name that is proposed is a known one."""
    remedy = remedy_for(name, known, "rooms.yml")
    assert remedy
    if remedy.startswith("write ") and not remedy.startswith(("write one of: ", "write a name from ")):
        assert remedy.removeprefix("write ") in known
