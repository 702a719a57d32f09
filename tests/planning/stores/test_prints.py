"""Paper: cards for whoever works together, slips for teams, a write-up for each student."""

from __future__ import annotations

import pytest

from tests.support.department import STARTS, tiny_class, tiny_department, tiny_unit
from trivet.model.school import Run
from trivet.planning.department import plan_department
from trivet.planning.stores.prints import prints


@pytest.mark.parametrize(
    ("size", "work_in", "cards"),
    [(31, "", 15 + 9 + 9), (36, "", 18 + 9 + 9), (31, "alone", 31 + 9 + 9), (31, "team", 9 + 9 + 9), (1, "", 3), (37, "", 18 + 10 + 10)],
)
def test_station_cards(size: int, work_in: str, cards: int) -> None:
    """Everyone who works together at a station has a card: pairs online (or as the unit says), teams at the other two."""
    department = tiny_department(size=size, unit=tiny_unit(online={"work_in": work_in}))
    found = {each.kind: each for each in prints(department, plan_department(department).plans)}
    assert found["station_cards"].count == cards
    assert found["write_ups"].count == size


def test_slips_fill_whole_pages_for_each_class() -> None:
    """Nine teams have two slips each, six on a page: three pages (as the sheet of slips is drawn)."""
    department = tiny_department(size=31)
    slips = {each.kind: each for each in prints(department, plan_department(department).plans)}["help_slips"]
    assert (slips.count, slips.pages, slips.parts) == (18, 3, (("p1", "float-or-sink", 18),))


def test_two_classes_do_not_share_a_page_of_slips() -> None:
    """Ten teams have twenty slips on four pages; two such classes need eight pages, not seven."""
    classes = [tiny_class(name, 37) for name in ("p1", "p2")]
    runs = [Run(class_id=each.id, unit="float-or-sink", starts=STARTS) for each in classes]
    department = tiny_department(classes=classes, runs=runs)
    slips = {each.kind: each for each in prints(department, plan_department(department).plans)}["help_slips"]
    assert (slips.count, slips.pages) == (40, 8)


def test_nothing_to_print_without_runs() -> None:
    """No runs, no paper."""
    assert prints(tiny_department(), ()) == ()
