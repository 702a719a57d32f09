from __future__ import annotations

from datetime import time
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.reading.school.values import a_time, clock, comma_list, ends_of, entries, snake, spoken, stretches


@pytest.mark.parametrize(
    ("written", "read"),
    [("latex, peanut", ("latex", "peanut")), ("latex", ("latex",)), (9, ("9",)), (["A ", "B"], ("A", "B")), ([3, 4], ("3", "4")), ([], ())],
)
def test_a_short_list_is_read_from_a_line_a_list_or_a_number(written: object, read: tuple[str, ...]) -> None:
    """A comma list, a YAML list and a single number say the same."""
    assert comma_list(written) == read


def test_entries_of_a_list_keep_their_own_place() -> None:
    """An entry of a YAML list is found at its position, one of a comma list at the whole line."""
    assert entries(["A", "B"], ("meets",)) == (("A", ("meets", 0)), ("B", ("meets", 1)))
    assert entries("A, B", ("meets",)) == (("A", ("meets",)), ("B", ("meets",)))


@pytest.mark.parametrize("written", ["8:05-8:57", "8:05 - 8:57", "8:05–8:57", "8:05 — 8:57", "8:05 to 8:57"])
def test_a_stretch_has_two_ends_whatever_stands_between(written: str) -> None:
    """A hyphen, a dash from a word processor and the word `to` all part a stretch."""
    assert ends_of(written) == ("8:05", "8:57")


def test_one_number_is_both_ends_of_its_stretch() -> None:
    """A single number is a stretch of one."""
    assert ends_of("7") == ("7", "7")


@given(st.times().map(lambda t: t.replace(second=0, microsecond=0)))
def test_a_clock_time_comes_back(at: time) -> None:
    """What `clock` writes, `a_time` reads."""
    assert a_time(clock(at)) == at


@pytest.mark.parametrize("written", ["24:00", "8:60", "99:99"])
def test_a_time_that_the_clock_lacks_is_none(written: str) -> None:
    """Hours end at 23 and minutes at 59."""
    assert a_time(written) is None


@given(st.sets(st.integers(1, 99), min_size=1))
def test_stretches_say_exactly_their_numbers(numbers: set[int]) -> None:
    """The stretches that are written hold each number once and no other, ascending, and none touches the next."""
    ends = [tuple(map(int, ends_of(part))) for part in stretches(numbers).split(", ")]
    assert [n for low, high in ends for n in range(low, high + 1)] == sorted(numbers)
    assert all(high + 1 < low for (_, high), (low, _) in pairwise(ends))


def test_spoken_words_and_the_words_of_the_model_go_both_ways() -> None:
    """`early release` is `early_release` in the model, and `pre-check` is `pre_check`."""
    assert snake("early release") == "early_release"
    assert spoken("early_release") == "early release"
    assert snake("pre-check") == "pre_check"
