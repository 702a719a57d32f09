"""The three stations on pages, and their minutes as a bar."""

from __future__ import annotations

import re

from tests.support.department import tiny_unit
from trivet.model.school import Defaults
from trivet.model.station import Kind
from trivet.pages.stations import station_bar, tags
from trivet.pages.words import load_words
from trivet.planning.minutes import needed

WORDS = load_words()


def test_a_station_bar_adds_up() -> None:
    """The parts of each station and what is left add up to the round, and lie end to end."""
    for station in needed(tiny_unit(), Defaults()).stations:
        bar = station_bar(station, 23, WORDS)
        at = 0.0
        for segment in bar.segments:
            found = re.search(r"\bat-(\d+)(h?) m-(\d+)(h?)$", segment.css)
            assert found
            assert float(found[1]) + (0.5 if found[2] else 0) == at
            at += float(found[3]) + (0.5 if found[4] else 0)
        assert at == 23
        assert bar.over == "n-23"


def test_the_stations_keep_their_order() -> None:
    """Online, hands-on, teacher-led, with classes that are their anchors."""
    assert [tag.css for tag in tags(WORDS)] == ["online", "hands-on", "teacher-led"] == [kind.value.replace("_", "-") for kind in Kind]
