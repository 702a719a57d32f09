"""The cautions of a unit follow from the hazard words of its hands-on station."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tests.support.department import tiny_unit
from trivet.model.hazard import HAZARDS as WORDS
from trivet.planning.cautions import at_hand, cautions, hazards_of

AT_HAND = {"open flame", "heat", "chemical", "projectile", "pressure"}
"""Supervision `at hand`: the design's section 5 (our own rule, for the department to review)."""


@given(st.lists(st.sampled_from(WORDS), max_size=8))
def test_the_order_is_that_of_the_list(tags: list[str]) -> None:
    """However an author orders or repeats the words, each hazard stands once, in the order of the closed list."""
    found = [hazard.tag for hazard in hazards_of(tiny_unit(hands_on={"hazards": tuple(tags)}))]
    assert found == [word for word in WORDS if word in tags]


def test_unknown_words_and_none() -> None:
    """A word that is not in the list gives no caution, and a station without hazards none at all."""
    assert hazards_of(tiny_unit(hands_on={"hazards": ("fire", "Glass", "")})) == ()
    assert cautions(tiny_unit(hands_on={"hazards": ()})) == ()


def test_every_hazard_has_its_own_caution() -> None:
    """Each of the list's words gives a text of its own and at least one thing that protects, and nobody's text is another's."""
    found = cautions(tiny_unit(hands_on={"hazards": WORDS}))
    assert [caution.hazard for caution in found] == list(WORDS)
    assert len({caution.text for caution in found}) == len(WORDS)
    assert all(caution.protect and all(each.strip() for each in caution.protect) for caution in found)


def test_only_the_hands_on_station_asks_for_an_adult_at_hand() -> None:
    """Flame, heat, chemicals, projectiles and pressure need an adult at hand; every other hazard may be watched from a distance."""
    assert {hazard.tag for hazard in at_hand(tiny_unit(hands_on={"hazards": WORDS}))} == AT_HAND
    assert at_hand(tiny_unit(hands_on={"hazards": tuple(word for word in WORDS if word not in AT_HAND)})) == ()
