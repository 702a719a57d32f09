"""The files of a unit folder that the site publishes."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from tests.support.department import tiny_unit
from trivet.hosts.unit_files import unit_assets


def test_files_are_published_as_they_stand_and_pages_with_the_policy(tmp_path: Path) -> None:
    """Markdown is left out, whatever folder it is in; a page gets one policy, every other file keeps its bytes."""
    files = {
        "data/a.csv": b"\xef\xbb\xbfa,b\r\n",
        "sim/index.html": b"<!doctype html><html><head><title>x</title></head><body></body></html>",
        "sim/more.htm": b"<!doctype html><html><head></head></html>",
        "sim/a.js": b"x()",
        "story.md": b"Once.",
        "notes/deep.md": b"No.",
        "index.es.md": b"---\n---\n",
    }
    unit = replace(tiny_unit(), files=tuple(files))
    for name, content in files.items():
        path = tmp_path / "units" / unit.slug / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    found = {asset.path.removeprefix(f"units/{unit.slug}/"): asset.content for asset in unit_assets(tmp_path, unit)}
    assert set(found) == {"data/a.csv", "sim/index.html", "sim/more.htm", "sim/a.js"}
    assert {name: found[name] for name in ("data/a.csv", "sim/a.js")} == {name: files[name] for name in ("data/a.csv", "sim/a.js")}
    for name in ("sim/index.html", "sim/more.htm"):
        assert found[name].count(b"Content-Security-Policy") == 1
