"""The closed list of hazards and the cautions of a unit."""

from __future__ import annotations

import re

import pytest

from tests.support.department import tiny_unit
from trivet.model.hazard import HAZARDS as WORDS
from trivet.model.hazard import SOFT_HAZARDS
from trivet.planning.cautions import at_hand, cautions, hazards_of
from trivet.planning.hazards import DANGER, HAZARDS, POLICY


def test_every_word_has_its_caution_in_order() -> None:
    """The catalogue holds exactly the words of the closed list, in the order in which cautions are printed."""
    assert tuple(HAZARDS) == WORDS
    assert all(tag == hazard.tag for tag, hazard in HAZARDS.items())


@pytest.mark.parametrize("tag", WORDS)
def test_nothing_is_left_blank(tag: str) -> None:
    """Each hazard says what to do, what protects, who may do it, how to clean up, and has a spot check with what to listen for."""
    hazard = HAZARDS[tag]
    for text in (hazard.text, hazard.who, hazard.clean_up):
        assert re.fullmatch(r"[A-Z].*[.]", text), text
    assert hazard.protect
    assert all(hazard.protect)
    assert hazard.ask.endswith(("?", "."))
    assert hazard.listen_for
    assert hazard.soft == (tag in SOFT_HAZARDS)


def test_who_must_be_near() -> None:
    """At hand: heat above 49 °C, open flame, chemicals with a hazard statement, projectiles and pressure (the design's worked value)."""
    assert {tag for tag, hazard in HAZARDS.items() if hazard.at_hand} == {"heat", "open flame", "chemical", "projectile", "pressure"}
    assert "49 °C (120 °F)" in HAZARDS["heat"].text
    assert "hazard statement" in HAZARDS["chemical"].text


def test_published_numbers_stand_in_the_cautions() -> None:
    """What references 4.2, 4.5 and 5 name: 60 °C in about 3 s, D3 against splashes, Z87+ against what flies, 9 V, three flashes."""
    assert "60 °C (140 °F) takes about three seconds" in HAZARDS["heat"].text
    assert any("D3" in each for each in HAZARDS["chemical"].protect)
    assert all(any("Z87+" in each for each in HAZARDS[tag].protect) for tag in ("projectile", "pressure", "sharp"))
    assert "9 V or less" in HAZARDS["electricity"].text
    assert "three flashes in a second" in HAZARDS["strobe"].text
    assert "class 2 or below" in HAZARDS["light"].text
    for food in ("milk", "egg", "fish", "shellfish", "tree nuts", "peanuts", "wheat", "soy", "sesame", "latex"):
        assert food in HAZARDS["allergen"].text


def test_nothing_is_certified() -> None:
    """No caution calls anything safe or allowed by law, and the policy sentence defers to local code and district."""
    for hazard in HAZARDS.values():
        assert not re.search(r"\b(safe|legal|certified|compliant|approved)\b", hazard.caution.lower()), hazard.tag
    assert "certify nothing" in POLICY
    assert "local code" in POLICY
    assert "district's policy" in POLICY
    assert "nearest adult at once" in DANGER


def test_cautions_of_a_unit() -> None:
    """A unit's cautions stand in the order of the list, each once, with everything to say; none for a station without hazards."""
    unit = tiny_unit(hands_on={"hazards": ("spill", "glass", "spill")})
    found = cautions(unit)
    assert [each.hazard for each in found] == ["glass", "spill"]
    glass = HAZARDS["glass"]
    assert found[0].text == f"{glass.text} {glass.who} {glass.clean_up}"
    assert found[0].protect == glass.protect
    assert cautions(tiny_unit(hands_on={"hazards": ()})) == ()
    assert at_hand(unit) == ()
    assert [h.tag for h in at_hand(tiny_unit(hands_on={"hazards": ("pressure", "glass", "heat")}))] == ["heat", "pressure"]
    assert hazards_of(tiny_unit(hands_on={"hazards": ("dragons",)})) == ()
