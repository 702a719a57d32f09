"""What would cure a shortage, in words: borrow, buy, start a run later, swap two runs, share; each tried before it is said."""

from __future__ import annotations

from collections.abc import Iterator
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction

from trivet.model.problem import Place
from trivet.model.school import Run
from trivet.model.station import Material, Per
from trivet.planning.checks.places import of_run
from trivet.planning.materials import same_item
from trivet.planning.measures import as_decimal, factor
from trivet.planning.notes import share_devices
from trivet.planning.say import say_date, say_list, say_money, say_number, say_weekdays
from trivet.planning.stores.moments import short_without
from trivet.planning.stores.needs import Reusable, UsedUp
from trivet.planning.stores.purchases import Purchase, purchase
from trivet.planning.stores.sentences import short_of
from trivet.planning.stores.tried import After, Tried
from trivet.planning.stores.uses import Use
from trivet.planning.timed_runs import WHOLE_CLASS

LATER = 8
"""Meetings of a class that are tried as a later first day: enough to let two units of three days pass."""

PROTECTS = ("glasses", "goggle", "glove", "mitt", "apron", "shield", "mask", "first aid", "extinguisher", "blanket", "eyewash")
"""What nobody shares: an item with one of these words is never thinned out."""


@dataclass(frozen=True, slots=True)
class Cure:
    """One way out. `then` says what it gives and what it costs; `writes` are the lines to change, with their place."""

    kind: str
    title: str
    then: tuple[str, ...]
    writes: tuple[tuple[str, Place], ...] = ()


def cures(lack: Reusable | UsedUp, tried: Tried) -> tuple[Cure, ...]:
    """Return what would cure a shortage, the least work first."""
    return tuple(_in_turn(lack, tried))


def cure_to_write(lack: Reusable, tried: Tried) -> Cure:
    """Return the first cure that is a line to write, else the first of all; those after it are not tried."""
    first = None
    for cure in _in_turn(lack, tried):
        if cure.writes:
            return cure
        first = first or cure
    return first or _borrow(lack, tried)


def _in_turn(lack: Reusable | UsedUp, tried: Tried) -> Iterator[Cure]:
    bought = purchase(lack.pool, lack.missing)
    if isinstance(lack, UsedUp):
        yield from _buy(lack, bought, tried)
        return
    yield _borrow(lack, tried)
    yield from _buy(lack, bought, tried)
    yield from _start_later(lack, tried)
    yield from _swap(lack, tried)
    yield from [_take_turns(lack, tried)] if lack.pool.device else _share(lack, tried)


def _now(lack: Reusable, need: Decimal | None = None, more: Decimal = Decimal(0)) -> str:
    have = (lack.have or Decimal(0)) + more
    return f"need {say_number(lack.need if need is None else need)}, have {say_number(have)}"


def _borrow(lack: Reusable, tried: Tried) -> Cure:
    days = [moment.date for moment in lack.lacking]
    lender = _lender(lack, tried)
    source = f" from {lender}" if lender else ""
    title = f"Borrow {short_of(lack)}{source} for {say_weekdays(days)}"
    return Cure("borrow", title, (_now(lack, more=lack.short), "nothing to change in the files"))


def _lender(lack: Reusable, tried: Tried) -> str:
    """The first other store, or room, that can spare what is missing whenever it is missing; "" where there is none."""
    days = {moment.date for moment in lack.lacking}
    for where, have in _elsewhere(lack, tried):
        out = tried.now.get((*lack.pool.key[:3], where), ())
        if have - max((moment.need for moment in out if moment.date in days), default=0) >= lack.missing:
            rooms = tried.department.school.rooms
            return rooms[where].name if lack.pool.device else where
    return ""


def _elsewhere(lack: Reusable, tried: Tried) -> list[tuple[str, Fraction]]:
    """What other stores hold of a pool's item, or which devices stand in other rooms."""
    school, held = tried.department.school, dict[str, Fraction]()
    if lack.pool.device:
        return [(room.id, Fraction(room.devices)) for room in school.rooms.values() if room.devices and room.id != lack.pool.place]
    for line in school.inventory:
        if lack.pool.place and line.store not in ("", lack.pool.place) and same_item(line.item, lack.pool.item):
            held[line.store] = held.get(line.store, Fraction(0)) + Fraction(line.have) * (factor(line.unit, lack.pool.unit) or 0)
    return list(held.items())


def _buy(lack: Reusable | UsedUp, bought: Purchase | None, tried: Tried) -> Iterator[Cure]:
    if bought is None:
        if isinstance(lack, UsedUp):
            yield Cure("buy", f"Get {short_of(lack)}", ("the inventory names no price",))
        return
    unit = "" if bought.unit == "each" else f" {bought.unit}"
    packs = f" ({say_number(Decimal(bought.packs))} × {say_number(bought.pack)})" if bought.packs and bought.pack else ""
    title = f"Buy {say_number(bought.amount)}{unit}{' ×' if not unit else ''} {bought.item}{packs}"
    cost = "no price in the inventory" if bought.cost is None else say_money(bought.cost, tried.department.school.settings.locale)
    yield Cure("buy", title, (cost,))


def _start_later(lack: Reusable, tried: Tried) -> Iterator[Cure]:
    """The smallest step to a later first day of one of the clashing runs that leaves nothing new short."""
    steps: list[tuple[date, Use]] = []
    for use in _clashing(lack):
        if _can_cure(lack, {use.run}):
            plan = next(plan for plan in tried.plans if (plan.class_id, plan.unit) == use.run)
            steps += [(day, use) for day in tried.meetings_after(use.class_id, plan.days[0].date, LATER)]
    for day, use in sorted(steps, key=lambda step: step[0]):
        at, run = _run_of(use, tried)
        need = _need_after(lack, use.class_id, {at: day}, tried)
        if need is not None:
            title = f"Start {_titled(run, tried)} in {use.class_id} on {say_date(day)}"
            gone = ("`after` and `gap` go out",) if run.gap_days else ("`after` goes out",) if run.after else ()
            then = (_now(lack, need), f"its rounds move to {_rounds(use, {at: day}, tried)}", *gone)
            key = "after" if run.after else "by" if run.begins == "by" else "starts"
            yield Cure("start", title, then, ((f"starts: {day}", of_run(tried.department, run, key)),))
            return


def _swap(lack: Reusable, tried: Tried) -> Iterator[Cure]:
    """A clashing run that changes places with a later one of its class; both rotate, and neither unit returns to the other."""
    for use in _clashing(lack):
        at, run = _run_of(use, tried)
        for other_at, other in tried.runs_of(use.class_id):
            units = tried.department.units
            if (
                not run.begins == other.begins == "date"
                or other.starts <= run.starts
                or WHOLE_CLASS in (run.way, other.way)
                or other.unit not in units
            ):
                continue
            if other.unit in units[run.unit].returns_to or run.unit in units[other.unit].returns_to:
                continue
            if not _can_cure(lack, {use.run, (other.class_id, other.unit)}):
                continue
            need = _need_after(lack, use.class_id, {at: other.starts, other_at: run.starts}, tried)
            if need is not None:
                title = f"Swap {_titled(run, tried)} and {_titled(other, tried)} in {use.class_id}"
                writes = tuple(
                    (f"starts: {each.starts}", of_run(tried.department, into, "starts")) for into, each in ((run, other), (other, run))
                )
                yield Cure("swap", title, (_now(lack, need), "the two units change places"), writes)
                return


def _titled(run: Run, tried: Tried) -> str:
    return tried.department.units[run.unit].title


def _rounds(use: Use, starts: dict[int, date], tried: Tried) -> str:
    plans = (tried.moved(use.class_id, starts) or ((), None))[0]
    return say_weekdays(each.date for plan in plans if plan.unit == use.unit for each in plan.rounds)


def _clashing(lack: Reusable) -> list[Use]:
    """One use of each run that takes part in the shortage, where there is more than one class to move apart."""
    uses = {(use.class_id, use.unit): use for moment in lack.lacking for use in moment.uses if len(moment.uses) > 1}
    return list(uses.values())


def _can_cure(lack: Reusable, runs: AbstractSet[tuple[str, str]]) -> bool:
    """Whether it can help at all to move these runs: not where all others alone are short too. Quick to say, unlike timing them anew."""
    return not any(short_without(lack.pool, moment, runs) for moment in lack.lacking)


def _run_of(use: Use, tried: Tried) -> tuple[int, Run]:
    return next((place, run) for place, run in tried.runs_of(use.class_id) if run.unit == use.unit)


def _need_after(lack: Reusable, class_id: str, starts: dict[int, date], tried: Tried) -> Decimal | None:
    """The pool's largest need on the days concerned after a change of first dates; None where it does not cure, or harms elsewhere."""
    moved = tried.moved(class_id, starts)
    return None if moved is None else _need_with(lack, moved[1], tried)


def _need_with(lack: Reusable, after: After, tried: Tried) -> Decimal | None:
    """The same for any change: nothing of the pool may be short in the week any more, and nothing new on the days of the change."""
    key, week = lack.pool.key, {moment.date for moment in lack.moments}
    if any(moment.date not in after.days for moment in lack.lacking) or any(each[0] == key and each[1] in week for each in after.short):
        return None
    if after.short - tried.lacking_now:
        return None
    others = (moment.need for moment in lack.moments if moment.date not in after.days)
    return as_decimal(max((after.most.get(key, Fraction(0)), *others)))


def _share(lack: Reusable, tried: Tried) -> Iterator[Cure]:
    """Twice, or three times, as many teams to one thing, where it is neither protective nor a matter of each student."""
    if any(word in lack.pool.item.casefold() for word in PROTECTS):
        return
    for slug in dict.fromkeys(use.unit for moment in lack.lacking for use in moment.uses):
        unit = tried.department.units[slug]
        for index, line in enumerate(unit.hands_on.materials):
            if line.per is not Per.TEAM or line.used_up or line.quantity != 1 or not same_item(line.item, lack.pool.item):
                continue
            for teams in (line.per_count + 1, line.per_count + 2):
                need = _need_with(lack, tried.thinned(slug, index, teams), tried)
                if need is not None:
                    at = unit.places.find("stations", "hands-on", "materials", index)
                    title = f"Let {('two', 'three', 'four')[teams - 2] if teams <= 4 else teams} teams share one"
                    then = (_now(lack, need), "teams wait for each other")
                    yield Cure("share", title, then, ((f"- {_line(line, teams)}", at),))
                    return


def _line(line: Material, teams: int) -> str:
    return f"{say_number(line.quantity)} {line.item} per {teams} teams" + (f", spare {say_number(line.spare)}" if line.spare else "")


def _take_turns(lack: Reusable, tried: Tried) -> Cure:
    short = [use for moment in lack.lacking for use in moment.uses]
    whole_class = any(_run_of(use, tried)[1].way == WHOLE_CLASS for use in short)
    text = share_devices(whole_class=whole_class)
    classes = say_list(list(dict.fromkeys(use.class_id for use in short)))
    return Cure("turns", f"{text[0].upper()}{text[1:]}", (f"in {classes}", "nothing to change in the files"))
