"""Markdown for prose that is not trusted: raw HTML shows as text, links are checked, headings stand below the page's own.

As an extension of Python-Markdown, `trivet.pages.plain_markdown:PlainMarkdown`; load it after all others.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any
from xml.etree.ElementTree import Element

from markdown import Extension, Markdown
from markdown.extensions.attr_list import AttrListExtension
from markdown.treeprocessors import Treeprocessor
from markdown.util import AMP_SUBSTITUTE

from trivet.pages.prose_links import outside, plain
from trivet.pages.words import load_words

Resolve = Callable[[str], str | None]
"""An address as written to the address to publish, None for none."""

_HEADINGS = ("h1", "h2", "h3", "h4", "h5", "h6")
_NEVER = ("style", "srcset", "background")


def only_schemes(written: str) -> str | None:
    """Let relative addresses be (the host checks them) and pass addresses elsewhere through the list of schemes."""
    target = plain(written)
    head = re.split(r"[/#?]", target, maxsplit=1)[0]
    return outside(target) if target.startswith("//") or ":" in head else target


def only_inside(written: str) -> str | None:
    """Let pictures come from the site alone."""
    target = plain(written)
    head = re.split(r"[/#?]", target, maxsplit=1)[0]
    return None if target.startswith("//") or ":" in head else target


class PlainMarkdown(Extension):
    """No raw HTML, no attribute lists, links from a list of schemes, no inline styles."""

    def __init__(
        self,
        link: Resolve = only_schemes,
        image: Resolve = only_inside,
        *,
        shift: int = 0,
        table_label: str = "",
        **kwargs: Any,
    ) -> None:
        """`link` and `image` resolve addresses; `shift` moves headings down by so many levels.

        `table_label` names the frame inside which a wide table scrolls; "" takes the word of the pages.
        """
        self.link = link
        self.image = image
        self.shift = shift
        self.table_label = table_label or load_words()("prose.table")
        super().__init__(**kwargs)

    def extendMarkdown(self, md: Markdown) -> None:
        """Take out what passes raw HTML and attributes through; put the guard in as the last look at the tree."""
        md.preprocessors.deregister("html_block", strict=False)
        md.inlinePatterns.deregister("html", strict=False)
        md.treeprocessors.deregister("attr_list", strict=False)
        # fenced code asks whether attribute lists were loaded, and would write a fence's own into the page
        md.registeredExtensions[:] = [each for each in md.registeredExtensions if not isinstance(each, AttrListExtension)]
        for name in ("markdown_block", "markdown_inline"):  # md_in_html puts its own back
            md.parser.blockprocessors.deregister(name, strict=False)
        md.treeprocessors.register(_Guard(md, self), "trivet_guard", 5)


class _Guard(Treeprocessor):
    def __init__(self, md: Markdown, rules: PlainMarkdown) -> None:
        super().__init__(md)
        self.rules = rules

    def run(self, root: Element) -> None:
        for parent in list(root.iter()):
            for child in list(parent):
                self._look_at(parent, child)
                if child.tag == "table":
                    self._frame(parent, child)

    def _look_at(self, parent: Element, element: Element) -> None:
        tag = element.tag if isinstance(element.tag, str) else ""
        for name in list(element.attrib):
            if name.lower().startswith("on") or name.lower() in _NEVER:
                self._keep_alignment(element, element.attrib.pop(name))
        if tag in _HEADINGS and self.rules.shift:
            element.tag = _HEADINGS[min(_HEADINGS.index(tag) + self.rules.shift, 5)]
        if tag == "a":
            self._resolve(element, "href", self.rules.link)
            if "href" not in element.attrib:
                element.tag = "span"
                element.attrib.clear()
        elif tag == "img":
            self._resolve(element, "src", self.rules.image)
            if "src" not in element.attrib:
                _as_text(parent, element)

    def _resolve(self, element: Element, name: str, resolve: Resolve) -> None:
        written = element.attrib.pop(name, "").replace(AMP_SUBSTITUTE, "&")
        found = resolve(written)
        if found is not None:
            element.set(name, found)

    def _frame(self, parent: Element, table: Element) -> None:
        """Put a table into a frame that scrolls and that a keyboard reaches (WCAG 2.2, 2.1.1 and 1.4.10)."""
        label = self.rules.table_label
        frame = Element("div", {"class": "wide", "tabindex": "0", "role": "group", "aria-label": label})
        table.set("class", "data")  # a theme frames tables without a class in its own way
        frame.tail, table.tail = table.tail, "\n"
        parent[list(parent).index(table)] = frame
        frame.append(table)

    def _keep_alignment(self, element: Element, style: str) -> None:
        if element.tag in ("td", "th") and style.replace(" ", "") == "text-align:right;":
            element.set("class", "right")


def _as_text(parent: Element, element: Element) -> None:
    """Replace a picture that may not be shown by its description."""
    place = list(parent).index(element)
    text = (element.get("alt") or "") + (element.tail or "")
    parent.remove(element)
    if place == 0:
        parent.text = (parent.text or "") + text
    else:
        before = parent[place - 1]
        before.tail = (before.tail or "") + text
