"""A kept grouping dealt in order of seat, for tests that need groups and not a search."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from itertools import zip_longest
from typing import Any

from trivet.model.lock import ROLE_IDS, Lock, StationGroup
from trivet.model.school import SchoolClass


def parts(count: int, into: int) -> list[int]:
    """Split `count` into `into` sizes that differ by at most one, larger first."""
    return [count // into + (i < count % into) for i in range(into)]


def tiny_group(letter: str, students: tuple[str, ...]) -> StationGroup:
    """Return teams of three and four (one team below six) and pairs across teams."""
    sizes = parts(len(students), max(1, -(-len(students) // 4))) if students else []
    teams: dict[str, dict[str, tuple[str, ...]]] = {}
    rest = list(students)
    for number, size in enumerate(sizes, start=1):
        members, rest = rest[:size], rest[size:]
        jobs = [*ROLE_IDS[:size], *[""] * (size - len(ROLE_IDS))]
        teams[f"{letter}{number}"] = {m: (job,) if job else () for m, job in zip(members, jobs, strict=True)}
    across = [s for row in zip_longest(*(list(t) for t in teams.values())) for s in row if s is not None]
    pairs = [tuple(sorted(across[i : i + 2])) for i in range(0, len(across) - 1, 2)]
    if len(across) % 2:
        last = pairs.pop() if pairs else ()
        pairs.append(tuple(sorted((*last, across[-1]))))
    return StationGroup(teams, tuple(sorted(pairs)))


def tiny_lock(school_class: SchoolClass, unit: str = "float-or-sink", **changes: Any) -> Lock:
    """Return a lock that deals the class's seats in order over A, B, C; keywords change its fields."""
    numbers = [school_class.number(seat) for seat in school_class.seats]
    groups = {}
    for letter, size in zip("ABC", parts(len(numbers), 3), strict=True):
        groups[letter], numbers = tiny_group(letter, tuple(numbers[:size])), numbers[size:]
    lock = Lock(
        unit=unit,
        class_id=school_class.id,
        drawn_on=date(2026, 11, 23),
        engine="1",
        drawn_from="numbers",
        counted=(),
        inputs="sha256 " + "0" * 64,
        seal="",
        groups=groups,
    )
    return replace(lock, **changes)
