from __future__ import annotations

import pytest

from trivet.reading.school.values import entries, listed, snake, spoken


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("latex, peanut", ("latex", "peanut")),
        ("latex", ("latex",)),
        (9, ("9",)),
        (["A ", "B"], ("A", "B")),
        ([3, 4], ("3", "4")),
        (None, ()),
    ],
)
def test_a_short_list_is_read_from_a_line_a_list_or_a_number(written: object, read: tuple[str, ...]) -> None:
    """A comma list, a YAML list and a single number say the same."""
    assert listed(written) == read


def test_entries_of_a_list_keep_their_own_place() -> None:
    """An entry of a YAML list is found at its position, one of a comma list at the whole line."""
    assert entries(["A", "B"], ("meets",)) == (("A", ("meets", 0)), ("B", ("meets", 1)))
    assert entries("A, B", ("meets",)) == (("A", ("meets",)), ("B", ("meets",)))


def test_spoken_words_and_the_words_of_the_model_go_both_ways() -> None:
    """`early release` is `early_release` in the model, and `pre-check` is `pre_check`."""
    assert snake("early release") == "early_release"
    assert spoken("early_release") == "early release"
    assert snake("pre-check") == "pre_check"
