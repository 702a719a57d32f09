"""How many students sit in each station group and each team, by the size of the class alone."""

from __future__ import annotations

LETTERS = ("A", "B", "C")
"""The three station groups."""

LEAST = 3
"""A team of two or one stands only where its whole station group is no larger."""

SIZES_TO_ASK_FOR = (3, 4, 5)
"""What a department may ask for as its team size."""


def group_sizes(students: int) -> tuple[int, int, int]:
    """Return the sizes of the three station groups: as even as can be, the larger ones first; a group may be empty under 3 students.

    Raises ValueError for fewer than 0 students.
    """
    if students < 0:
        raise ValueError(f"students must be 0 or more, not {students}")
    least, larger = divmod(students, 3)
    first, second, third = (least + (place < larger) for place in range(3))
    return (first, second, third)


def team_sizes(group: int, wanted: int = 4) -> tuple[int, ...]:
    """Return the sizes of the teams of one station group of `group` students, the larger teams first.

    As few teams as hold at most `wanted` each, but none under three: a team of three is preferred to one of five
    (Lou et al. 1996 on team size, as reported by Marzano 2001, from memory). So a five stands only where `wanted` is 5, or where a
    group of five leaves no other way; one or two students are one team. () for an empty group.
    Raises ValueError where `group` is negative or `wanted` is not 3, 4 or 5.
    """
    if group < 0:
        raise ValueError(f"a station group must have 0 or more students, not {group}")
    if wanted not in SIZES_TO_ASK_FOR:
        raise ValueError(f"the team size must be 3, 4 or 5, not {wanted}")
    if group == 0:
        return ()
    teams = max(1, min(-(-group // wanted), group // LEAST))
    least, larger = divmod(group, teams)
    return tuple(least + (place < larger) for place in range(teams))


def class_shape(students: int, wanted: int = 4) -> tuple[tuple[int, ...], tuple[int, ...], tuple[int, ...]]:
    """Return the team sizes of the three station groups of a class, such as ((4, 4, 3), (4, 3, 3), (4, 3, 3)) for 31."""
    first, second, third = (team_sizes(group, wanted) for group in group_sizes(students))
    return (first, second, third)
