"""Where each value of a file stands, so that a check made later can still point at it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from trivet.model.problem import Place

Path = tuple[str | int, ...]
"""Keys as spoken in the file ("hands-on", "done when") and list positions from 0."""


@dataclass(frozen=True, slots=True)
class Places:
    """The place of each value (`at`) and of each key (`keys`) of one file."""

    file: str
    at: Mapping[Path, Place] = field(default_factory=dict)
    keys: Mapping[Path, Place] = field(default_factory=dict)

    def find(self, *path: str | int) -> Place:
        """Return the place of the value at `path`, else of the nearest thing above it, else 1:1."""
        for end in range(len(path), 0, -1):
            if path[:end] in self.at:
                return self.at[path[:end]]
        return Place(self.file)

    def key(self, *path: str | int) -> Place:
        """Return the place of the key at `path`, else what `find` says."""
        return self.keys.get(path) or self.find(*path)
