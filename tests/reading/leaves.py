"""Take the files of the demo apart into their keys, and change every one of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from trivet.model.places import Path as Keys
from trivet.model.places import Places
from trivet.reading.front import read_front
from trivet.reading.strict import load


@dataclass(frozen=True, slots=True)
class Leaf:
    """A key of a file with the lines of its block, counted from 0; `scalar` where its value stands on its own line."""

    path: Keys
    first: int
    after: int
    column: int
    scalar: bool


@dataclass(frozen=True, slots=True)
class Change:
    """A changed text, and the line (from 1) at which each changed key now stands."""

    text: str
    lines: dict[Keys, int]


def places_of(text: str, file: str) -> Places:
    """The places of the keys of a unit file or a school file."""
    return read_front(text, file).places if file.endswith(".md") else load(text, file).places


def leaves(text: str, file: str) -> list[Leaf]:
    """Every key of the file, in order."""
    lines = text.split("\n")
    found = []
    for path, place in places_of(text, file).keys.items():
        first, column = place.line - 1, place.column - 1
        after = first + 1
        while after < len(lines) and _below(lines[after], column):
            after += 1
        while after > first + 1 and not lines[after - 1].strip():
            after -= 1
        scalar = lines[first][column:].partition(":")[2].partition("  #")[0].strip() != ""
        found.append(Leaf(path, first, after, column, scalar))
    return sorted(found, key=lambda leaf: leaf.first)


def batches(found: list[Leaf]) -> Iterator[list[Leaf]]:
    """Leaves of one depth at a time, in two halves, so that no changed block lies inside another and neighbors stay whole."""
    for depth in sorted({len(leaf.path) for leaf in found}):
        for half in (0, 1):
            batch = [leaf for leaf in found if len(leaf.path) == depth][half::2]
            if batch:
                yield batch


def misspelled(text: str, batch: list[Leaf]) -> Change:
    """Each key with an x at its end."""
    lines = text.split("\n")
    for leaf in batch:
        key = str(leaf.path[-1])
        line = lines[leaf.first]
        at = line.index(key, leaf.column) + len(key)
        lines[leaf.first] = line[:at] + "x" + line[at:]
    return Change("\n".join(lines), {leaf.path: leaf.first + 1 for leaf in batch})


def retyped(text: str, batch: list[Leaf]) -> Change:
    """A number for a text, a text for a number, and a text for whatever stands on lines of its own."""
    lines = text.split("\n")
    for leaf in batch:
        head, _, value = lines[leaf.first][leaf.column :].partition(":")
        value = value.partition("  #")[0].strip()
        other = "many" if not leaf.scalar or _is_number(value) or value in ("true", "false") else "2026.5"
        lines[leaf.first] = f"{lines[leaf.first][: leaf.column]}{head}: {other}"
        for below in range(leaf.first + 1, leaf.after):
            lines[below] = ""
    return Change("\n".join(lines), {leaf.path: leaf.first + 1 for leaf in batch})


def deleted(text: str, batch: list[Leaf]) -> Change:
    """Each key taken out with all that stands under it; the dash of a list item goes to the next key of the item."""
    lines = text.split("\n")
    kept: dict[Keys, int] = {}
    for leaf in batch:
        dash = lines[leaf.first][: leaf.column].rstrip()
        if dash.strip():
            follows = leaf.after
            if follows >= len(lines) or len(lines[follows]) - len(lines[follows].lstrip()) != leaf.column:
                continue
            lines[follows] = dash + lines[follows][len(dash) :]
        for at in range(leaf.first, leaf.after):
            lines[at] = ""
        kept[leaf.path] = leaf.first + 1
    return Change("\n".join(lines), kept)


def doubled(text: str, batch: list[Leaf]) -> Change:
    """Each key written a second time below the first."""
    lines = text.split("\n")
    made: list[str] = []
    at = 0
    where = {}
    for leaf in batch:
        made += lines[at : leaf.after]
        where[leaf.path] = len(made) + 1
        block = lines[leaf.first : leaf.after]
        made += [" " * leaf.column + block[0][leaf.column :], *block[1:]]
        at = leaf.after
    return Change("\n".join([*made, *lines[at:]]), where)


def without_places(path: Keys) -> tuple[str, ...]:
    """A path without positions in lists, so that it stands for all leaves of its kind."""
    return tuple(step for step in path if isinstance(step, str))


def demo_files(root: Path) -> list[str]:
    """The names of the demo's files with keys."""
    found = [*(root / "units").glob("*/index.md"), *(root / "units").glob("*/index.*.md"), *(root / "school").rglob("*.yml")]
    return sorted(path.relative_to(root).as_posix() for path in found if path.parent.name != "guide")


def _below(line: str, column: int) -> bool:
    indent = len(line) - len(line.lstrip(" "))
    return not line.strip() or indent > column


def _is_number(value: str) -> bool:
    return value.replace(".", "", 1).isdigit()
