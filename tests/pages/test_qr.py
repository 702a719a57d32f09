"""What a reader of QR codes looks for first (ISO/IEC 18004): finders, the line between them, and the format information.

Figures from memory of the standard: finder rings of 7, 5 and 3 modules, timing line in row and column 6, 15 bits of format information
masked with 101010000010010, whose first two say the error correction (00 is M, 10 is H) and whose next three say the mask.
"""

from __future__ import annotations

import io
import re

import pytest
import segno
from markupsafe import Markup

from trivet.pages.qr import MASK, QUIET, qr_svg

M, H = 0b00, 0b10
ADDRESS = "https://trivet.example/units/float-or-sink/student/"


def drawn(svg: Markup) -> list[list[bool]]:
    """The modules that the path makes dark, without the quiet zone."""
    side = int(re.search(r'viewBox="0 0 (\d+) \1"', svg)[1])  # type: ignore[index] # found, or the test fails
    dark = [[False] * side for _ in range(side)]
    for x, y, length in re.findall(r"M(\d+) (\d+)h(\d+)v1h-\3z", svg):
        for column in range(int(x), int(x) + int(length)):
            dark[int(y)][column] = True
    quiet = [*range(QUIET), *range(side - QUIET, side)]
    assert not any(dark[one][other] or dark[other][one] for one in quiet for other in range(side))
    return [row[QUIET:-QUIET] for row in dark[QUIET:-QUIET]]


@pytest.mark.parametrize(("text", "level"), [("a", H), (ADDRESS, M), (ADDRESS * 5, M)])
def test_a_reader_finds_the_code(text: str, level: int) -> None:
    """Three finders, the two timing lines, and a format with the mask and error correction M, or more where that costs no room."""
    rows = drawn(qr_svg(text, "card"))
    side = len(rows)
    assert (side - 17) % 4 == 0
    finder = [[max(abs(x - 3), abs(y - 3)) != 2 for x in range(7)] for y in range(7)]
    for top, left in ((0, 0), (0, side - 7), (side - 7, 0)):
        assert [row[left : left + 7] for row in rows[top : top + 7]] == finder
    line = [place % 2 == 0 for place in range(8, side - 8)]
    assert rows[6][8 : side - 8] == line
    assert [row[6] for row in rows[8 : side - 8]] == line
    bits = [rows[8][column] for column in range(5)]
    said = int("".join("01"[bit] for bit in bits), 2) ^ 0b10101
    assert (said >> 3, said & 0b111) == (level, MASK)


def test_the_label_is_text() -> None:
    """What names the code for a screen reader can't leave its attribute, and the same address gives the same drawing."""
    svg = qr_svg(ADDRESS, '"><script>')
    assert 'aria-label="&#34;&gt;&lt;script&gt;"' in svg
    assert svg == qr_svg(ADDRESS, '"><script>')
    assert "style" not in svg


@pytest.mark.parametrize("text", ["https://trivet.example/units/float-or-sink/student/#hands-on", "https://a.example/x/"])
def test_a_qr_code_draws_exactly_its_modules(text: str) -> None:
    """The drawing's path covers the dark modules of the code (segno's matrix) and no other, inside its quiet zone."""
    svg = str(qr_svg(text, 'a "code"'))
    rows = segno.make(text, error="m", micro=False, mask=MASK).matrix
    drawn = {(int(x) + i, int(y)) for x, y, length in re.findall(r"M(\d+) (\d+)h(\d+)v1h-\d+z", svg) for i in range(int(length))}
    assert drawn == {(x + QUIET, y + QUIET) for y, row in enumerate(rows) for x, dark in enumerate(row) if dark}
    assert f'viewBox="0 0 {len(rows) + 2 * QUIET} ' in svg
    assert 'aria-label="a &#34;code&#34;"' in svg
    assert "style" not in svg


def test_a_qr_code_is_as_dark_as_segno_draws_it() -> None:
    """segno's own picture of the same code has the same number of dark modules (ISO/IEC 18004)."""
    out = io.StringIO()
    segno.make("https://a.example/", error="m", micro=False, mask=MASK).save(out, kind="txt", border=0)
    svg = str(qr_svg("https://a.example/", ""))
    assert sum(int(n) for n in re.findall(r"h(\d+)v1", svg)) == out.getvalue().count("1")
