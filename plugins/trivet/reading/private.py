"""Where the private folder of a department is. Only commands may ask: what is published never hangs on it."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from trivet.model.problem import Place, Problem, Severity
from trivet.model.school import Settings
from trivet.reading.source import read_source
from trivet.reading.strict import load

LOCAL = "trivet.local.yml"
"""An ignored file of one machine; `folder:` in it names a folder on the district's own drive."""


def private_folder(root: Path, settings: Settings) -> Path | None:
    """Return the folder that `trivet.local.yml` names, else private/ if it holds a roster, else private/example/ for a demo.

    None where there is none of them, and where `trivet.local.yml` can't be followed: `check_local` says why.
    """
    named, problems = _named(root)
    if problems:
        return None
    if named is not None:
        return named
    own = root / "private"
    if any(own.glob("roster-*.csv")):
        return own
    example = own / "example"
    return example if settings.demo and example.is_dir() else None


def check_local(root: Path) -> tuple[Problem, ...]:
    """Return what is wrong with `trivet.local.yml`; () where there is none."""
    return _named(root)[1]


def _named(root: Path) -> tuple[Path | None, tuple[Problem, ...]]:
    path = root / LOCAL
    if not path.exists() and not path.is_symlink():
        return None, ()
    source = read_source(path, LOCAL)
    if not source.readable:
        return None, source.problems
    loaded = load(source.text, LOCAL)
    if loaded.problems:
        return None, loaded.problems
    said: Any = loaded.value.get("folder") if isinstance(loaded.value, dict) else None
    place = loaded.places.find("folder")
    if not isinstance(said, str) or not said.strip():
        return None, (
            _problem("empty-value", place, "no private folder is named here", "write folder: and where it is, or delete the file"),
        )
    folder = Path(said.strip()).expanduser()
    folder = folder if folder.is_absolute() else root / folder
    return _usable(folder.resolve(), root.resolve(), place)


def _usable(folder: Path, root: Path, place: Place) -> tuple[Path | None, tuple[Problem, ...]]:
    if not folder.is_dir():
        return None, (_problem("no-such-folder", place, "there is no such folder", "write folder: and one that is there, or make it"),)
    if folder == root or (folder.is_relative_to(root) and not folder.is_relative_to(root / "private")):
        remedy = "write folder: private, or name one outside the project"
        return None, (_problem("private-in-shared", place, "this folder is part of what is shared", remedy),)
    return folder, ()


def _problem(code: str, place: Place, what: str, remedy: str) -> Problem:
    return Problem(code, Severity.ERROR, place, what, remedy, "folder")
