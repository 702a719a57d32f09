"""Which project a command works on."""

from __future__ import annotations

from pathlib import Path

import click

MARK = Path("school") / "school.yml"


def find_root(start: Path) -> Path | None:
    """Return the nearest folder at or above `start` that holds school/school.yml, or None."""
    return next((folder for folder in (start, *start.parents) if (folder / MARK).is_file()), None)


def root_of(context: click.Context) -> Path:
    """Return the project of this call; exits with 2 and a remedy where there is none."""
    if not isinstance(context.obj, Path):
        raise click.UsageError("no school/school.yml in this folder or above it; write trivet --root FOLDER, or go to the project's folder")
    return context.obj
