"""What is behind a run stays as it was."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from trivet.planning.progress import NOTHING, Progress


@given(st.booleans(), st.integers(0, 20), st.integers(0, 3), st.integers(0, 3))
def test_a_unit_opens_once(begun: bool, resumes: int, done: int, rounds: int) -> None:
    """Only the first day with a round can be the unit's first or go on with a stopped round, and it is not first where it has begun."""
    parts = Progress(begun=begun, resumes=resumes).day_parts(done, rounds, write_up=8)
    opens = done == 0 and rounds > 0
    assert parts.first == (opens and not begun)
    assert parts.resumes == (resumes if opens else 0)
    assert (parts.rounds, parts.write_up) == (rounds, 8)


def test_nothing_is_three_rounds_to_come() -> None:
    """A run without a record has three rounds before it, and has neither begun nor written."""
    assert (NOTHING.rounds_left, NOTHING.begun, NOTHING.written, NOTHING.minutes) == (3, False, False, None)
