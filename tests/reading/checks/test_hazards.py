"""Hazards are words of a closed list."""

from __future__ import annotations

from pathlib import Path

from tests.reading.unit_files import codes, read
from trivet.model.hazard import HAZARDS
from trivet.reading.checks import hazards
from trivet.reading.near import nearest

HAZARD = "    hazards: none\n"


def test_every_hazard_word_is_known(tmp_path: Path) -> None:
    """The closed list passes, in a line or under dashes, in any letter case."""
    line = f"    hazards: {', '.join(HAZARDS)}\n    instead: Watch.\n"
    assert codes(read(tmp_path / "a", (HAZARD, line))) == []
    under = "    hazards:\n" + "".join(f"      - {word.upper()}\n" for word in HAZARDS) + "    instead: Watch.\n"
    found = read(tmp_path / "b", (HAZARD, under))
    assert found.unit is not None
    assert found.unit.hands_on.hazards == HAZARDS


def test_other_words_lead_to_hazard_words() -> None:
    """Each word that people say instead leads to a word of the closed list."""
    assert set(hazards.SAID_OTHERWISE.values()) <= set(HAZARDS)
    assert not set(hazards.SAID_OTHERWISE) & set(HAZARDS)
    assert nearest("electrics", HAZARDS) == "electricity"
