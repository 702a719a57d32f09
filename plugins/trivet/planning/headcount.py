"""How many students, teams and pairs each station group has: from kept groups, or by the size of the class."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from trivet.model.lock import Groups
from trivet.model.school import SchoolClass
from trivet.planning.team_sizes import LETTERS, class_shape


@dataclass(frozen=True, slots=True)
class GroupCount:
    """One station group in numbers."""

    students: int
    teams: int
    pairs: int


@dataclass(frozen=True, slots=True)
class Headcount:
    """The three station groups in numbers, by letter."""

    groups: Mapping[str, GroupCount]

    @property
    def students(self) -> int:
        """Students of the class."""
        return sum(group.students for group in self.groups.values())

    @property
    def teams(self) -> int:
        """Teams of the class."""
        return sum(group.teams for group in self.groups.values())

    @property
    def teams_to_ask(self) -> int:
        """Teams the teacher may have to spot-check in a rotating round: all but those of the group with fewest."""
        return self.teams - min(group.teams for group in self.groups.values())


def pairs_in(students: int) -> int:
    """Return how many pairs a group makes: a leftover joins one, and one student works alone."""
    return max(students // 2, min(students, 1))


def by_size(students: int, team_size: int) -> Headcount:
    """Count the groups of a class whose groups are not public, by its size alone."""
    shape = class_shape(students, team_size)
    return Headcount(
        {letter: GroupCount(sum(teams), len(teams), pairs_in(sum(teams))) for letter, teams in zip(LETTERS, shape, strict=True)}
    )


def by_groups(groups: Groups) -> Headcount:
    """Count kept groups."""
    counted = {letter: GroupCount(len(group.students), len(group.teams), len(group.pairs)) for letter, group in groups.items()}
    return Headcount({letter: counted.get(letter, GroupCount(0, 0, 0)) for letter in LETTERS})


def seats_on(school_class: SchoolClass, day: date) -> tuple[int, ...]:
    """Return the seats in use on a day: a late seat counts from its first day."""
    later = {late.seat for late in school_class.late if late.first > day}
    return tuple(seat for seat in school_class.seats if seat not in later)
