"""Does school/ hold files that nothing reads? A misspelled one would be missed without a word."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from pathlib import Path

from trivet.model.problem import Place, Problem, Severity

KINDS = ("school", "bells", "calendar", "classes", "rooms", "roles", "expectations", "inventory", "runs")
"""The files of school/, without `.yml`."""

FOLDERS = ("groups",)
READABLE = (".md", ".txt")
"""Notes that people leave for each other are let be."""


def check_folder(school: Path, calendars: Collection[str] | None = ()) -> Iterator[Problem]:
    """Yield an error for each file or folder of school/ that nothing reads.

    `calendars` are the files that calendar.yml names, None where it can't be read.
    """
    if not school.is_dir():
        return
    for entry in sorted(school.iterdir()):
        name = entry.name
        if name.startswith(".") or entry.suffix.lower() in READABLE or entry.is_symlink():
            continue
        if name.endswith(".ics") and (calendars is None or name in calendars):
            continue
        # A folder that is called like a file is answered where the file is read.
        if (name.endswith(".yml") and name.removesuffix(".yml") in KINDS) or (name in FOLDERS and entry.is_dir()):
            continue
        yield Problem("unknown-file", Severity.ERROR, Place(f"school/{name}"), f'nothing reads "{name}" here', _remedy(entry))


def _remedy(entry: Path) -> str:
    from trivet.reading.near import nearest  # noqa: PLC0415 - only a misspelled file pays for the comparison

    if entry.is_dir():
        near = nearest(entry.name, FOLDERS)
        return f"did you mean {near}/?" if near else "move it out of school/"
    if entry.suffix.lower() == ".ics":
        return f"write `files:` and under it `- {entry.name}` in calendar.yml, or move it out of school/"
    if entry.suffix.lower() == ".csv":
        return "move a list of students to private/, which stays on this machine; anything else out of school/"
    near = nearest(entry.stem, KINDS)
    return f"did you mean {near}.yml?" if near else f"move it out of school/; the files read here are {', '.join(KINDS)} (.yml)"
