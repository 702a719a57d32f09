"""The site's stylesheet and scripts: one small source file a concern, one stylesheet to load."""

from __future__ import annotations

import re
from collections.abc import Iterable
from importlib.resources import files

from trivet.model.page import Asset
from trivet.pages.colors import color_css
from trivet.pages.links import ASSETS
from trivet.pages.scale import scale_css

SHEETS = (
    "tokens",
    "base",
    "parts",
    "bars",
    "frame",
    "unit",
    "units",
    "student",
    "lesson",
    "home",
    "prep",
    "year",
    "whom",
    "problem",
    "print",
)
"""In the order in which later rules may refine earlier ones; print comes last."""

SCRIPTS = (
    "class_file.js",
    "drawn.js",
    "frame.js",
    "home.js",
    "lesson.js",
    "names.js",
    "prep.js",
    "preview.js",
    "year.js",
)
"""What a page loads, or what such a script imports; `late.js` joins them with the page that imports it."""

_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_AROUND = re.compile(r"\s*([{};,])\s*")
_SPACE = re.compile(r"\s+")


def style_assets(bodies: Iterable[str]) -> tuple[Asset, ...]:
    """Return stylesheet, scripts and the mark; `bodies` say which lengths to scale the stylesheet must know."""
    parts = [color_css(), *(_source(f"css/{name}.css") for name in SHEETS[:-1]), scale_css(bodies), _source(f"css/{SHEETS[-1]}.css")]
    return (
        Asset(f"{ASSETS}trivet.css", "".join(map(smaller, parts)).encode()),
        *(Asset(f"{ASSETS}{name}", _source(f"js/{name}").encode()) for name in SCRIPTS),
        Asset(f"{ASSETS}mark.svg", _source("mark.svg").encode()),
    )


def smaller(css: str) -> str:
    """Return a stylesheet without comments and without space that means nothing."""
    return _AROUND.sub(r"\1", _SPACE.sub(" ", _COMMENT.sub("", css))).replace(";}", "}").strip() + "\n"


def _source(path: str) -> str:
    return (files("trivet.pages") / "assets" / path).read_text(encoding="utf-8")
