"""Standards are codes of the catalogue."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.reading.unit_files import codes, read
from trivet.reading.checks.standards import CODES


def test_standards_are_the_59_of_the_catalogue() -> None:
    """There are 59 middle-school codes, 19 + 21 + 15 + 4, and none beyond the last of its idea (NGSS; references 6.1)."""
    assert len(CODES) == len(set(CODES)) == 59
    for idea, count in (("PS", 19), ("LS", 21), ("ESS", 15), ("ETS", 4)):
        assert sum(code.startswith(f"MS-{idea}") for code in CODES) == count
    for beyond in ("MS-PS1-7", "MS-PS4-4", "MS-LS3-3", "MS-ESS1-5", "MS-ETS1-5"):
        assert beyond not in CODES
    for last in ("MS-PS1-6", "MS-PS4-3", "MS-LS3-2", "MS-ESS1-4", "MS-ETS1-4"):
        assert last in CODES


@pytest.mark.parametrize("code", ["MS-PS1-7", "MS-XX1-1", "ms-ps1-2", "MS PS1-2"])
def test_code_that_does_not_exist_is_an_error(tmp_path: Path, code: str) -> None:
    """A code that looks like one of the catalogue and is none stops the unit."""
    assert codes(read(tmp_path, ("MS-PS2-2", code))) == ["unknown-standard"]
