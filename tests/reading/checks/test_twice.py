"""A list of short things says each of them once."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.reading.unit_files import draft_of
from trivet.model.places import Path
from trivet.reading.checks.twice import LISTS, check

WORDS = st.sampled_from(["glass", "Glass", "open flame", "open  Flame", "spill", "MS-PS1-2"])


def with_list(path: Path, value: object) -> dict[str, Any]:
    data: Any = value
    for key in reversed(path):
        data = {key: data}
    return data  # type: ignore[no-any-return]


@pytest.mark.parametrize("path", LISTS, ids=lambda path: path[-1])
@given(words=st.lists(WORDS, max_size=6), in_a_line=st.booleans())
def test_each_repetition_is_answered_once(path: Path, words: list[str], in_a_line: bool) -> None:
    """Of each word, whatever its capitals and blanks, all but the first are answered; in a line as under dashes."""
    found = list(check(draft_of(with_list(path, ", ".join(words) if in_a_line else words))))
    different = {" ".join(word.casefold().split()) for word in words}
    assert len(found) == len(words) - len(different)
    assert {problem.code for problem in found} <= {"said-twice"}
