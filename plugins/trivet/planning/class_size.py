"""Advisory numbers on how many people a room with hands-on science holds; never a verdict."""

from __future__ import annotations

ADVISED_MOST = 24
"""Students in a middle-school science class: NSTA Safety Advisory Board, Overcrowding in the Instructional Space, 2014, revised 2020."""

SQ_FT_COMBINED = 60
"""Net square feet a student in a combined classroom and laboratory (same source)."""


def class_size_advice(students: int, at_once: int) -> str | None:
    """Return what to say of a class above the advised number, None below it. `at_once` students are at the hazard at a time."""
    if students <= ADVISED_MOST:
        return None
    some = "All of them" if at_once >= students else f"About {at_once}"
    return (
        f"{students} students: NSTA advises at most {ADVISED_MOST} where a class does hands-on science. "
        f"{some} are at the hands-on station at once; whoever is within reach of it is protected too. "
        "Follow your local code and your district's policy."
    )


def area_advice(students: int, adults: int, area_sq_ft: int | None) -> str | None:
    """Return what to say of a room with less floor than advised for everyone in it, None where there is enough or it is not known."""
    people = students + adults
    if area_sq_ft is None or area_sq_ft >= SQ_FT_COMBINED * people:
        return None
    return (
        f"{area_sq_ft} square feet for {people} people are {area_sq_ft // people} each; NSTA advises at least {SQ_FT_COMBINED} "
        "in a combined classroom and laboratory. Follow your local code and your district's policy."
    )
