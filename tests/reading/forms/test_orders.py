"""Wishes on the order of stations, in one line."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.model.station import Kind
from trivet.model.wish import Wish
from trivet.reading import forms
from trivet.reading.forms import Unreadable


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("B teacher-led first", Wish(Kind.TEACHER_LED, "B")),
        ("group C hands-on last", Wish(Kind.HANDS_ON, "C", last=True)),
        ("online before hands-on", Wish(Kind.ONLINE, "", Kind.HANDS_ON)),
        ("A  online before  teacher-led", Wish(Kind.ONLINE, "A", Kind.TEACHER_LED)),
    ],
)
def test_wishes(text: str, expected: Wish) -> None:
    """A group at a station first or last, or one station before another for one group or for as many as can have it."""
    assert forms.order(text) == expected


@pytest.mark.parametrize(
    ("text", "corrected"),
    [
        ("teacher-led first", "B teacher-led first"),
        ("c handson last", "B hands-on last"),
        ("Group c: hands on at the end", "B hands-on last"),
        ("group c hands on at the end", "C hands-on last"),
        ("hands-on after online", "online before hands-on"),
        ("computers before the hands on part for B", "B online before hands-on"),
        ("online before online", "online before hands-on"),
        ("D online first", "B online first"),
        ("", "B teacher-led first"),
    ],
)
def test_slips_are_answered_with_a_line_that_reads(text: str, corrected: str) -> None:
    """What can't be read is answered with the nearest wish."""
    read = forms.order(text)
    assert isinstance(read, Unreadable)
    assert read.corrected == corrected
    assert read.remedy == f"write {corrected}"


KINDS = st.permutations(list(Kind))


@given(
    wish=st.one_of(
        st.builds(Wish, st.sampled_from(Kind), st.sampled_from("ABC"), st.none(), st.booleans()),
        KINDS.flatmap(lambda kinds: st.builds(Wish, st.just(kinds[0]), st.sampled_from(("", *"ABC")), st.just(kinds[1]))),
    )
)
def test_written_and_read_again(wish: Wish) -> None:
    """Every wish is one line that reads as it."""
    assert forms.order(forms.write_order(wish)) == wish


@given(
    pieces=st.lists(
        st.sampled_from(["A", "group", "C", "online", "hands-on", "teacher-led", "before", "after", "first", "last"]), max_size=7
    )
)
def test_reader_and_pattern_say_the_same(pieces: list[str]) -> None:
    """A line is read exactly where the pattern of the schema takes it, and what is answered else can be read."""
    text = " ".join(pieces)
    read = forms.order(text)
    assert isinstance(read, Wish) == bool(re.match(forms.ORDER_PATTERN, text))
    if isinstance(read, Unreadable):
        assert isinstance(forms.order(read.corrected), Wish), (text, read)
