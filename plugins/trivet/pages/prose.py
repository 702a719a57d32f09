"""A teacher's Markdown as HTML that is safe to publish, and the links in it that lead nowhere."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

import nh3
from markdown import Markdown
from markupsafe import Markup

from trivet.model.problem import Place, Problem, Severity
from trivet.pages.plain_markdown import PlainMarkdown
from trivet.pages.prose_links import Refused, UnitLinks

EXTENSIONS = ("tables", "fenced_code", "sane_lists")
"""What a teacher may use beyond plain Markdown."""

_TAGS = {"p", "h2", "h3", "h4", "h5", "h6", "ul", "ol", "li", "a", "img", "em", "strong", "code", "pre", "blockquote", "hr", "br"} | {
    "table", "thead", "tbody", "tr", "th", "td",
}  # fmt: skip
_ATTRIBUTES = {"a": {"href", "title"}, "img": {"src", "alt", "title"}, "ol": {"start"}}
_PRE = re.compile(r"<pre>.*?</pre>", re.DOTALL)


@dataclass(frozen=True, slots=True)
class Prose:
    """Rendered prose without a blank line, and the addresses that were refused, as written."""

    html: Markup
    refused: tuple[tuple[str, Refused], ...] = ()


def render_prose(text: str, links: UnitLinks, *, shift: int, table_label: str) -> Prose:
    """Return `text` as safe HTML with its headings `shift` levels lower; a wide table scrolls inside its own frame."""
    rules = PlainMarkdown(link=links.link, image=links.image, shift=shift)
    made = Markdown(extensions=[*EXTENSIONS, rules], output_format="html").convert(text)
    clean = nh3.clean(
        made,
        tags=_TAGS,
        attributes=_ATTRIBUTES,
        allowed_classes={"td": {"right"}, "th": {"right"}},
        url_schemes={"https", "mailto"},
        link_rel=None,
    )
    frame = f'<div class="wide" tabindex="0" role="region" aria-label="{Markup.escape(table_label)}"><table>'
    framed = clean.replace("<table>", frame).replace("</table>", "</table></div>")
    return Prose(Markup(_without_blank_lines(framed)), tuple(rules.refused))  # noqa: S704 - nh3 cleaned it


def _without_blank_lines(html: str) -> str:
    """Keep the lines of code blocks as character references, so that a page's body has no blank line."""
    one_line = _PRE.sub(lambda found: found.group(0).replace("\n", "&#10;"), html)
    return "\n".join(line for line in one_line.splitlines() if line.strip())


def link_problems(prose: Prose, text: str, file: str, first_line: int) -> tuple[Problem, ...]:
    """Return a problem for each refused address, at its place in the file; `first_line` is the line on which `text` begins."""
    found = _places(text, file, first_line)
    return tuple(
        Problem("link-leads-nowhere", Severity.ERROR, found(written), refused.what, refused.remedy) for written, refused in prose.refused
    )


def _places(text: str, file: str, first_line: int) -> Callable[[str], Place]:
    """Return a function that finds each next occurrence of an address in `text`."""
    after: dict[str, int] = {}

    def find(written: str) -> Place:
        at = text.find(written, after.get(written, 0)) if written else -1
        if at < 0:
            return Place(file, first_line)
        after[written] = at + len(written)
        before = text[:at]
        return Place(file, first_line + before.count("\n"), at - (before.rfind("\n") + 1) + 1, len(written))

    return find
