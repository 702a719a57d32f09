"""Where pages stand, and how one page points at another. Every address of the site is made here."""

from __future__ import annotations

HOME = ""
UNITS = "units/"
PREP = "prep/"
YEAR = "year/"
GUIDE = "guide/"
ASSETS = "assets/trivet/"


def unit_address(slug: str) -> str:
    """The page of a unit."""
    return f"units/{slug}/"


def student_address(slug: str, language: str = "") -> str:
    """The student cards of a unit, in English or in another language."""
    return f"units/{slug}/student/{language + '/' if language else ''}"


def lesson_address(class_id: str, slug: str) -> str:
    """The lesson sheet of a class's run of a unit."""
    return f"lesson/{class_id}/{slug}/"


def whom_address(class_id: str) -> str:
    """Who has worked with whom in a class."""
    return f"whom/{class_id}/"


def calendar_address(class_id: str) -> str:
    """The calendar file of a class."""
    return f"calendar/{class_id}.ics"


def relative(source: str, target: str) -> str:
    """Return how the page at `source` points at `target` (both from the site's root, pages with a trailing slash; `#anchor` kept).

    >>> relative("units/float-or-sink/", "lesson/p1/float-or-sink/#2026-11-30")
    '../../lesson/p1/float-or-sink/#2026-11-30'
    """
    path, mark, anchor = target.partition("#")
    if path == source and mark:
        return f"#{anchor}"
    here, there = source.split("/")[:-1], path.split("/")
    shared = 0
    while shared < min(len(here), len(there) - 1) and here[shared] == there[shared]:
        shared += 1
    found = "/".join([".."] * (len(here) - shared) + there[shared:])
    return f"{found or './'}{mark}{anchor}"
