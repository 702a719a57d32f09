"""Lengths to scale as classes, and the stylesheet that gives them their lengths."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.pages.scale import length_class, place_class, scale_css

NAMES = st.sampled_from(("at", "m", "n", "r"))


@pytest.mark.parametrize(("minutes", "made"), [(0, "m-0"), (0.5, "m-0h"), (6.5, "m-6h"), (23, "m-23"), (23.0, "m-23")])
def test_half_minutes(minutes: float, made: str) -> None:
    """Whole and half minutes each have a class of their own."""
    assert length_class("m", minutes) == made


@pytest.mark.parametrize("minutes", [0.25, 6.4, -0.5, -1])
def test_other_fractions_are_refused(minutes: float) -> None:
    """A length that no class has is never rounded to another; the fault names it."""
    with pytest.raises(ValueError, match="halves from 0 up") as refused:
        length_class("m", minutes)
    assert str(minutes) in str(refused.value)


@given(st.lists(st.tuples(NAMES, st.integers(0, 240)), max_size=8))
def test_every_length_has_its_rule(lengths: list[tuple[str, int]]) -> None:
    """Each class on a page has one rule with its length, and the order of pages makes no difference."""
    bodies = [f'<i class="bar {length_class(name, halves / 2)}"></i>' for name, halves in lengths]
    css = scale_css(bodies)
    assert css == scale_css(reversed(bodies))
    assert css.count("\n") == len(set(lengths))
    for name, halves in lengths:
        assert f".{length_class(name, halves / 2)}{{--{name}:{halves / 2:g}}}\n" in css


def test_only_classes_of_lengths_are_taken() -> None:
    """Other classes, and words of a text that look like one, get no rule; places on the strip do."""
    assert scale_css(['<p class="m-x at-3px team-4 m--1">m-7</p>', "<p>at-2</p>"]) == ""
    assert scale_css([f'<td class="{place_class("wk", 14)}">']) == ".wk-14{--wk:14}\n"


def test_the_scale_knows_what_is_used_and_nothing_else() -> None:
    """One rule for each length class in the bodies, sorted; other classes, and lengths outside a class attribute, give none."""
    css = scale_css(['<b class="at-10 m-2h x-3 n-52">m-9</b>', '<b class="at-2 at-10 format-3">'])
    assert css == ".at-2{--at:2}\n.at-10{--at:10}\n.m-2h{--m:2.5}\n.n-52{--n:52}\n"
