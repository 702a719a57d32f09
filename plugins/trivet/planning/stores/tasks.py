"""What an adult does between the bells: set out, refill, change over, take in; and whether the minutes between two classes suffice."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, time
from fractions import Fraction
from itertools import groupby, pairwise

from trivet.model.unit import Unit
from trivet.planning.halves import halves
from trivet.planning.materials import Tally
from trivet.planning.stores.uses import Use


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """One thing to do in a room around a bell.

    `kind`: set_out (before `at`), refill (the kit stays, used-up things are filled up, before `at`), take_in (after `at`).
    `minutes` between the room's two classes, None where there is only one. `things` to carry, or to count.
    """

    kind: str
    at: time
    class_id: str
    unit: str
    minutes: int | None
    things: tuple[Tally, ...]


@dataclass(frozen=True, slots=True)
class RoomDays:
    """What is done in one room on each of some dates, by clock."""

    room: str
    dates: tuple[date, ...]
    tasks: tuple[Task, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TurnRound:
    """Two classes in one room with fewer minutes between them than the next kit needs; `needs` is in half minutes."""

    room: str
    first: str
    second: str
    unit: str
    minutes: int
    needs: int
    dates: tuple[date, ...]


def tasks(uses: Sequence[Use]) -> tuple[RoomDays, ...]:
    """Return the tasks of some meetings by first day, clock and room; days of a room on which all is the same are told once.

    A kit stays out between two classes that work at the same unit.
    """
    same: dict[tuple[str, tuple[Task, ...]], list[date]] = {}
    for row in _rows(uses):
        same.setdefault((row[0].room, tuple(_of_row(row))), []).append(row[0].date)
    found = [RoomDays(room, tuple(dates), each) for (room, each), dates in same.items()]
    return tuple(sorted(found, key=lambda each: (each.dates[0], each.tasks[0].at, each.room)))


def turn_rounds(uses: Sequence[Use], units: Mapping[str, Unit]) -> tuple[TurnRound, ...]:
    """Return where the passing time in a room is too short for the next class's kit, each pair of classes and unit once.

    What is needed: the set-up minutes of the next unit, and the clean-up minutes of the one before it where that is another.
    """
    met: dict[tuple[str, str, str, str, int, int], list[date]] = {}
    for row in _rows(uses):
        for before, after in pairwise(row):
            minutes = _between(before, after)
            needs = halves(units[after.unit].hands_on.set_up_minutes)
            if before.unit != after.unit:
                needs += halves(units[before.unit].hands_on.clean_up_minutes)
            if minutes >= 0 and 2 * minutes < needs:
                met.setdefault((after.room, before.class_id, after.class_id, after.unit, minutes, needs), []).append(after.date)
    return tuple(
        TurnRound(room=room, first=first, second=second, unit=unit, minutes=minutes, needs=needs, dates=tuple(dates))
        for (room, first, second, unit, minutes, needs), dates in met.items()
    )


def _rows(uses: Sequence[Use]) -> Iterator[list[Use]]:
    """The meetings with a kit of each room on each day, by clock."""

    def where(use: Use) -> tuple[date, str]:
        return (use.date, use.room)

    for _, row in groupby(sorted((use for use in uses if use.tallies), key=lambda use: (*where(use), use.start)), key=where):
        yield list(row)


def _between(before: Use, after: Use) -> int:
    """Minutes from one class's bell to the next one's; below 0 where they overlap."""
    return (after.start.hour - before.end.hour) * 60 + after.start.minute - before.end.minute


def _of_row(row: Sequence[Use]) -> Iterator[Task]:
    """Classes in a row at one unit share the kit: it is set out once, filled up between them, and taken in once."""
    for _, stretch in groupby(range(len(row)), key=lambda place: row[place].unit):
        kit: dict[tuple[str, str], Tally] = {}
        for number, place in enumerate(stretch):
            use = row[place]
            things = [_more(each, kit) for each in use.set_out]
            kit |= {(each.item, each.unit): each for each in use.set_out if not each.used_up and _more(each, kit).need}
            minutes = _between(row[place - 1], use) if place else None
            yield _task("refill" if number else "set_out", use, use.start, minutes, [each for each in things if each.need])
        minutes = _between(use, row[place + 1]) if place + 1 < len(row) else None
        yield _task("take_in", use, use.end, minutes, kit.values())


def _more(each: Tally, kit: Mapping[tuple[str, str], Tally]) -> Tally:
    """What has to be added to what already stands there."""
    out = None if each.used_up else kit.get((each.item, each.unit))
    return each if out is None else replace(each, need=max(Fraction(0), each.with_spare(0) - out.with_spare(0)), spare=Fraction(0))


def _task(kind: str, use: Use, at: time, minutes: int | None, things: Iterable[Tally]) -> Task:
    return Task(kind=kind, at=at, class_id=use.class_id, unit=use.unit, minutes=minutes, things=tuple(things))
