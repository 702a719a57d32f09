"""What a search should find of a page: its headings, paragraphs and points, without drawings and what only lays them out.

Reading the tags of a drawing costs a search plugin more than the text around it, and would bring up a page for the digits of its scale.
"""

from __future__ import annotations

import re

_DRAWING = re.compile(r"<svg\b.*?</svg>", re.DOTALL)
_RUNNING = re.compile(r"</?(?:a|abbr|b|code|em|i|strong|sub|sup)\b[^>]*>")
_LAYOUT = re.compile(r"<(?!/?(?:h[1-6]|p|li)\b)[^>]*>")
_ATTRIBUTES = re.compile(r'<(h[1-6]|p|li)\s(?:[^>]*?\b(id="[^"]*"))?[^>]*>')


def searchable(body: str) -> str:
    """Return the text of a page's body in headings (with their ids), paragraphs and points."""
    text = _LAYOUT.sub(" ", _RUNNING.sub("", _DRAWING.sub(" ", body)))
    return " ".join(_ATTRIBUTES.sub(_kept, text).split())


def _kept(tag: re.Match[str]) -> str:
    return f"<{tag[1]} {tag[2]}>" if tag[2] else f"<{tag[1]}>"


def ids(body: str) -> set[str]:
    """Return the ids of a page's body, which a link of the guide may point at."""
    return {part.partition('"')[0] for part in body.split(' id="')[1:]}
