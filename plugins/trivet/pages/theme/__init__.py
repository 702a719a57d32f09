"""The frame around every page: block overrides of the theme's base template, and what they need from us."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

from trivet.pages.links import ASSETS
from trivet.pages.words import load_words

THEME_FOLDER = Path(__file__).resolve().parent
"""Goes into the theme's folders, after a department's own overrides."""

PREVIEW_SCRIPT = f"{ASSETS}preview.js"
"""Reloads a page of the live preview when it changed: the host's own way is an inline script, which our policy refuses."""


def template_globals() -> dict[str, object]:
    """Return what main.html and 404.html call, for the environment that renders the pages of one build."""
    return {"trivet_words": load_words, "trivet_assets": ASSETS, "trivet_kept": _keeper()}


def _keeper() -> Callable[..., str]:
    """Return a call block that renders its content once for each key, and after that gives the same again."""
    kept: dict[tuple[object, ...], str] = {}

    def once(*key: object, caller: Callable[[], str]) -> str:
        if key not in kept:
            kept[key] = caller()
        return kept[key]

    return once


_LANG = re.compile(r'(<html\b[^>]*\blang=")[^"]*(")')


def with_language(html: str, language: str) -> str:
    """Return a finished page with the language of its text on its root element (WCAG 2.2, 3.1.1)."""
    return _LANG.sub(rf"\g<1>{language}\g<2>", html, count=1) if re.fullmatch(r"[A-Za-z0-9-]+", language) else html
