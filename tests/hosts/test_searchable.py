"""What a search finds: the words of unit pages and the guide, and of no page that is left out."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from trivet.hosts.searchable import searchable


@pytest.mark.parametrize(
    ("body", "found"),
    [
        ('<div class="sec"><h2 id="ask" class="x">Ask <b>1</b>st</h2></div>', '<h2 id="ask">Ask 1st</h2>'),
        ('<p class="note">a<em>b</em>c</p>', "<p>abc</p>"),
        ("<div>one</div><div>two</div>", "one two"),
        ('<p>before</p><svg viewBox="0 0 1 1"><text>99</text></svg><p>after</p>', "<p>before</p> <p>after</p>"),
        ("<ul>\n<li>a &lt; b</li>\n</ul>", "<li>a &lt; b</li>"),
    ],
)
def test_text_stays_and_layout_goes(body: str, found: str) -> None:
    """Words stay apart where elements set them apart, ids of headings stay, drawings and all other markup go."""
    assert searchable(body).strip() == found


def test_the_index_holds_units_and_the_guide_alone(built_site: Path) -> None:
    """Lesson sheets, student cards and the like are honored as left out of the search; every unit page and guide page is in."""
    docs = json.loads((built_site / "search" / "search_index.json").read_text(encoding="utf-8"))["docs"]
    pages = {entry["location"].partition("#")[0] for entry in docs}
    units = {p.parent.relative_to(built_site).as_posix() + "/" for p in built_site.glob("units/*/index.html")}
    guide = {p.parent.relative_to(built_site).as_posix() + "/" for p in built_site.glob("guide/**/index.html")}
    assert len(units) > 3 and len(guide) > 5
    assert pages == units | guide


def test_a_page_that_is_searched_is_shown_whole(built_site: Path) -> None:
    """The page itself keeps its drawings and classes; only the index goes without."""
    page = (built_site / "units" / "float-or-sink" / "index.html").read_text(encoding="utf-8")
    article = re.search(r"<article\b.*</article>", page, re.DOTALL)
    assert article is not None and 'class="sec"' in article[0] and "<svg" in article[0]
    docs = json.loads((built_site / "search" / "search_index.json").read_text(encoding="utf-8"))["docs"]
    (text,) = [entry["text"] for entry in docs if entry["location"] == "units/float-or-sink/"]
    assert "Find what decides whether a block floats." in text and "class=" not in text
