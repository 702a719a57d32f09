"""A unit folder in a temporary place, for tests that change one thing in it."""

from __future__ import annotations

import shutil
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from trivet.model.places import Places
from trivet.model.problem import Problem
from trivet.reading.draft import Draft
from trivet.reading.unit import ReadUnit, read_unit

PLAIN = Path(__file__).resolve().parents[1] / "examples" / "good" / "plain"
SLUG = "rolling-carts"
UNITS = ("float-or-sink", "hands", "rolling-carts")


def unit_folder(root: Path, *changes: tuple[str, str], slug: str = SLUG) -> Path:
    """Copy a unit of the plain department below `root`, with texts of its index.md replaced; each text must be there."""
    folder = root / "units" / slug
    shutil.copytree(PLAIN / "units" / slug, folder, dirs_exist_ok=True)
    index = folder / "index.md"
    text = index.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    index.write_text(text, encoding="utf-8")
    return folder


def read(root: Path, *changes: tuple[str, str], slug: str = SLUG, simulations: tuple[str, ...] = ("float-or-sink",)) -> ReadUnit:
    """Read a unit with these changes; the department knows both plain units."""
    folder = unit_folder(root, *changes, slug=slug)
    return read_unit(folder, slug, root, simulations, ("float-or-sink", "rolling-carts"))


def codes(read_unit: ReadUnit) -> list[str]:
    """The codes of its problems, in the order of the file."""
    return [problem.code for problem in read_unit.problems]


def only(read_unit: ReadUnit, code: str) -> Problem:
    """The one problem with this code."""
    (found,) = [problem for problem in read_unit.problems if problem.code == code]
    return found


def draft_of(data: Mapping[str, Any], slug: str = SLUG, files: tuple[str, ...] = ()) -> Draft:
    """A unit file with this data and no lines, in a department of three units."""
    file = f"units/{slug}/index.md"
    return Draft(slug, file, data, Places(file), (), files=files, units=UNITS)


def answers(problems: Iterable[Problem]) -> list[tuple[str, str]]:
    """Codes and remedies."""
    return [(problem.code, problem.remedy) for problem in problems]
