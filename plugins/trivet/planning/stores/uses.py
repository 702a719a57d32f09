"""What each class has out in each of its meetings, from bell to bell."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, time

from trivet.model.department import Department
from trivet.model.plan import Day, Plan, Round
from trivet.model.station import Kind
from trivet.model.unit import Unit
from trivet.planning.headcount import GroupCount, Headcount, by_groups, by_size, seats_on
from trivet.planning.materials import Tally, add_up, amount, at_station, devices, tally


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """One meeting of a class in which a station with things is worked, [start, end).

    `tallies`: what stands on the benches at once (reusable) and what is used in this meeting (used up), () where nobody is at the
    hands-on station; `set_out` the same for the largest group that may come. `devices` are in use at once at the online station.
    `room` and `store` are "" where they are not known.
    """

    class_id: str
    unit: str
    room: str
    store: str
    period: str
    date: date
    start: time
    end: time
    tallies: tuple[Tally, ...]
    set_out: tuple[Tally, ...]
    devices: int

    @property
    def run(self) -> tuple[str, str]:
        """The run it belongs to: class id and unit slug."""
        return (self.class_id, self.unit)


@dataclass(frozen=True, slots=True)
class _Here:
    """Who may be at a station in a round, and whose used-up things count there: the same group where groups are public."""

    may: tuple[GroupCount, ...] = ()
    spends: GroupCount | None = None


def uses(department: Department, plans: Iterable[Plan]) -> tuple[Use, ...]:
    """Return the uses of all plans, by date and clock, then in the order of the plans."""
    found = [use for plan in plans for use in uses_of(department, plan)]
    return tuple(sorted(found, key=lambda use: (use.date, use.start)))


def uses_of(department: Department, plan: Plan, unit: Unit | None = None) -> Iterator[Use]:
    """Yield the uses of one plan; `unit` stands in for the department's own, to try a change of it."""
    unit = unit or department.units[plan.unit]
    school_class = department.school.classes[plan.class_id]
    room = department.school.rooms.get(school_class.room)
    headcount = headcount_of(department, plan)
    spent: list[GroupCount] = []
    for day in plan.days:
        online, hands_on = (_at(plan, day, kind, headcount) for kind in (Kind.ONLINE, Kind.HANDS_ON))
        tallies = _tallies(unit, hands_on, spent)
        most = _tallies(unit, [_Here(here.may, here.may[0]) for here in hands_on], spent)  # groups stand in order of size
        spent += [here.spends for here in hands_on if here.spends]
        at_once = devices(unit, [group for here in online for group in here.may])
        if tallies or at_once:
            yield Use(
                class_id=plan.class_id,
                unit=plan.unit,
                room=room.id if room else "",
                store=room.store if room else "",
                period=school_class.period,
                date=day.date,
                start=day.start,
                end=day.end,
                tallies=tallies,
                set_out=most,
                devices=at_once,
            )


def headcount_of(department: Department, plan: Plan) -> Headcount:
    """Return the groups of a plan in numbers: of its groups where they are public, else by the size of the class at the start."""
    if plan.groups is not None:
        return by_groups(plan.groups)
    run = next(run for run in department.school.runs if (run.class_id, run.unit) == (plan.class_id, plan.unit))
    seats = seats_on(department.school.classes[plan.class_id], run.starts)
    return by_size(len(seats), department.school.settings.defaults.team_size)


def _at(plan: Plan, day: Day, kind: Kind, headcount: Headcount) -> list[_Here]:
    """Who is at a station in the rounds of one day."""
    return [
        here
        for place, each in enumerate(plan.rounds)
        if each.date == day.date and (here := _in_round(each, place, kind, headcount, whole_class=plan.way == "whole_class")).may
    ]


def _in_round(each: Round, place: int, kind: Kind, headcount: Headcount, *, whole_class: bool) -> _Here:
    """Where groups are not public any group may be there; then the largest are counted as the first to use things up."""
    if each.stations is None:
        groups = at_station(headcount, whole_class=False)
        return _Here(groups, groups[place] if place < len(groups) else None)
    if whole_class:
        everyone = at_station(headcount, whole_class=True)[0]
        return _Here((everyone,), everyone) if kind in each.stations.values() else _Here()
    own = [headcount.groups[letter] for letter, station in each.stations.items() if station is kind and headcount.groups[letter].students]
    return _Here((own[0],), own[0]) if own else _Here()


def _tallies(unit: Unit, here: Sequence[_Here], before: Sequence[GroupCount]) -> tuple[Tally, ...]:
    """What one meeting takes; `before` are the groups that used things up in earlier ones, and got the spare of their line."""
    if not here:
        return ()
    now = [*before, *(each.spends for each in here if each.spends)]
    found = []
    for line in unit.hands_on.materials:
        if line.used_up:
            need = amount(line, now) - (amount(line, before) if before else 0)  # what is per class counts once
            found.append(tally(line, need, spare=not before))
        else:
            found.append(tally(line, amount(line, [group for each in here for group in each.may])))
    return tuple(add_up(found))
