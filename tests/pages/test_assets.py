"""Stylesheet and scripts: small, our own, and nothing from elsewhere."""

from __future__ import annotations

import gzip
import re

import pytest

from tests.conftest import ROOT
from tests.pages.scenario import pages, site
from trivet.pages.style import SHEETS, smaller

ASSETS = {asset.path: asset.content.decode() for asset in site().assets if asset.path.startswith("assets/trivet/")}
CSS = ASSETS["assets/trivet/trivet.css"]
SOURCES = ROOT / "plugins" / "trivet" / "pages" / "assets"


def test_the_stylesheet_stays_small() -> None:
    """All CSS of the site is under 80 KB, and under 16 KB as it travels: less than the theme's own (137 KB, 22 KB)."""
    assert len(CSS) < 80_000
    assert len(gzip.compress(CSS.encode(), mtime=0)) < 16_000


def test_nothing_is_loaded_from_elsewhere() -> None:
    """No import, no address and no font in the stylesheet; scripts import only our own, and no address but the preview server's."""
    assert not re.search(r"@import|@font-face|url\(|https?:|//", CSS)
    for path, text in ASSETS.items():
        if path.endswith(".js"):
            own = re.sub(
                r"""(?:from |import\()"\./([a-z_]+\.js)\"""", lambda found: "" if f"assets/trivet/{found[1]}" in ASSETS else found[0], text
            )
            assert not re.search(r"https?://|import\(|from \"|\beval\b|innerHTML|document\.write", own), path


def test_every_script_is_loaded() -> None:
    """A script is that of a kind of page, stands in the theme, or is imported by another one: nothing dead is on the site."""
    theme = "".join(path.read_text(encoding="utf-8") for path in (SOURCES.parent / "theme").rglob("*") if path.suffix in (".html", ".py"))
    texts = {path.rpartition("/")[2]: text for path, text in ASSETS.items() if path.endswith(".js")}
    kinds = {page.meta["kind"] for page in pages().values()}
    for name in texts:
        imported = any(f'"./{name}"' in text for other, text in texts.items() if other != name)
        assert name.removesuffix(".js") in kinds or name in theme or imported, name


def test_every_rule_is_closed() -> None:
    """Braces balance in the whole and in each source file, and each source file is in the stylesheet."""
    assert CSS.count("{") == CSS.count("}")
    names = {path.stem for path in (SOURCES / "css").glob("*.css")}
    assert names == set(SHEETS)
    for path in (SOURCES / "css").glob("*.css"):
        text = path.read_text(encoding="utf-8")
        assert text.count("{") == text.count("}"), path
        assert len(text.splitlines()) < 330, path


def test_colors_stand_in_one_place() -> None:
    """No source file of styles names a color itself."""
    for path in (SOURCES / "css").glob("*.css"):
        assert not re.search(
            r"#[0-9a-f]{3,8}\b(?!-)|\brgba?\(|\bhsla?\(",
            re.sub(r"#(?:online|hands-on|teacher-led)", "", path.read_text(encoding="utf-8")),
            re.IGNORECASE,
        ), path


def test_every_length_on_a_page_has_its_rule() -> None:
    """Each length class in the bodies has a rule in the stylesheet, so that no bar is drawn without its length."""
    used = set()
    for page in pages().values():
        for classes in re.findall(r'class="([^"]*)"', page.body):
            used |= {name for name in classes.split() if re.fullmatch(r"(?:at|m|n|r)-\d+h?", name)}
    assert len(used) > 20
    assert {name for name in used if f".{name}{{" not in CSS} == set()


@pytest.mark.parametrize(
    ("css", "small"),
    [
        ("/* words { } */ a { color : red ; }\n", "a{color : red}\n"),
        ("a:hover , b > c { x: calc(1px + 2px); }", "a:hover,b > c{x: calc(1px + 2px)}\n"),
    ],
)
def test_smaller_means_the_same(css: str, small: str) -> None:
    """Comments and idle space go; space that separates selectors or terms of a sum stays."""
    assert smaller(css) == small
