"""QR codes as inline drawings, in ink and without styles."""

from __future__ import annotations

import re

from markupsafe import Markup

from trivet.pages.qr_code import qr_rows

_DARK = re.compile("1+")
QUIET = 2
"""Modules of quiet zone in the drawing; the card's own white adds the rest of the four that ISO/IEC 18004 asks for."""


def qr_svg(text: str, label: str) -> Markup:
    """Return an inline SVG of the QR code for `text`, with error correction M or better; `label` names it for a screen reader."""
    rows = qr_rows(text)
    side = len(rows) + 2 * QUIET
    path = []
    for y, row in enumerate(rows, QUIET):
        for dark in _DARK.finditer(row):
            start, end = dark.span()
            path.append(f"M{start + QUIET} {y}h{end - start}v1h-{end - start}z")
    return Markup('<svg class="qr-code" viewBox="0 0 {0} {0}" role="img" aria-label="{1}"><path d="{2}"/></svg>').format(
        side, label, "".join(path)
    )
