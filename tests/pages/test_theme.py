"""The frame: what our templates put around a page, over a stand-in for the theme's base."""

from __future__ import annotations

import re
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest
from jinja2 import ChoiceLoader, DictLoader, Environment, FileSystemLoader

from trivet.pages.theme import THEME_FOLDER, template_globals, with_language

BASE = (
    '<!doctype html><html lang="en" class="no-js"><head>{% block site_meta %}{% endblock %}{% block htmltitle %}{% endblock %}'
    "{% block styles %}<link rel=x>{% endblock %}</head><body>{% block header %}{% endblock %}"
    "<main>{% block container %}{% endblock %}</main>"
    "{% block footer %}{% endblock %}{% block scripts %}<script src=theme.js></script>"
    "<script src=added.js></script>{% endblock %}</body></html>"
)
STUBS = {
    "base.html": BASE,
    ".icons/sun.svg": "<svg></svg>",
    "partials/javascripts/palette.html": "",
    "partials/search.html": '<div class="md-search" role="dialog"></div>',
}

PALETTE = [
    {"media": "(prefers-color-scheme)", "toggle": {"icon": "sun", "name": "Use <light>"}},
    {"media": "(prefers-color-scheme: dark)", "scheme": "slate", "toggle": {"icon": "sun", "name": "Use dark"}},
    {"media": "print"},
]
"""As mkdocs.yml has it; the last cannot be chosen."""


def environment() -> Environment:
    """As MkDocs makes it: without autoescape."""
    env = Environment(loader=ChoiceLoader([DictLoader(STUBS), FileSystemLoader(THEME_FOLDER)]))
    env.globals.update(template_globals())
    env.filters["url"] = lambda value: f"../{value}"
    return env


def framed(kind: str = "unit", template: str = "main.html", **meta: Any) -> str:
    """A page of some kind in its frame."""
    children = [SimpleNamespace(url=f"guide/{n}/", title=f"Guide {n}", is_page=True, active=False, is_section=False) for n in "ab"]
    nav = [
        SimpleNamespace(url="", title="This <week>", active=kind == "home", is_section=False),
        SimpleNamespace(url="units/", title="Units", active=False, is_section=False),
        SimpleNamespace(title="Guide", active=kind == "guide", is_section=True, children=children),
    ]
    title = 'A "title" </title><script>x</script>'
    page = SimpleNamespace(
        meta={"title": title, **({} if kind == "guide" else {"kind": kind}), **meta},
        content="<h2>Body</h2>",
        title="Guide page",
        toc=[],
        canonical_url="https://trivet.example/x/?a=1&b=2",
        parent=SimpleNamespace(title="Guide", children=children),
    )
    config = SimpleNamespace(
        site_name="Trivet <&>", site_description="", plugins={"material/search": 1}, theme=SimpleNamespace(palette=PALETTE, favicon="x")
    )
    values = {"page": None if template == "404.html" else page, "config": config, "nav": _Nav(nav)}
    return environment().get_template(template).render(**values)


class _Nav(list[Any]):
    """MkDocs' navigation: items and the home page."""

    def __init__(self, items: list[Any]) -> None:
        super().__init__(items)
        self.items = items
        self.homepage = SimpleNamespace(url="")


def test_text_of_a_unit_never_becomes_markup_in_the_head() -> None:
    """A title and a description with markup in them are escaped, in an environment that escapes nothing by itself."""
    html = framed(description='"><script>y</script>')
    assert "<script>x" not in html
    assert "<script>y" not in html
    assert "&lt;/title&gt;" in html
    assert "This &lt;week&gt;" in html
    assert "Trivet &lt;&amp;&gt;" in html


@pytest.mark.parametrize(
    ("kind", "here"), [("home", "This &lt;week&gt;"), ("unit", "Units"), ("lesson", "Units"), ("problem", "Units"), ("guide", "Guide")]
)
def test_the_place_one_is_in_is_marked(kind: str, here: str) -> None:
    """Exactly one place is current, and it is the one that holds this kind of page."""
    places = re.search(r'<nav class="places".*?</nav>', framed(kind), re.DOTALL)
    assert places
    assert re.findall(r'aria-current="\w+">(.*?)</a>', places[0]) == [here]


def test_students_get_no_way_to_answers() -> None:
    """A student page has neither places nor search nor a link home: only its cards and the light switch."""
    html = framed("student", lang="es")
    assert "<nav" not in html
    assert 'role="dialog"' not in html
    assert '<a class="brand"' not in html
    assert "<footer" not in html


def test_the_search_box_has_a_name() -> None:
    """The theme's dialog is named for a screen reader, in the page's language (axe: aria-dialog-name)."""
    assert 'role="dialog" aria-label="Search"' in framed("unit")


@pytest.mark.parametrize(("kind", "script"), [("home", "home.js"), ("lesson", "lesson.js"), ("unit", ""), ("student", ""), ("guide", "")])
def test_a_page_loads_the_script_it_needs(kind: str, script: str) -> None:
    """Every page has the frame's module, home and lesson sheets one more; both run before the first paint, so that nothing moves."""
    ours = re.findall(r'<script type="module" blocking="render" src="../assets/trivet/([a-z.]+)">', framed(kind))
    assert ours == (["frame.js", script] if script else ["frame.js"])


def test_the_theme_s_own_script_waits() -> None:
    """It is named as data, which no browser runs; scripts that a department adds to its site run as ever."""
    html = framed("unit")
    assert '<script type="text/plain" data-src=theme.js></script><script src=added.js></script>' in html
    assert "<script src=theme.js>" not in html


def test_each_choice_of_paper_is_a_button_with_a_name() -> None:
    """One button a choice, hidden until the script shows the one in force; its words are escaped (WCAG 2.2, 4.1.2)."""
    buttons = re.findall(r"<button .*?</button>", framed("unit"))
    assert [re.findall(r'aria-label="([^"]*)".*data-md-color-scheme="(\w+)".* hidden>', each) for each in buttons] == [
        [("Use &lt;light&gt;", "default")],
        [("Use dark", "slate")],
    ]


def test_prose_stands_in_the_reading_frame_and_ours_does_not() -> None:
    """Guide pages get the theme's type, the pages of their section and a heading; our pages are put as they are."""
    guide = framed("guide")
    assert guide.count("<h1>") == 1
    assert '<div class="md-typeset prose">' in guide
    assert re.findall(r'href="../guide/(\w)/"', guide) == ["a", "a", "b"]
    unit = framed("unit")
    assert "md-typeset" not in unit
    assert '<article class="sheet sheet-unit" id="page" data-md-component="content">' in unit
    assert unit.count("<article") == 1


def test_a_missing_page_leads_to_this_week() -> None:
    """404.html says so in plain words and has one way out."""
    html = framed(template="404.html")
    assert "<h1>This page is not here</h1>" in html
    assert '<a class="go" href="../.">Go to this week</a>' in html


def test_the_language_of_a_page_stands_on_its_root() -> None:
    """The root element says the language of the text (WCAG 2.2, 3.1.1); what is no language tag changes nothing."""
    assert with_language('<html lang="en" class="no-js">', "es") == '<html lang="es" class="no-js">'
    assert with_language('<html lang="en"><p lang="en">', 'x"><script>') == '<html lang="en"><p lang="en">'


def test_every_template_is_ours() -> None:
    """The theme folder overrides blocks and brings small drawings; it copies no partial of the theme."""
    names = {path.relative_to(THEME_FOLDER).as_posix() for path in Path(THEME_FOLDER).rglob("*.html")}
    assert names == {"main.html", "404.html", "trivet/mark.html", "trivet/paper.html", "trivet/search.html"}
