"""The year's skeleton: weeks of teams for the sizes of a class, in which no two slots meet twice.

A design for a few more students is cut down: the slots left empty are chosen so that no team loses two of them in one round, or
that round is dropped. Who sits in which slot follows the class numbers alone, never levels: a year of published groups shows
which slots never meet.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from functools import cache

from trivet.planning.grouping.designs import STARTERS, Round, full, plane
from trivet.planning.grouping.fields import SIZES

LARGEST_TEAM = 6


@cache
def skeletons(sizes: tuple[int, ...]) -> tuple[tuple[Round, ...], ...]:
    """Return the known weeks for teams of these sizes, the longest first; each round parts slots 0, 1, … into such teams."""
    students, teams, largest = sum(sizes), len(sizes), max(sizes, default=0)
    found = []
    for size in range(largest, LARGEST_TEAM + 1):
        if teams in SIZES and 1 < size <= teams:
            found.append(_cut(plane(teams, size), teams * size, students, sizes))
        if (teams * size, size) in STARTERS:
            found.append(_cut(full(teams * size, size), teams * size, students, sizes))
    return tuple(sorted((weeks for weeks in found if len(weeks) > 1), key=lambda weeks: -len(weeks)))


def _cut(weeks: tuple[Round, ...], slots: int, students: int, sizes: tuple[int, ...]) -> tuple[Round, ...]:
    """Leave slots empty until `students` are left, and keep the rounds whose teams have the `sizes`."""
    surplus = slots - students
    if surplus < 0:
        return ()
    ways = [_emptied(weeks, slots, surplus, ())]
    if surplus >= len(weeks[0][0]):
        # A whole team of the first round meets in no other one, so leaving it empty costs that round alone.
        ways.append(_emptied(weeks, slots, surplus, weeks[0][0]))
    return max((_kept(weeks, empty, sizes) for empty in ways), key=len)


def _emptied(weeks: tuple[Round, ...], slots: int, surplus: int, first: tuple[int, ...]) -> set[int]:
    """Return slots to leave empty: `first`, then one after another the one that meets those already empty in the fewest rounds."""
    team_of = [{slot: number for number, team in enumerate(each) for slot in team} for each in weeks]
    empty = set(first)
    while len(empty) < surplus:
        spoiled = [{where[slot] for slot in empty} for where in team_of]

        def meets(slot: int, spoiled: Sequence[set[int]] = spoiled) -> int:
            return sum(where[slot] in teams for where, teams in zip(team_of, spoiled, strict=True))

        empty.add(min((slot for slot in range(slots) if slot not in empty), key=lambda slot: (meets(slot), -slot)))
    return empty


def _kept(weeks: tuple[Round, ...], empty: set[int], sizes: tuple[int, ...]) -> tuple[Round, ...]:
    left = sorted({slot for team in weeks[0] for slot in team} - empty)
    name = {slot: number for number, slot in enumerate(left)}
    wanted = Counter(sizes)
    cut = [tuple(tuple(sorted(name[slot] for slot in team if slot in name)) for team in each) for each in weeks]
    return tuple(each for each in cut if Counter(len(team) for team in each) == wanted)
