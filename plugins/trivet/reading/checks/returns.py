"""Do the units and stations that a unit names exist?"""

from __future__ import annotations

from collections.abc import Iterator

from trivet.model.problem import Problem
from trivet.reading.draft import Draft, Said
from trivet.reading.near import nearest

STATIONS = ("online", "hands-on", "teacher-led")


def check(draft: Draft) -> Iterator[Problem]:
    """Yield an error for each name under `returns to` and `again` that no unit has."""
    for entry in draft.listed("returns to"):
        yield from _unit(draft, entry, entry.text)
        if entry.text == draft.slug:
            yield draft.error("unit-names-itself", entry, "a unit can't return to itself", "name an earlier unit, or leave the key out")
    for station in STATIONS:
        again = draft.text("stations", station, "again")
        if again is None:
            continue
        slug, slash, other = again.text.partition("/")
        if slash:
            yield from _unit(draft, again, slug)
            if other == station and slug == draft.slug:
                yield draft.error("unit-names-itself", again, "a station can't repeat itself", "name a station of an earlier unit")


def _unit(draft: Draft, said: Said, slug: str) -> Iterator[Problem]:
    if slug not in draft.units:
        near = nearest(slug, (unit for unit in draft.units if unit != draft.slug))
        remedy = f"write {near}{said.text.removeprefix(slug)}" if near else "write the name of a folder under units/"
        yield draft.error("unknown-unit", said, f'there is no unit "{slug}"', remedy)
