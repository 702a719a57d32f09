"""Pages and assets as files in a folder, for any generator of sites to publish."""

from __future__ import annotations

import json
from pathlib import Path

from trivet.model.page import Page, Site


def page_file(page: Page) -> str:
    """Return a page as a Markdown file: front matter, then its HTML as one block.

    The body has no blank line, so that a CommonMark reader carries it through as one HTML block.
    """
    fields = "".join(f"{key}: {json.dumps(value, ensure_ascii=False)}\n" for key, value in page.meta.items())
    return f"---\n{fields}---\n\n{page.body}\n"


def write_site(site: Site, folder: Path) -> int:
    """Write every page (as `…/index.md`) and asset below `folder`; return how many files."""
    for page in site.pages:
        _write(folder / page.path / "index.md", page_file(page).encode("utf-8"))
    for asset in site.assets:
        _write(folder / asset.path, asset.content)
    return len(site.pages) + len(site.assets)


def _write(path: Path, content: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(content)
