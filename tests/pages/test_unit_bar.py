"""The bar of a unit's other pages."""

from __future__ import annotations

from dataclasses import replace

from tests.pages.scenario import department, plans
from trivet.model.plan import Plans
from trivet.pages.unit_bar import MOST, unit_bar
from trivet.pages.words import load_words

WORDS = load_words()


def test_the_bar_of_a_unit_never_grows() -> None:
    """Seven links at most, the page's own among them, however many classes run the unit."""
    made = department()
    one = plans(made).plans[0]
    many = Plans(tuple(replace(one, class_id=f"c{n}") for n in range(12)), (), ())
    bar = unit_bar(made.units["float-or-sink"], many, "lesson/c9/float-or-sink/", WORDS)
    assert len(bar) == MOST == 7
    assert [link.text for link in bar if link.current] == ["c9"]
    assert bar[-1].href == "../../../units/float-or-sink/#runs"
