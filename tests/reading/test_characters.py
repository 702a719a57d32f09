"""Characters that no file may hold have names that people can look for."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.reading.characters import INVISIBLE, ODD_SPACES, REFUSED, ZERO_WIDTH, name_of

PRINTABLE = re.compile("[\t\n\r\x20-\x7e\x85\xa0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""YAML 1.2.2, production [1] c-printable."""


@given(st.characters(codec=None))
def test_what_yaml_refuses_is_refused(character: str) -> None:
    """Whatever is not printable to YAML 1.2.2 (production 1) is refused; of what is, only other line ends and the byte-order mark are."""
    if not PRINTABLE.fullmatch(character):
        assert REFUSED.fullmatch(character)
    elif REFUSED.fullmatch(character):
        assert character in "\x85\u2028\u2029\ufeff" or "\x7f" <= character <= "\x9f"


@given(st.characters(codec=None))
def test_a_name_is_words_and_a_code_point(character: str) -> None:
    """Every character has a name in small words, which holds no odd sign itself, and its code point."""
    said = name_of(character)
    assert said.endswith(f" (U+{ord(character):04X})")
    assert said.startswith(("a ", "an ", "the "))
    assert said.isprintable()


@pytest.mark.parametrize(
    ("text", "left"),
    [("a\u200bb", "ab"), ("\u200bname", "name"), ("name\u2060", "name"), ("\u0e01\u200b\u0e02", "\u0e01\u200b\u0e02"), ("é\u200b:", "é:")],
)
def test_zero_width_signs_beside_plain_letters_are_slips(text: str, left: str) -> None:
    """Beside plain letters and at the ends of a line they are pasted by accident; between letters of other scripts they may be meant."""
    assert ZERO_WIDTH.sub("", text) == left


@pytest.mark.parametrize("space", [chr(code) for code in range(0x3001) if re.fullmatch(f"[{ODD_SPACES}]", chr(code))])
def test_an_odd_space_can_not_be_seen(space: str) -> None:
    """Each of them is invisible to the reader of a key, is no plain space, and is let pass in texts."""
    assert INVISIBLE.fullmatch(space)
    assert space != " " and not REFUSED.fullmatch(space)
