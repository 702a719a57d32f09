"""Which station group is A, and which team A1."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from trivet.planning.team_sizes import LETTERS

Partition = tuple[tuple[tuple[int, ...], ...], ...]
"""Station groups of teams of seats, all in order of the lowest seat inside; empty groups last."""


def in_seat_order(groups: Iterable[Iterable[Sequence[int]]]) -> Partition:
    """Return the partition with everything in order of the lowest seat inside.

    Letters and team numbers then say nothing beyond who is together: no order is left for a drawn one to leak through.
    """
    ordered = [tuple(sorted(tuple(sorted(team)) for team in group if team)) for group in groups]
    return tuple(sorted((group for group in ordered if group), key=lambda group: group[0])) + tuple(() for group in ordered if not group)


def lettered(partition: Partition) -> dict[str, dict[str, tuple[int, ...]]]:
    """Return letter (A holds the lowest seat) to team code (A1 holds the lowest of A) to seats."""
    return {
        letter: {f"{letter}{number}": team for number, team in enumerate(group, start=1)}
        for letter, group in zip(LETTERS, partition, strict=True)
    }
