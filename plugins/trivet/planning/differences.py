"""What is otherwise between two plans of the same run, in words: what moves, what shrinks or grows, what has no room any more."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from trivet.model.plan import Day, Plan, Plans
from trivet.planning.halves import halves, spoken
from trivet.planning.say import say_date, say_list


@dataclass(frozen=True, slots=True)
class Difference:
    """One run before and after; `lines` is () where nothing is otherwise. A plan is None where the run has no dates."""

    class_id: str
    unit: str
    before: Plan | None
    after: Plan | None
    lines: tuple[str, ...]


def differences(before: Plans, after: Plans) -> tuple[Difference, ...]:
    """Return one value a run, in the order of the plans before and then of those that come on top."""
    runs = dict.fromkeys((plan.class_id, plan.unit) for plan in (*before.plans, *after.plans))
    reasons = {(each.run.class_id, each.run.unit): each.reason for each in after.not_planned}
    return tuple(_difference(class_id, unit, before, after, reasons) for class_id, unit in runs)


def _difference(class_id: str, unit: str, before: Plans, after: Plans, reasons: Mapping[tuple[str, str], str]) -> Difference:
    old, new = before.of(class_id, unit), after.of(class_id, unit)
    if new is None:
        lines = [f"it can't be planned any more: {reasons.get((class_id, unit), 'it has no dates')}"]
    elif old is None:
        lines = [f"it can be planned now, from {say_date(new.days[0].date)} to {say_date(new.days[-1].date)}"]
    else:
        lines = [
            *_bells(old, new),
            *_moved(old, new),
            *_minutes(old, new),
            *_too_short(old, new),
            *_days(old, new),
            *_pre_check(old, new),
            *_end(old, new),
        ]
    return Difference(class_id, unit, old, new, tuple(lines))


def _bells(old: Plan, new: Plan) -> Iterator[str]:
    """Days of both plans that begin or end at another time."""
    before = {day.date: day for day in old.days}
    for day in new.days:
        was = before.get(day.date, day)
        if (was.start, was.end) != (day.start, day.end):
            yield f"{say_date(day.date)} goes from {day.start:%H:%M} to {day.end:%H:%M} ({day.minutes} min in place of {was.minutes})"


def _moved(old: Plan, new: Plan) -> Iterator[str]:
    """Rounds and the write-up on other dates."""
    were, are = _dates(old), _dates(new)
    for name in dict.fromkeys((*were, *are)):
        first, then = were.get(name, ()), are.get(name, ())
        if first == then:
            continue
        if not first:
            yield f"{name} comes on top, on {_said(then)}"
        elif not then:
            yield f"{name} has no day any more (it was on {_said(first)})"
        else:
            yield f"{name} moves from {_said(first)} to {_said(then)}"


def _dates(plan: Plan) -> dict[str, tuple[date, ...]]:
    found: dict[str, tuple[date, ...]] = {}
    for each in plan.rounds:
        found[f"round {each.round}"] = (*found.get(f"round {each.round}", ()), each.date)
    for day in plan.days:
        if _minutes_of(day, "write_up"):
            found["the write-up"] = (*found.get("the write-up", ()), day.date)
    return found


def _said(days: Sequence[date]) -> str:
    return say_list([say_date(day) for day in days])


def _minutes(old: Plan, new: Plan) -> Iterator[str]:
    """Station minutes of each round, and those of the write-up."""
    were, are = (
        {each.round: sum(other.minutes for other in plan.rounds if other.round == each.round) for each in plan.rounds}
        for plan in (old, new)
    )
    changed: dict[tuple[int, int], list[str]] = {}
    for number in were:
        if number in are and were[number] != are[number]:
            changed.setdefault((were[number], are[number]), []).append(str(number))
    for (was, now), numbers in changed.items():
        rounds = f"round {numbers[0]}" if len(numbers) == 1 else f"rounds {say_list(numbers)}"
        yield f"{rounds}: {now} min at each station in place of {was}"
    first, then = (sum(_minutes_of(day, "write_up") for day in plan.days) for plan in (old, new))
    if first and then and first != then:
        yield f"the write-up has {spoken(halves(then))} min in place of {spoken(halves(first))}"


def _too_short(old: Plan, new: Plan) -> Iterator[str]:
    """Days that are too short for a round, which they were not before."""
    known = {note.text for note in old.notes}
    for note in new.notes:
        if note.code == "passed_over" and note.text not in known:
            yield note.text.rstrip(".")


def _days(old: Plan, new: Plan) -> Iterator[str]:
    """What is otherwise on days that hold the same: the written line, the reflection."""
    before = {day.date: day for day in old.days}
    for day in new.days:
        was = before.get(day.date)
        if was is None:
            was = next((each for each in old.days if _held(each) == _held(day)), None)
        if was is None or not _minutes_of(day, "station"):
            continue
        if _minutes_of(was, "evidence") and not _minutes_of(day, "evidence"):
            yield f"{say_date(day.date)} has no time for the written evidence line any more"
        elif _minutes_of(day, "evidence") and not _minutes_of(was, "evidence") and _minutes_of(was, "station"):
            yield f"{say_date(day.date)} has time for the written evidence line"
        first, then = _minutes_of(was, "reflection"), _minutes_of(day, "reflection")
        if _held(was) == _held(day) and first != then:
            yield f"the reflection of {say_date(day.date)} has {spoken(halves(then))} min in place of {spoken(halves(first))}"


def _held(day: Day) -> tuple[int | None, ...]:
    """The rounds of a day, and None for the write-up."""
    return tuple(block.round for block in day.blocks if block.kind in ("station", "write_up"))


def _pre_check(old: Plan, new: Plan) -> Iterator[str]:
    first, then = (plan.pre_check.date if plan.pre_check else None for plan in (old, new))
    if first == then:
        return
    if then is None:
        yield f"the pre-check has no day any more (it was on {say_date(first)})" if first else ""
    elif first is None:
        yield f"the pre-check comes on top, on {say_date(then)}"
    else:
        yield f"the pre-check moves from {say_date(first)} to {say_date(then)}"


def _end(old: Plan, new: Plan) -> Iterator[str]:
    first, then = old.days[-1].date, new.days[-1].date
    if first != then:
        yield f"the unit ends on {say_date(then)} in place of {say_date(first)}"


def _minutes_of(day: Day, kind: str) -> float:
    return sum(block.minutes for block in day.blocks if block.kind == kind)
