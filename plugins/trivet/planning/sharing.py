"""How students share the devices that there are, where there are fewer than wanted: trios, else halves of the class in turn."""

from __future__ import annotations

from trivet.planning.say import say_list

MOST = 3
"""More than three at one device only watch (common practice, no source)."""


def cure_of(students: int, devices: int, missing: int, work_in: str, *, whole_class: bool) -> str:
    """Return what to do where so many devices are missing, as a clause. `work_in` is the unit's own word for how students work online."""
    share = "let teams take turns" if work_in == "team" and devices else sharing(students, devices, whole_class=whole_class)
    return f"{share}, or borrow {missing}" if share else f"borrow {missing}, since even trios are too many for them"


def sharing(students: int, devices: int, *, whole_class: bool) -> str:
    """Return what students do, "" where nothing would do; `students` are those who are online at once, `devices` at least 0.

    Halves take turns only where the whole class is at one station: elsewhere the others are busy.
    """
    if devices and students <= MOST * devices:
        return f"let them work as {_as(students, devices)}"
    half = -(-students // 2)
    if whole_class and devices and half <= MOST * devices:
        return f"let halves of the class take turns, {_as(half, devices)} at a time, and change at half time"
    return ""


def _as(students: int, devices: int) -> str:
    """Pairs as many as the devices allow, else trios for the rest; a leftover joins a pair, and one student works alone."""
    trios = students % 2 if students <= 2 * devices else students - 2 * devices
    pairs = (students - MOST * trios) // 2
    if pairs < 0:
        return "1 student alone"
    return say_list([f"{count} {name}{'' if count == 1 else 's'}" for count, name in ((pairs, "pair"), (trios, "trio")) if count])
