"""A teacher's Markdown as HTML that is safe to publish."""

from __future__ import annotations

import re
from functools import cache

import nh3
from markdown import Markdown
from markupsafe import Markup

from trivet.pages.plain_markdown import PlainMarkdown
from trivet.pages.prose_links import UnitLinks

EXTENSIONS = ("tables", "fenced_code", "sane_lists")
"""What a teacher may use beyond plain Markdown."""

_TAGS = {"p", "h2", "h3", "h4", "h5", "h6", "ul", "ol", "li", "a", "img", "em", "strong", "code", "pre", "blockquote", "hr", "br"} | {
    "div", "table", "thead", "tbody", "tr", "th", "td",
}  # fmt: skip
_ATTRIBUTES = {
    "a": {"href", "title"},
    "img": {"src", "alt", "title"},
    "ol": {"start"},
    "div": {"tabindex", "role", "aria-label"},  # our own frame of a table: nobody else can write a div
}
_CLASSES = {"td": {"right"}, "th": {"right"}, "div": {"wide"}, "table": {"data"}}
_PRE = re.compile(r"<pre>.*?</pre>", re.DOTALL)


def render_prose(text: str, links: UnitLinks, *, shift: int, table_label: str) -> Markup:
    """Return `text` as safe HTML without a blank line, its headings `shift` levels lower, a wide table in a frame that scrolls."""
    reader, rules = _reader()
    rules.link, rules.image, rules.shift, rules.table_label = links.link, links.image, shift, table_label
    made = reader.reset().convert(text)
    clean = nh3.clean(made, tags=_TAGS, attributes=_ATTRIBUTES, allowed_classes=_CLASSES, url_schemes={"https", "mailto"}, link_rel=None)
    return Markup(_without_blank_lines(clean))


@cache
def _reader() -> tuple[Markdown, PlainMarkdown]:
    """Return the one reader of Markdown, and the rules that each text sets anew: to make a reader takes as long as to read a page."""
    rules = PlainMarkdown()
    return Markdown(extensions=[*EXTENSIONS, rules], output_format="html"), rules


def _without_blank_lines(html: str) -> str:
    """Keep the lines of code blocks as character references, so that a page's body has no blank line."""
    one_line = _PRE.sub(lambda found: found.group(0).replace("\n", "&#10;"), html)
    return "\n".join(line for line in one_line.splitlines() if line.strip())
