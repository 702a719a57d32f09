"""The floor of a build: the same visible text on the same pages as plain Markdown, through Material alone.

A page's HTML becomes what a person would write: headings, paragraphs, lists and tables. Links, pictures and classes are left out,
which is to the floor's advantage.
"""

from __future__ import annotations

import re
import shutil
from collections.abc import Sequence
from html.parser import HTMLParser
from pathlib import Path

import yaml

from trivet.model.page import Page, Site

_BLOCKS = frozenset(
    (
        *[
            "address",
            "article",
            "aside",
            "blockquote",
            "body",
            "caption",
            "dd",
            "details",
            "div",
            "dl",
            "dt",
            "fieldset",
            "figcaption",
            "figure",
            "footer",
            "form",
        ],
        *[
            "h1",
            "h2",
            "h3",
            "h4",
            "h5",
            "h6",
            "header",
            "hr",
            "html",
            "legend",
            "li",
            "main",
            "nav",
            "ol",
            "p",
            "pre",
            "section",
            "summary",
            "table",
            "tbody",
            "td",
            "tfoot",
            "th",
            "thead",
            "tr",
            "ul",
        ],
    )
)
_RUNNING = frozenset(("a", "abbr", "b", "code", "em", "i", "strong", "sub", "sup"))
"""Words run on through these; any other element that is no block sets its words apart."""
_UNSEEN = frozenset(("script", "style", "template", "title"))
_HEADINGS = {f"h{level}": "#" * level + " " for level in range(1, 7)}
_POINT = "- "
_LOOSE = re.compile(r" ([,.;:!?)])")
_SPECIAL = re.compile(r"([\\`*_<>\[\]|])")
_FIRST = re.compile(r"^(?:([#+\-=~:])|(\d+)(?=[.)]))")


class Reader(HTMLParser):
    """Collects a page's visible text block by block."""

    def __init__(self) -> None:
        """Begin with nothing read."""
        super().__init__()
        self.blocks: list[str] = []
        self.text = ""
        self.marks: list[str] = []
        self.unseen = 0
        self.rows: list[list[str]] | None = None

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Close the block before this one and remember what begins."""
        self.unseen += tag in _UNSEEN
        self._between(tag)
        if tag == "table":
            self.rows = []
        elif tag == "tr" and self.rows is not None:
            self.rows.append([])
        elif tag == "li" or tag in _HEADINGS:
            self.marks.append(_HEADINGS.get(tag, _POINT))

    def handle_endtag(self, tag: str) -> None:
        """Close the block that ends."""
        self.unseen -= tag in _UNSEEN
        if tag in ("td", "th") and self.rows:
            self.rows[-1].append(self._taken())
        elif tag == "table" and self.rows is not None:
            self.blocks.append(table(self.rows))
            self.rows = None
        else:
            self._between(tag)
        if (tag == "li" or tag in _HEADINGS) and self.marks:
            self.marks.pop()

    def handle_data(self, data: str) -> None:
        """Take what is seen."""
        if not self.unseen:
            self.text += data

    def close(self) -> None:
        """Take what is left."""
        super().close()
        self._between("body")

    def _taken(self) -> str:
        text, self.text = _LOOSE.sub(r"\1", " ".join(self.text.split())), ""
        return escaped(text)

    def _between(self, tag: str) -> None:
        if tag in _RUNNING:
            return
        if tag not in _BLOCKS or self.rows:
            self.text += " "  # a block inside a cell belongs to the cell
        elif text := self._taken():
            self.blocks.append((self.marks[-1] if self.marks else "") + text)
            if self.marks and self.marks[-1] == _POINT:
                self.marks[-1] = "  "  # what follows in the same point is a paragraph of its own


def escaped(text: str) -> str:
    """Return a text so that Markdown shows it as it stands."""
    text = _SPECIAL.sub(r"\\\1", text.replace("&", "&amp;"))
    return _FIRST.sub(lambda found: f"\\{found[1]}" if found[1] else f"{found[2]}\\", text)


def table(rows: Sequence[Sequence[str]]) -> str:
    """Return rows of cells as a Markdown table whose first row is the head; every row as wide as the widest."""
    width = max((len(row) for row in rows), default=0)
    lines = ["| " + " | ".join([*row, *[""] * (width - len(row))]) + " |" for row in rows]
    return "\n".join([*lines[:1], "|" + " --- |" * width, *lines[1:]])


def blocks(html: str) -> list[str]:
    """Return the visible text of some HTML as blocks of Markdown."""
    reader = Reader()
    reader.feed(html)
    reader.close()
    return reader.blocks


def markdown(html: str) -> str:
    """Return the visible text of some HTML as plain Markdown, lists without blank lines."""
    found = blocks(html)
    text = ""
    for before, block in zip(["", *found], found, strict=False):
        text += block if not before else f"\n{block}" if before.startswith(_POINT) and block.startswith(_POINT) else f"\n\n{block}"
    return text + "\n"


def words(html: str) -> int:
    """Count the visible words of the article of a built page."""
    article = re.search(r"<article\b.*</article>", html, re.DOTALL)
    return sum(len(re.findall(r"\S*\w\S*", block)) for block in blocks(article[0] if article else ""))


def write_floor(to: Path, project: Path, site: Site) -> Path:
    """Write the pages of `site` as a plain Markdown project below `to`, with the settings, guide and unit files of `project`."""
    docs = to / "docs"
    shutil.copytree(project / "units" / "guide", docs / "guide")
    for page in site.pages:
        path = docs / page.path / "index.md"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(_front(page) + markdown(page.body), encoding="utf-8")
    for asset in site.assets:
        if asset.path.startswith("units/"):
            path = docs / asset.path
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(asset.content)
    settings = (project / "mkdocs.yml").read_text(encoding="utf-8")
    settings = settings.replace("docs_dir: units", "docs_dir: docs").replace("  - trivet\n", "").replace(": units.md", ": units/index.md")
    (to / "mkdocs.yml").write_text(settings, encoding="utf-8")
    return to


def _front(page: Page) -> str:
    search = page.meta.get("search")
    excluded = search is False or (isinstance(search, dict) and search.get("exclude"))
    meta = {"title": page.meta["title"], **({"search": {"exclude": True}} if excluded else {})}
    return f"---\n{yaml.safe_dump(meta, allow_unicode=True)}---\n\n"
