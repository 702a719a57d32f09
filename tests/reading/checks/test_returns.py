"""Units and stations that a unit names exist."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tests.reading.unit_files import answers, codes, draft_of, read
from trivet.reading.checks.returns import check


def said(data: dict[str, Any], slug: str = "rolling-carts") -> list[tuple[str, str]]:
    return answers(check(draft_of(data, slug)))


def again(text: str, station: str = "hands-on") -> list[tuple[str, str]]:
    return said({"stations": {station: {"again": text}}})


def test_what_exists_is_quiet() -> None:
    """A comma list or a YAML list of units, and a station of another unit, give nothing."""
    assert said({"returns to": "float-or-sink, hands"}) == said({"returns to": ["float-or-sink"]}) == said({}) == []
    assert again("hands/hands-on") == again("rolling-carts/online") == []


@pytest.mark.parametrize(
    ("text", "remedy"),
    [
        ("float-or-sin/hands-on", "write float-or-sink/hands-on"),
        ("hand/hands-on", "write hands/hands-on"),
        ("xyz/online", "write the name of a folder under units/"),
    ],
)
def test_the_nearest_unit_is_offered_with_the_station_as_it_was(text: str, remedy: str) -> None:
    """Only the unit's name is mended, also where the station's name holds the same letters."""
    assert again(text) == [("unknown-unit", remedy)]


def test_a_unit_does_not_return_to_itself() -> None:
    """Neither the unit nor one of its stations names itself, and a misspelled name does not lead back to it."""
    assert said({"returns to": "rolling-carts"}) == [("unit-names-itself", "name an earlier unit, or leave the key out")]
    assert again("rolling-carts/hands-on") == [("unit-names-itself", "name a station of an earlier unit")]
    assert said({"returns to": "rolling-cart"}) == [("unknown-unit", "write the name of a folder under units/")]


def test_station_of_a_unit_may_repeat_another(tmp_path: Path) -> None:
    """The same activity on purpose names a unit and station that exist."""
    assert codes(read(tmp_path, ("    done when: Ten", "    again: rolling-carts/online\n    done when: Ten"))) == []
    found = read(tmp_path / "b", ("    done when: Ten", "    again: volcano/online\n    done when: Ten"))
    assert codes(found) == ["unknown-unit"]
