"""Slips at the beginning of a line, each with the line as it should be; whole files stand in test_scan."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.reading.entries import entry
from trivet.reading.slips import slip

KNOWN = ("goal", "hazards", "done when", "clean up", "steps")


@pytest.mark.parametrize("bullet", ["–", "—", "•", "●", "▪", "◦", "‣", "·", "*", "+", "1.", "12)", "3)"])
@pytest.mark.parametrize("in_list", [False, True])
def test_any_bullet_becomes_a_dash(bullet: str, *, in_list: bool) -> None:
    """Whatever mark a word processor puts before an item, the dash is offered and the text kept."""
    found = slip(f"{bullet}  Weigh it.", KNOWN, in_list=in_list)
    assert found is not None
    assert (found.code, found.corrected) == ("dash-missing", "- Weigh it.")


@pytest.mark.parametrize(
    ("rest", "code", "corrected"),
    [
        ("-Go.", "dash-needs-space", "- Go."),
        ("–Go.", "dash-needs-space", "- Go."),
        ("goal:Find it.", "colon-needs-space", "goal: Find it."),
        ("goal = Find it.", "colon-missing", "goal: Find it."),
        ("goal=", "colon-missing", "goal:"),
        ("hazards none", "colon-missing", "hazards: none"),
        ("Done When You can say it.", "colon-missing", "done when: You can say it."),
        ("steps", "colon-missing", "steps:"),
        ("[goal: x]", "special-first", "goal: x"),
        ("*goal: x", "special-first", "goal: x"),
        ('"goal: x', "special-first", "goal: x"),
    ],
)
def test_slips_outside_a_list(rest: str, code: str, corrected: str) -> None:
    """A dash without its space, a key without its colon or with a sign before it is answered with the line to write."""
    found = slip(rest, KNOWN, in_list=False)
    assert found is not None
    assert (found.code, found.corrected) == (code, corrected)


@pytest.mark.parametrize("rest", ["---", "https://trivet.example/", "Find what decides it.", "5 g of salt"])
def test_what_is_no_slip(rest: str) -> None:
    """A fence, an address and a sentence are not taken for a slip of a key."""
    assert slip(rest, KNOWN, in_list=False) is None


def test_in_a_list_anything_gets_a_dash() -> None:
    """Among items even what looks like a key is an item without its dash."""
    found = slip("goal Find it.", KNOWN, in_list=True)
    assert found is not None
    assert (found.code, found.corrected) == ("dash-missing", "- goal Find it.")


def test_single_words_above_show_that_a_name_was_meant() -> None:
    """Where the keys around are single words, an unknown word before one other is a key; a key of two words is not made of a text."""
    found = slip("p1 8:05-8:57", KNOWN, in_list=False, one_word=True)
    assert found is not None
    assert found.corrected == "p1: 8:05-8:57"
    assert slip("read this one:x", KNOWN, in_list=False, one_word=True) is None


@given(st.text(st.sampled_from("ab -:=*[]–1.)\"'"), min_size=1, max_size=16).map(str.strip).filter(bool), st.booleans())
def test_a_corrected_line_has_a_dash_or_a_key(rest: str, in_list: bool) -> None:
    """Whatever is answered, the line to write begins with a dash or with a key."""
    found = slip(rest, KNOWN, in_list=in_list)
    if found is not None:
        made = entry(found.corrected)
        assert made.dash or made.key is not None, (rest, found)
