"""Why a run has no dates, and what would give it some, in plain words."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from trivet.model.school import Run
from trivet.planning.costs import Costs
from trivet.planning.halves import spoken
from trivet.planning.minutes import Needed, RoundRange
from trivet.planning.say import STATION_NAMES
from trivet.planning.timetable import NoTimetable


@dataclass(frozen=True, slots=True, kw_only=True)
class UntimedRun:
    """A run without dates.

    `code` is one of no-class, no-unit, station-too-long, class-never-meets, no-day-fits, year-ends, done-out-of-order, done-beyond,
    stopped-too-late, done-too-much, all-lost, no-room-before, waits-for-unit.
    """

    run: Run
    code: str
    reason: str
    remedy: str

    @property
    def sentence(self) -> str:
        """Reason and remedy as a sentence."""
        return f"{self.reason[0].upper()}{self.reason[1:]}; {self.remedy}."


def no_class(run: Run) -> UntimedRun:
    """The class is not in classes.yml."""
    return UntimedRun(run=run, code="no-class", reason=f"there is no class {run.class_id}", remedy="write a class of classes.yml")


def no_unit(run: Run) -> UntimedRun:
    """The unit is not there, or has errors."""
    reason = f"there is no unit {run.unit} without errors"
    return UntimedRun(run=run, code="no-unit", reason=reason, remedy="mend the unit, or write another one")


def no_room_before(run: Run, by: date) -> UntimedRun:
    """There is no stretch of meetings in which the unit ends by its date and moves no other one."""
    return UntimedRun(
        run=run,
        code="no-room-before",
        reason=f"there is no room for the unit in class {run.class_id} that ends by {by} and moves no other unit",
        remedy="write a later date, or move the units before it",
    )


def waits(run: Run, others: Iterable[Run]) -> UntimedRun:
    """The unit after which this one begins has no days."""
    known = any(other.unit == run.after for other in others)
    reason = f"{run.after} has no days in class {run.class_id}" if known else f"class {run.class_id} does not run {run.after}"
    return UntimedRun(run=run, code="waits-for-unit", reason=reason, remedy=f"mend {run.after} first, or write `starts:` with a date")


def too_long(run: Run, needed: Needed) -> UntimedRun:
    """A station needs more than the longest round."""
    worst = max(needed.stations, key=lambda station: station.half_minutes)
    return UntimedRun(
        run=run,
        code="station-too-long",
        reason=(
            f"the {STATION_NAMES[worst.kind]} station needs {spoken(worst.half_minutes)} min, more than the longest round of {needed.most}"
        ),
        remedy=f"cut {spoken(worst.half_minutes - 2 * needed.most)} min from it",
    )


def all_lost(run: Run, begins: date) -> UntimedRun:
    """Every meeting that is left is a lost one."""
    return UntimedRun(
        run=run,
        code="all-lost",
        reason=f"class {run.class_id} meets from {begins} on, but all those days are lost",
        remedy="write an earlier date, or take a day out of `lost`",
    )


def never_meets(run: Run, begins: date, *, ever: bool) -> UntimedRun:
    """The class has no meeting any more, or has none at all in the year."""
    look = "look at the class's period and rotation days in school/classes.yml"
    return UntimedRun(
        run=run,
        code="class-never-meets",
        reason=f"class {run.class_id} does not meet from {begins} on" if ever else f"class {run.class_id} meets on no day of the year",
        remedy=f"write an earlier date, or {look}" if ever else look,
    )


def does_not_fit(
    run: Run, *, needed: Needed, allowed: RoundRange, spent: Costs, found: NoTimetable, begins: date, longest_before: int
) -> UntimedRun:
    """No meeting holds a first round, or too few do before the year ends. `longest_before` is the longest period before `begins`."""
    if found.fits == 0 and found.rounds_left:
        which = "a first round" if found.first else "the next round"
        period = f"the longest period of {run.class_id} from {begins} on is {found.longest}"
        total = f"it needs {spoken(found.needs)} min ({_parts(allowed, spent)})" if found.first else f"it needs {spoken(found.needs)} min"
        return UntimedRun(
            run=run,
            code="no-day-fits" if found.first or found.longest else "year-ends",
            reason=f"no day is long enough for {which}: {total}; {period}",
            remedy=("write an earlier date, or " if 2 * longest_before >= found.needs else "")
            + _cut(needed, allowed, found.needs - 2 * found.longest),
        )
    left = f"{found.rounds_left} rounds" if found.first else f"the {found.rounds_left} rounds that are left"
    done = f"{found.fits} of {left} fit" if found.fits < found.rounds_left else "all rounds fit, but not the write-up,"
    return UntimedRun(
        run=run,
        code="year-ends",
        reason=f"{done} between {begins} and the last day of the year",
        remedy="write an earlier date",
    )


def _parts(allowed: RoundRange, spent: Costs) -> str:
    """What the shortest first day with one round is made of."""
    parts = (
        (spent.settle_in, "settle in"),
        (spent.expectations, "expectations"),
        (spent.places, "places"),
        (spent.launch, "launch"),
        (2 * allowed.low, "station"),
        (spent.clean_up, "clean up"),
        (spent.reflection, "reflection"),
        (spent.pack_up, "pack up"),
    )
    return " + ".join(f"{spoken(part)} {name}" for part, name in parts if part)


def _cut(needed: Needed, allowed: RoundRange, short: int) -> str:
    """A shorter round where the unit would still fit in it, else what takes most. `short` is in half minutes."""
    lower = allowed.low + (-short // 2)
    if lower > 0 and needed.half_minutes <= 2 * lower:
        least = f"its longest station needs {spoken(needed.half_minutes)}"
        return f"write `round: {lower}-{needed.most} min` in the unit ({least}), or choose longer days"
    longest = max(needed.stations, key=lambda station: station.half_minutes)
    return (
        f"cut {spoken(short)} min: the {STATION_NAMES[longest.kind]} station needs {spoken(longest.half_minutes)}; "
        "shorter cards make a shorter launch; or choose longer days"
    )
