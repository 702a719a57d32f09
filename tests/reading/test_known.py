"""The scan of lines knows the keys of the schemas: all names, which hold lines, which stand in one place only."""

from __future__ import annotations

from trivet.reading.known import SCHOOL, known
from trivet.reading.scan import UNIT_OPENERS


def test_keys_of_a_unit() -> None:
    """Keys at every depth are known; those that hold lines, and those with one home, are told apart."""
    unit = known("unit")
    assert {"title", "hands-on", "listen for", "set up", "claim starts"} <= unit.keys
    assert {"stations", "steps", "hazards", "record"} <= unit.holders
    assert not {"title", "goal", "set up", "claim starts"} & unit.holders
    assert (unit.homes["hands-on"], unit.homes["hazards"], unit.homes["claim starts"]) == ("stations", "hands-on", "write-up")
    assert not {"title", "goal", "steps", "ask", "columns"} & set(unit.homes)


def test_lists_whose_items_have_keys() -> None:
    """What the scan takes for the keys of items is what the schema says."""
    items = known("unit").items
    assert set(items) == set(UNIT_OPENERS)
    assert all(set(UNIT_OPENERS[key]) == set(keys) for key, keys in items.items())


def test_keys_of_a_school() -> None:
    """The files of a school are known together; names that a department chooses are no keys."""
    school = known(*SCHOOL)
    assert {"day types", "numbers", "certificate", "teacher sees"} <= school.keys
    assert "p1" not in school.keys
    assert school.items["runs"][:2] == ("class", "unit")
