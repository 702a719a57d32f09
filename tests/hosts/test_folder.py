"""Pages as files in a folder."""

from __future__ import annotations

from pathlib import Path

from trivet.hosts.folder import page_file, write_site
from trivet.model.page import Asset, Page, Site
from trivet.reading.strict import load

PAGE = Page("units/a/", {"title": 'He said "so": yes', "lang": "en"}, "<div>\n<p>One</p>\n</div>")


def test_a_page_is_front_matter_and_one_block() -> None:
    """Front matter survives any text in a title; the body follows unbroken."""
    text = page_file(PAGE)
    head, body = text.removeprefix("---\n").split("\n---\n", 1)
    assert load(head, "x").value == {"title": 'He said "so": yes', "lang": "en"}
    assert body.strip() == PAGE.body


def test_everything_is_written_where_its_address_says(tmp_path: Path) -> None:
    """A page becomes index.md below its address; an asset keeps its path; the count is of both."""
    assert write_site(Site((PAGE, Page("", {"title": "Home"}, "<div></div>")), (Asset("data/x.json", b"{}"),)), tmp_path) == 3
    assert sorted(str(p.relative_to(tmp_path)) for p in tmp_path.rglob("*.*")) == ["data/x.json", "index.md", "units/a/index.md"]
