"""The other files of a unit folder, as the site publishes them."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from trivet.hosts.policy import with_static_policy
from trivet.model.page import Asset
from trivet.model.unit import Unit

_NOT_PUBLISHED = (".md",)


def unit_assets(root: Path, unit: Unit) -> Iterator[Asset]:
    """Yield each published file of `unit`: web pages with our content-security policy, all else as it stands.

    Markdown files (the unit, its translations, its reading) are on the unit's pages already.
    """
    folder = root / "units" / unit.slug
    for name in unit.files:
        if name.endswith(_NOT_PUBLISHED):
            continue
        content = (folder / name).read_bytes()
        if name.endswith((".html", ".htm")):
            content = with_static_policy(content.decode("utf-8")).encode("utf-8")
        yield Asset(f"units/{unit.slug}/{name}", content)
