"""What holds on every page, whatever its kind."""

from __future__ import annotations

import posixpath
import re
from dataclasses import replace
from html.parser import HTMLParser
from itertools import pairwise
from urllib.parse import unquote

import pytest

from tests.pages.scenario import BUILD, PROBLEMS, SOURCE, department, pages, plans, site
from trivet.model.page import Page
from trivet.pages.site import make_site
from trivet.planning.hazards import DANGER

VOID = {"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"}
SELF_CLOSING = {"circle", "path", "rect", "use"}
ALL = pages()
EVERY = pytest.mark.parametrize("page", ALL.values(), ids=lambda page: page.path or "home")


class Tags(HTMLParser):
    """Collects tags with their attributes, text, and what is not closed in order."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.found: list[tuple[str, dict[str, str | None]]] = []
        self.text: list[str] = []
        self.wrong: list[str] = []
        self.feed(html)
        self.wrong += self.open

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        names = [name for name, _ in attrs]
        if len(names) != len(set(names)):
            self.wrong.append(f"{tag} says an attribute twice")
        self.found.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, dict(attrs)))
        if tag not in VOID | SELF_CLOSING:
            self.wrong.append(f"<{tag}/>")

    def handle_endtag(self, tag: str) -> None:
        if not self.open or self.open.pop() != tag:
            self.wrong.append(f"</{tag}>")

    def handle_data(self, data: str) -> None:
        self.text.append(data)


@EVERY
def test_a_body_is_one_block_of_well_nested_html(page: Page) -> None:
    """A body begins with a div, closes every tag in order and has no blank line, so that any generator carries it through."""
    assert page.body.startswith("<div")
    assert not re.search(r"\n\s*\n", page.body)
    assert Tags(page.body).wrong == []


@EVERY
def test_nothing_in_a_body_needs_inline_style_or_script(page: Page) -> None:
    """No style or script element, no style attribute, no event handler: the site runs without 'unsafe-inline' (CSP Level 3)."""
    for tag, attributes in Tags(page.body).found:
        assert tag not in {"style", "script", "link", "iframe", "object", "embed", "form", "base", "meta"}
        assert not [name for name in attributes if name == "style" or name.startswith("on")], (tag, attributes)
        for name in ("href", "src"):
            assert not (attributes.get(name) or "").lower().startswith(("javascript:", "data:", "http:", "//")), attributes


@EVERY
def test_every_id_is_unique_and_every_anchor_exists(page: Page) -> None:
    """No id stands twice; links, labels and drawings that point inside the page find what they point at."""
    tags = Tags(page.body).found
    ids = [attributes["id"] for _, attributes in tags if "id" in attributes]
    assert len(ids) == len(set(ids))
    inside = {attributes["href"].removeprefix("#") for _, attributes in tags if (attributes.get("href") or "").startswith("#")}
    inside |= {name for _, attributes in tags for name in (attributes.get("aria-labelledby") or "").split()}
    inside |= set(re.findall(r"url\(#([^)]+)\)", page.body))
    assert inside <= set(ids)


@EVERY
def test_every_link_inside_the_site_leads_somewhere(page: Page) -> None:
    """A relative link, resolved from the page's address, is a page, an asset or a file of a unit; its anchor exists there."""
    whole = site()
    unit_files = {"units/float-or-sink/data/another-class.csv", "units/float-or-sink/sim/", "units/float-or-sink/sim/index.html"}
    known = (
        {p.path for p in whole.pages}
        | {a.path for a in whole.assets}
        | unit_files
        | {f.replace("float-or-sink", "moving-plates") for f in unit_files}
    )
    for _, attributes in Tags(page.body).found:
        href = attributes.get("href") or ""
        if not href or href.startswith(("#", "https://", "mailto:")):
            continue
        path, _, anchor = href.partition("#")
        target = posixpath.normpath(posixpath.join("/", page.path, unquote(path))).lstrip("/")
        target += "/" if path.endswith("/") and target else ""
        assert target in known, href
        if anchor:
            assert f'id="{anchor}"' in ALL[target].body, href


@EVERY
def test_headings_are_in_order(page: Page) -> None:
    """There is one h1, it comes first, and no heading is more than one level below the one before it."""
    levels = [int(tag[1]) for tag, _ in Tags(page.body).found if re.fullmatch("h[1-6]", tag)]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


@EVERY
def test_the_danger_exception_stands_wherever_classmates_come_first(page: Page) -> None:
    """As often as students are sent to three classmates, the nearest adult at once is named for danger."""
    text = re.sub(r"<[^>]+>", " ", page.body)
    sent = len(re.findall(r"three (?:classmates|peers)|tres compañeros", text))
    assert len(re.findall(r"nearest adult at once|de inmediato con el adulto más cercano|Danger goes to the nearest adult", text)) >= sent
    if page.meta["kind"] == "student":
        assert sent == 3
        for word in (
            ("urt", "broken", "spilled", "smoking", "frightening")
            if page.meta["lang"] == "en"
            else ("lastimó", "rompió", "derramó", "humo", "miedo")
        ):
            assert text.count(word) >= 3


def test_the_danger_sentence_names_what_the_rule_names() -> None:
    """The page's words and the planning's sentence speak of the same five dangers."""
    page = re.sub(r"<[^>]+>", " ", ALL["units/float-or-sink/student/"].body)
    for word in ("broken", "spilled", "smoking", "frightening", "nearest adult at once"):
        assert word in DANGER
        assert word in page


def test_hostile_text_stays_text() -> None:
    """A title, a step or a place with markup in it stands on every page as it was typed."""
    bad = "<img src=x onerror=alert(1)>\"'&"
    made = department()
    unit = made.units["float-or-sink"]
    unit = replace(
        unit, title=bad, question=bad, reflection=bad, online=replace(unit.online, title=bad, goal=bad, use=bad, done_when=bad),
        hands_on=replace(unit.hands_on, instead=bad, put_away=bad, safety_notes=(bad,)), standards=(bad,),
    )  # fmt: skip
    made = replace(made, units={**made.units, "float-or-sink": unit})
    for page in make_site(made, plans(made), PROBLEMS, BUILD, {"units/broken/index.md": SOURCE}).pages:
        assert "<img" not in page.body
        assert Tags(page.body).wrong == []
        assert not [a for _, a in Tags(page.body).found if any(name.startswith("on") for name in a)]
