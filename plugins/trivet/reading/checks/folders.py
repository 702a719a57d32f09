"""Is everything under units/ and school/ where and what it should be?"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from pathlib import Path

from trivet.model.problem import Place, Problem, Severity

SLUG = re.compile(r"[a-z][a-z0-9-]{1,39}")
GUIDE = "guide"
TAKEN = {
    GUIDE: "the pages for new teachers",
    "prep": "the page for whoever gets the materials ready",
    "year": "the page of the school year",
}
"""Names that pages of the site have, so that no unit may."""
RESERVED = ("index.html", "index.htm", "student", "print", "student.html", "print.html")
"""Names inside a unit folder at which pages of the site stand."""


def slug_fault(slug: str) -> tuple[str, str] | None:
    """Return what is wrong with the name of a unit folder and what to call it, None where it is right."""
    if slug in TAKEN:
        return f"{slug} is the name of {TAKEN[slug]}", "choose another name"
    if SLUG.fullmatch(slug):
        return None
    better = re.sub(r"[^a-z0-9]+", "-", slug.lower()).strip("-").lstrip("0123456789-")[:40].rstrip("-")
    what = f'"{slug}" can\'t be part of a web address: a unit is called with 2 to 40 small letters, digits and hyphens, a letter first'
    return what, f"call it {better}" if SLUG.fullmatch(better) and better not in TAKEN else "call it like float-or-sink"


def files_of(folder: Path) -> tuple[str, ...]:
    """Return the paths of all files of a unit folder but its index.md, ascending; links and hidden files are left out."""
    found = []
    for top, folders, names in os.walk(folder):
        folders[:] = sorted(name for name in folders if not name.startswith("."))
        for name in names:
            path = Path(top, name)
            if not name.startswith(".") and not path.is_symlink() and path.is_file():
                found.append(path.relative_to(folder).as_posix())
    return tuple(sorted(name for name in found if name != "index.md"))


def check_links(root: Path) -> Iterator[Problem]:
    """Yield an error for each symbolic link under units/ and school/: it could publish a file from anywhere."""
    for base in ("units", "school"):
        if (root / base).is_symlink():
            yield _link(base)
            continue
        for top, folders, names in os.walk(root / base):
            for name in sorted([*folders, *names]):
                path = Path(top, name)
                if path.is_symlink():
                    yield _link(path.relative_to(root).as_posix())


def _link(file: str) -> Problem:
    return Problem(
        "symbolic-link",
        Severity.ERROR,
        Place(file),
        "this is a link to another place, and links are not followed",
        "copy the file itself here",
    )


def check_unit_folder(slug: str, files: tuple[str, ...]) -> Iterator[Problem]:
    """Yield the problems of a unit folder's name and of names inside it."""
    file = f"units/{slug}/index.md"
    if fault := slug_fault(slug):
        yield Problem("unit-name", Severity.ERROR, Place(file), *fault)
    taken = {name.partition("/")[0] for name in files}
    for name in RESERVED:
        if name in taken:
            what = f"{name} is the address of a page of the site"
            yield Problem("name-taken", Severity.ERROR, Place(f"units/{slug}/{name}"), what, "give it another name")


def check_guide(file: str, text: str) -> Iterator[Problem]:
    """Yield an error for a page of the guide that is written like a unit: no unit may take its address."""
    if file == f"units/{GUIDE}/index.md" and re.search(r"^stations:", text, re.MULTILINE):
        yield Problem("unit-name", Severity.ERROR, Place(file), *(slug_fault(GUIDE) or ("", "")))
