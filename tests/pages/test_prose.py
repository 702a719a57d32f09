"""A teacher's prose: what it may do, and what never survives it."""

from __future__ import annotations

import re
from dataclasses import replace

import markdown
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.pages.plain_markdown import PlainMarkdown
from trivet.pages.prose import render_prose
from trivet.pages.prose_links import UnitLinks
from trivet.reading.checks.targets import Surroundings, link_fault, picture_fault

FILES = ("data/another-class.csv", "sim/index.html", "img/a b.png", "story.md")
LINKS = UnitLinks(slug="float-or-sink", files=FILES, units=("float-or-sink", "moving-plates"), page="units/float-or-sink/")
AROUND = Surroundings("float-or-sink", FILES, ("float-or-sink", "moving-plates"))

HOSTILE = [
    "<script>alert(1)</script>",
    "<img src=x onerror=alert(1)>",
    "text <svg onload=alert(1)></svg> text",
    "<iframe src='https://elsewhere.example'></iframe>",
    "<form action='https://elsewhere.example'><input name=q></form>",
    "<style>body { background: url(https://elsewhere.example/x) }</style>",
    "<div style='position:fixed' onclick=alert(1)>x</div>",
    "<meta http-equiv=refresh content='0;url=https://elsewhere.example'>",
    "<a href='javascript:alert(1)'>x</a>",
    "<!-- --><script>alert(1)</script>",
    "<math><mi xlink:href='data:x,<script>alert(1)</script>'></mi></math>",
    "[x](javascript:alert(1))",
    "[x](JaVaScRiPt:alert(1))",
    "[x](&#106;avascript:alert(1))",
    "[x](&#x6A;avascript&colon;alert(1))",
    "[x](&amp;#106;avascript:alert(1))",
    "[x](java\tscript:alert(1))",
    "[x](java&#10;script:alert(1))",
    "[x](\u0001javascript:alert(1))",
    "[x](vbscript:msgbox)",
    "[x](data:text/html;base64,PHNjcmlwdD4=)",
    "[x](file:///etc/passwd)",
    "[x](//elsewhere.example/a)",
    "[x](http://elsewhere.example/a)",
    "[x](\\\\elsewhere\\a)",
    "[x](/etc/passwd)",
    "[x](../../etc/passwd)",
    "[x](%2e%2e/%2e%2e/etc/passwd)",
    "[x]: javascript:alert(1)\n\n[x][x] and [x]",
    "<javascript:alert(1)>",
    "![x](https://elsewhere.example/pixel.png)",
    "![x](//elsewhere.example/pixel.png)",
    "![x](data:image/svg+xml,<svg onload=alert(1)>)",
    "![x](../moving-plates/)",
    "![x](x \"onerror=alert(1)\")",
    "[x](https://ok.example \"a\\\" onmouseover=alert(1) b=\\\"\")",
    "# Head {: onclick=alert(1) style=x }",
    "Text\n{: .x onclick=alert(1) }",
    "| a |\n| - |\n| <script>alert(1)</script> |",
    "```html\n<script>alert(1)</script>\n```",
    "```{.x onclick=alert(1)}\ny\n```",
    "    <script>alert(1)</script>",
    "<div markdown=1>\n<script>alert(1)</script>\n</div>",
]  # fmt: skip
GOOD = {
    "data/another-class.csv": "data/another-class.csv",
    "sim/": "sim/",
    "sim": "sim/",
    "sim/index.html#run": "sim/index.html#run",
    "img/a%20b.png": "img/a%20b.png",
    "../moving-plates/": "../moving-plates/",
    "../moving-plates/index.md": "../moving-plates/",
    "index.md": "./",
    "https://example.org/a?b=1&c=2#d": "https://example.org/a?b=1&c=2#d",
    "mailto:lead@example.org": "mailto:lead@example.org",
}


def tags(html: str) -> list[tuple[str, str]]:
    """Every tag of some HTML with its attributes as they stand."""
    return re.findall(r"<([a-z][a-z0-9]*)\b([^>]*)>", html, re.IGNORECASE)


def wrong(html: str) -> list[str]:
    """What in rendered prose could run, load or style anything."""
    found = []
    for tag, attributes in tags(html):
        if tag.lower() not in {
            "p",
            "h2",
            "h3",
            "h4",
            "h5",
            "h6",
            "ul",
            "ol",
            "li",
            "a",
            "img",
            "em",
            "strong",
            "code",
            "pre",
            "blockquote",
            "hr",
            "br",
            "div",
            "table",
            "thead",
            "tbody",
            "tr",
            "th",
            "td",
        }:
            found.append(tag)
        for name, value in re.findall(r'([a-z-]+)="([^"]*)"', attributes):
            if name not in {"href", "src", "alt", "title", "start", "class", "tabindex", "role", "aria-label"}:
                found.append(f"{tag} {name}")
            if name == "href" and not re.match(r"https://|mailto:|(?![a-z]+:)(?!//)", value):
                found.append(value)
            if name == "src" and not re.match(r"(?![a-z]+:)(?!/)(?!\.\.)", value):
                found.append(value)
    return found


def render(text: str) -> str:
    return str(render_prose(text, LINKS, shift=1, table_label="Table"))


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_prose_is_only_text(text: str) -> None:
    """Script, handlers, frames, forms, styles, foreign pictures and coded addresses never come out as anything but text."""
    html = render(text)
    assert wrong(html) == []
    assert "elsewhere.example" not in "".join(attributes for _, attributes in tags(html))
    assert not re.search(r"\n\s*\n", html)


@pytest.mark.parametrize("text", HOSTILE)
def test_the_first_net_holds_alone(text: str) -> None:
    """The Markdown extension, as the host loads it for guide pages after other extensions, lets nothing through without the cleaner."""
    host = markdown.Markdown(extensions=["toc", "tables", "fenced_code", "attr_list", "md_in_html", PlainMarkdown()])
    html = host.convert(text)
    risky = [t for t, _ in tags(html) if t.lower() in {"script", "iframe", "form", "style", "meta", "svg", "math", "input", "object"}]
    assert risky == []
    for _, attributes in tags(html):
        assert not re.search(r"\s(on[a-z]+|style)\s*=", re.sub(r'"[^"]*"', '""', attributes)), attributes
        assert not re.search(r'(?:href|src)="\s*(?:javascript|vbscript|data:|file:|http:|//)', attributes, re.IGNORECASE), attributes


@given(st.text(alphabet="<>[]()!&#;:/\\\"'` \n{}=aeijorscpt.x-|*_\t\u0000\u00ad", max_size=120))
@settings(max_examples=150, deadline=None)
def test_no_text_at_all_gets_through_as_markup(text: str) -> None:
    """Whatever is typed, the result holds only the tags, attributes and addresses of the list, and no blank line."""
    html = render(text)
    assert wrong(html) == []
    assert not re.search(r"\n\s*\n", html)


@pytest.mark.parametrize(("written", "address"), GOOD.items())
def test_a_good_link_leads_where_it_says(written: str, address: str) -> None:
    """Files of the folder, other units, https and mail addresses become links as seen from the page."""
    assert LINKS.link(written) == address


def test_a_link_is_seen_from_its_page() -> None:
    """The same file has another relative address on another page."""
    cards = replace(LINKS, page="units/float-or-sink/student/es/")
    assert cards.link("data/another-class.csv") == "../../data/another-class.csv"
    assert cards.image("img/a b.png") == "../../img/a%20b.png"


@pytest.mark.parametrize(
    "text",
    [t for t in HOSTILE if re.match(r"!?\[x\]\(", t)] + [f"[x]({g})" for g in GOOD] + ["[x](story.md)", "[x](#)", "[x](nothing.csv)"],
)
def test_reading_reports_what_pages_do_not_link(text: str) -> None:
    """A target that pages refuse is a problem when the unit is read, and the other way round: one rule in two places."""
    match = re.match(r"(!?)\[x\]\((\S+?)(?: \".*)?\)$", text, re.DOTALL)
    if match is None:
        assert "\t" in text or "<" in text or " " in text
        return
    target = match[2]
    if match[1]:
        assert (LINKS.image(target) is None) == (picture_fault(target, AROUND) is not None)
    else:
        assert (LINKS.link(target) is None) == (link_fault(target, AROUND) is not None)


def test_headings_stand_below_the_pages_own() -> None:
    """A first-level heading becomes the level below the page's, and none goes past the sixth."""
    assert render("# A\n\n###### B").startswith("<h2>A</h2>")
    assert "<h6>B</h6>" in render("# A\n\n###### B")


def test_a_table_stands_in_a_frame_that_a_keyboard_reaches() -> None:
    """A wide table scrolls inside its own named frame; a column set to the right stays so, without a style."""
    html = render("| a | b |\n| - | -: |\n| 1 | 2 |")
    assert '<div aria-label="Table" class="wide" role="group" tabindex="0">' in html or re.search(
        r'<div [^>]*class="wide"[^>]*><table', html.replace("\n", "")
    )
    assert '<td class="right">2</td>' in html
    assert "style" not in html


def test_a_code_block_keeps_its_blank_lines() -> None:
    """A blank line of code survives as a character reference, so that the body has none."""
    assert "<code>a&#10;&#10;b&#10;</code>" in render("```\na\n\nb\n```")
