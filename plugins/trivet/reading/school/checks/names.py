"""Does a file that is shared carry names of students? What once stood in git stays in its history."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from trivet.model.places import Places
from trivet.model.problem import Place, Problem, Severity
from trivet.reading.where import NAMED

NAME_WORDS = frozenset({
    "name", "names", "first name", "last name", "firstname", "lastname", "full name", "fullname", "family name", "given name", "surname",
    "nickname", "preferred name", "student", "students", "student name", "student names", "studentname", "pupil", "pupils", "pupil name",
    "learner", "learners", "child", "children", "kid", "kids", "nombre", "nombres", "apellido", "apellidos", "roster",
})  # fmt: skip
"""What a column or a key with names in it is called, in small letters and with spaces for underscores and hyphens."""

TABLES = (".csv", ".tsv")
HEADER_BYTES = 4096
REMEDY = "take the names out before you commit: a list of students belongs in private/, and shared files know numbers only"


def is_name_word(text: str) -> bool:
    """Say whether a column or key of this title would hold names of people."""
    return " ".join(text.casefold().replace("_", " ").replace("-", " ").split()) in NAME_WORDS


def check_tables(root: Path) -> Iterator[Problem]:
    """Yield an error for each table under school/ or units/ whose first line has a column for names."""
    for top in ("school", "units"):
        for folder, folders, files in os.walk(root / top):
            folders.sort()
            for name in sorted(files):
                path = Path(folder, name)
                # A link is answered elsewhere, and what it points at is not looked into.
                if name.lower().endswith(TABLES) and not path.is_symlink():
                    yield from _table(path, root)


def _table(path: Path, root: Path) -> Iterator[Problem]:
    try:
        with path.open("rb") as file:
            first = _first_line(file.read(HEADER_BYTES))
    except OSError:  # what may not be read is not published either
        return
    separator = max(",;\t", key=first.count)
    column = 1
    for title in first.rstrip("\r\n").split(separator):
        word = title.strip().strip("\"'").strip()
        if is_name_word(word):
            place = Place(path.relative_to(root).as_posix(), 1, column, max(1, len(title)))
            remedy = f"{REMEDY}; where it names things, call the column after them (solid, planet)"
            yield Problem("student-names", Severity.ERROR, place, f'a column is called "{word}"', remedy)
        column += len(title) + 1


def _first_line(data: bytes) -> str:
    """The first line of a table, also where a spreadsheet saved it as UTF-16: names must not slip by in another encoding."""
    wide = "utf-16" if data[:2] in (b"\xff\xfe", b"\xfe\xff") else "utf-16-le" if data[1:2] == b"\x00" else "utf-16-be"
    encoding = wide if b"\x00" in data[:2] or wide == "utf-16" else "utf-8-sig"
    return data.decode(encoding, errors="replace").replace("\r", "\n").partition("\n")[0]


def check_keys(value: Any, places: Places, path: tuple[str | int, ...] = (), *, but: tuple[str, ...] = ()) -> Iterator[Problem]:
    """Yield an error for each key, however deep, that would hold names. `but` are keys that are allowed (`name` of a class).

    Keys that the department chose itself (the id of a teacher, a class, a room) are let be: a teacher may be called Child.
    """
    chosen = bool(path) and path[-1] in NAMED
    children = value.items() if isinstance(value, Mapping) else enumerate(value) if isinstance(value, list) else ()
    for key, child in children:
        if isinstance(key, str) and not chosen and key not in but and is_name_word(key):
            yield Problem("student-names", Severity.ERROR, places.key(*path, key), f'a key is called "{key}"', REMEDY)
        else:
            yield from check_keys(child, places, (*path, key), but=but)
