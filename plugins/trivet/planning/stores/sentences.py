"""What is short, who clashes and where a number comes from, in words that the command and the page share."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction

from trivet.model.school import Room
from trivet.planning.halves import spoken
from trivet.planning.materials import Tally
from trivet.planning.measures import as_decimal, briefly
from trivet.planning.say import say_list, say_number, say_weekdays
from trivet.planning.stores.moments import Moment
from trivet.planning.stores.needs import Reusable, UsedUp
from trivet.planning.stores.pools import Pool
from trivet.planning.stores.tasks import Task, TurnRound

Rooms = Mapping[str, Room]


def things(amount: Decimal, pool: Pool, unit: str = "each") -> str:
    """Return an amount with what it is of: 2 × balance 0.1 g, 60 mL water, 3 devices."""
    if unit != "each":
        return f"{say_number(amount)} {unit} {pool.item}"
    if pool.device:
        return f"{say_number(amount)} {'device' if amount == 1 else 'devices'}"
    return f"{say_number(amount)} × {pool.item}"


def quantity(amount: Fraction, unit: str) -> str:
    """Return an amount of a measure briefly with its unit, or a plain count: 1.2 L, 12."""
    said, short = briefly(amount, unit)
    return f"{say_number(as_decimal(said))} {short}".rstrip()


def place(pool: Pool, rooms: Rooms) -> str:
    """Return the name of the store, or of the room for devices; "" where everyone shares what there is."""
    if not pool.device:
        return pool.place
    return rooms[pool.place].name if pool.place in rooms else ""


def headline(lack: Reusable | UsedUp, rooms: Rooms) -> str:
    """Return what is short, with days and periods where it is short at certain times."""
    if isinstance(lack, UsedUp):
        return f"Short of {short_of(lack)}"
    periods = list(dict.fromkeys(name for moment in lack.lacking for name in moment.periods))
    where = f" in {place(lack.pool, rooms)}" if lack.pool.device and place(lack.pool, rooms) else ""
    return f"Short of {short_of(lack)}{where} on {say_weekdays(each.date for each in lack.lacking)}, {say_list(periods)}"


def clash(lack: Reusable | UsedUp, rooms: Rooms) -> str:
    """Return who needs how much at the same time, or in all, and what there is."""
    here = place(lack.pool, rooms)
    holds = f"{here[0].upper()}{here[1:]} has" if here else "The stores have"
    unit = "" if isinstance(lack, Reusable) or lack.unit == "each" else f" {lack.unit}"
    have = f"{holds} {say_number(lack.have or Decimal(0))}{unit}."
    if isinstance(lack, UsedUp):
        return f"{say_number(lack.need)}{unit} are needed in all ({why_used_up(lack)}). {have}"
    worst = next(moment for moment in lack.lacking if moment.short == lack.missing)
    return f"{_needs(worst)}. {have}"


def why(need: Reusable) -> str:
    """Return which classes need most of it at one time, and when."""
    if len(need.peak.uses) > 1:
        same = [moment.date for moment in need.moments if moment.classes == need.peak.classes and moment.need == need.peak.need]
        days = f"{say_weekdays(same, 3)}, " if (max(same) - min(same)).days < 7 else ""
        return f"{say_list(list(need.peak.classes))} at once, {days}{say_list(list(need.peak.periods))}"
    classes = dict.fromkeys(name for moment in need.moments if moment.need == need.peak.need for name in moment.classes)
    return f"at once in {say_list(list(classes))}"


def why_used_up(need: UsedUp) -> str:
    """Return the parts of a total: p1 18 + p2 18, and 4 spare."""
    parts: dict[str, Decimal] = {}
    for class_id, _, amount in need.parts:
        parts[class_id] = parts.get(class_id, Decimal(0)) + amount
    spare = f", and {say_number(need.spare)} spare" if need.spare else ""
    return " + ".join(f"{class_id} {say_number(amount)}" for class_id, amount in parts.items()) + spare


def _needs(moment: Moment) -> str:
    amounts = [as_decimal(amount) for amount in moment.amounts]
    if len(amounts) == 1:
        return f"{moment.classes[0]} needs {say_number(amounts[0])} at one time"
    if len(set(amounts)) == 1:
        return f"{say_list(list(moment.classes))} need {say_number(amounts[0])} each at the same time"
    each = [f"{name} needs {say_number(amount)}" for name, amount in zip(moment.classes, amounts, strict=True)]
    return f"{say_list(each)} at the same time"


def short_of(lack: Reusable | UsedUp) -> str:
    """Return how much of what is missing: 2 × balance 0.1 g."""
    return things(lack.short, lack.pool, lack.unit if isinstance(lack, UsedUp) else "each")


def task_text(task: Task, title: str) -> str:
    """Return what to do around a bell; `title` is the unit's."""
    what = ", ".join(thing(each) for each in task.things)
    passing = "" if task.minutes is None else f" ({task.minutes} min between the classes)"
    match task.kind:
        case "set_out":
            return f"Set out {title} for {task.class_id}{passing}: {what}"
        case "refill":
            return f"The kit stays for {task.class_id}{passing}: " + (f"add {what}" if what else "count it")
        case _:
            count = sum(each.with_spare(0) for each in task.things)
            return f"Take in {title}, dry it and count it: {say_number(as_decimal(Fraction(count)))} things"


def thing(tally: Tally) -> str:
    """Return one line of a kit: 3 × balance 0.1 g, 180 mL water."""
    amount = tally.with_spare(0)
    return f"{quantity(amount, tally.unit)}{'' if tally.unit else ' ×'} {tally.item}"


def turn_round_text(short: TurnRound, title: str, room: str) -> str:
    """Return advice for a passing time that is too short, with what would do."""
    more = spoken(short.needs - 2 * short.minutes)
    return (
        f"{short.minutes} min between {short.first} and {short.second} in {room} ({say_weekdays(short.dates)}); "
        f"{title} needs {spoken(short.needs)} to be ready: "
        f"a second set, {more} min more of students' clean-up in {short.first}, or another order of classes"
    )
