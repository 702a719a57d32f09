from __future__ import annotations

import pytest

from tests.support.department import tiny_class, tiny_department, tiny_unit
from tests.support.lock import tiny_lock


def test_the_tiny_department_holds_together() -> None:
    """Every run of the tiny department names a class, a unit, a room and a period that exist."""
    department = tiny_department(size=27, minutes=45)
    for run in department.school.runs:
        school_class = department.school.classes[run.class_id]
        assert run.unit in department.units
        assert school_class.room in department.school.rooms
        assert department.school.bells["regular"].periods[school_class.period].minutes == 45
        assert school_class.size == 27


def test_a_station_is_changed_by_its_own_keyword() -> None:
    """A mapping for a station changes that station alone."""
    unit = tiny_unit(hands_on={"hazards": ()}, title="Other")
    assert unit.hands_on.hazards == ()
    assert unit.title == "Other"
    assert unit.online == tiny_unit().online


@pytest.mark.parametrize("size", range(41))
def test_a_tiny_lock_seats_everyone_once(size: int) -> None:
    """Every seat of the class stands in exactly one team and one pair, and no pair is larger than a trio."""
    school_class = tiny_class(size=size)
    lock = tiny_lock(school_class)
    numbers = [school_class.number(s) for s in school_class.seats]
    assert sorted(n for g in lock.groups.values() for n in g.students) == numbers
    assert sorted(n for g in lock.groups.values() for p in g.pairs for n in p) == numbers
    assert all(len(p) <= 3 for g in lock.groups.values() for p in g.pairs)
    assert [len(lock.groups[x].students) for x in "ABC"] == sorted((len(lock.groups[x].students) for x in "ABC"), reverse=True)
