"""Copies of the demo project, for tests that change it."""

from __future__ import annotations

import shutil
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent


def copy_project(to: Path, *, private: bool = False) -> Path:
    """Copy what a site is built from (and the example rosters, if asked) to `to`, and return it."""
    to.mkdir(parents=True, exist_ok=True)
    shutil.copy(ROOT / "mkdocs.yml", to)
    for folder in ("units", "school", *(("private",) if private else ())):
        shutil.copytree(ROOT / folder, to / folder)
    return to
