"""Which units are there? Their content is read elsewhere."""

from __future__ import annotations

from pathlib import Path

GUIDE = "guide"
"""The folder of pages for new teachers: never a unit."""


def unit_slugs(root: Path) -> tuple[str, ...]:
    """Return the folder names under units/ that hold an index.md, ascending."""
    top = root / "units"
    if not top.is_dir():
        return ()
    return tuple(sorted(folder.name for folder in top.iterdir() if folder.name != GUIDE and (folder / "index.md").is_file()))
