"""QR codes, module for module as another encoder makes them, and as the standard's own examples say."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
import segno
from hypothesis import given
from hypothesis import strategies as st
from segno import encoder

from trivet.pages import qr_code
from trivet.pages.qr import QUIET, qr_svg
from trivet.pages.qr_code import MASK, VERSIONS, qr_rows

ADDRESSES = st.text("abcdefghijklmnopqrstuvwxyz0123456789-./#:?%", min_size=1, max_size=330).map("h".__add__)


@pytest.fixture(autouse=True, scope="module")
def padding_of_the_standard() -> object:
    """segno adds a byte of zeros where the bits end with a byte; ISO/IEC 18004:2015, 7.4.10, adds none there. Readers pass over both."""

    def pad(bits: encoder.Buffer, version: int, length: int) -> None:
        bits.extend([0] * (-length % 8))

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(encoder, "write_padding_bits", pad)
        yield


def by_segno(text: str) -> list[str]:
    return ["".join(map(str, row)) for row in segno.make(text, error="m", micro=False, mask=MASK).matrix]


@given(ADDRESSES)
def test_a_code_is_segno_s_module_for_module(text: str) -> None:
    """Version, error correction, check bytes, places and mask are those of another encoder (segno) for any address."""
    assert qr_rows(text) == by_segno(text)


@pytest.mark.parametrize("version", range(1, VERSIONS + 1))
def test_every_version_holds_what_the_standard_says(version: int) -> None:
    """The longest text of each version and the next longer one (ISO/IEC 18004:2015, table 7, as segno has it) get the same code."""
    longest = max(size for size in range(1, 3000) if 4 + (8 if version < 10 else 16) + 8 * size <= 8 * qr_code._data_bytes(version, "M"))
    assert len(qr_rows("a" * longest)) == 17 + 4 * version
    for text in ("a" * longest, "a" * (longest + 1))[: 1 if version == VERSIONS else 2]:
        assert qr_rows(text) == by_segno(text)


def test_more_than_a_code_holds_is_refused() -> None:
    """2,331 bytes are the most at level M (ISO/IEC 18004:2015, table 7)."""
    assert len(qr_rows("a" * 2331)) == 177
    with pytest.raises(ValueError, match="2332 bytes"):
        qr_rows("a" * 2332)


def test_check_bytes_of_the_standard_s_example() -> None:
    """Annex I of ISO/IEC 18004 encodes 01234567 in version 1-M: 16 data bytes and 10 check bytes."""
    data = bytes.fromhex("10 20 0C 56 61 80 EC 11 EC 11 EC 11 EC 11 EC 11")
    assert qr_code._check(data, 10) == bytes.fromhex("A5 24 D4 C1 ED 36 C7 87 2C 55")


def test_format_and_version_of_the_standard_s_examples() -> None:
    """Level M with mask 101 gives 100000011001110 (7.9.1), and version 7 gives 000111110010010100 (annex D)."""
    said = 0b00101 << 10
    assert f"{(said | qr_code._remainder(said, 0x537)) ^ 0b101010000010010:015b}" == "100000011001110"
    assert f"{7 << 12 | qr_code._remainder(7 << 12, 0x1F25):018b}" == "000111110010010100"


def test_accents_and_other_scripts_get_a_code() -> None:
    """A text is Latin-1, a reader's default, or UTF-8 where that does not hold it."""
    for text in ("https://schüle.example/", "https://学校.example/", "https://школа.example/"):
        assert len(qr_rows(text)) >= 21
    assert qr_rows("https://schüle.example/") == by_segno("https://schüle.example/")


@given(ADDRESSES)
def test_a_drawing_is_exactly_its_modules(text: str) -> None:
    """The drawing's path covers the dark modules and no other, inside its quiet zone, in as few pieces as the rows allow."""
    svg = str(qr_svg(text, 'a "code"'))
    rows = qr_rows(text)
    pieces = [(int(x), int(y), int(length)) for x, y, length in re.findall(r"M(\d+) (\d+)h(\d+)v1h-\d+z", svg)]
    drawn = {(x + i, y) for x, y, length in pieces for i in range(length)}
    assert drawn == {(x + QUIET, y + QUIET) for y, row in enumerate(rows) for x, dark in enumerate(row) if dark == "1"}
    assert all(y < below or x + length < right for (x, y, length), (right, below, _) in pairwise(pieces))
    assert f'viewBox="0 0 {len(rows) + 2 * QUIET} ' in svg
    assert 'aria-label="a &#34;code&#34;"' in svg
    assert "style" not in svg
