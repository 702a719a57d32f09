"""Do the runs name classes and units that exist, once a year each, and start on a day on which the class meets?"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Collection, Iterator, Mapping
from datetime import date

from trivet.model.problem import Problem
from trivet.model.school import Calendar, DayType, Run, SchoolClass
from trivet.reading.school.checks.known import not_known
from trivet.reading.school.checks.record import WHOLE_CLASS, check_record
from trivet.reading.school.days import held_days, is_closed, meeting_days
from trivet.reading.school.sheet import Sheet


def check_run_names(sheet: Sheet, runs: tuple[Run, ...], classes: Collection[str] | None, units: Collection[str]) -> Iterator[Problem]:
    """Yield unknown classes and units, and units that a class runs twice. `classes` is None where they could not be read."""
    first: dict[tuple[str, str], Run] = {}
    for run in runs:
        if run.order and run.way == WHOLE_CLASS:
            what = "the whole class goes together, online, hands-on, teacher-led, so that there is no order to ask for"
            yield sheet.warning("order-in-whole-class", ("runs", run.index, "order"), what, "leave `order` out", at_key=True)
        if classes is not None and run.class_id not in classes:
            yield not_known(sheet, ("runs", run.index, "class"), "class", run.class_id, classes, home="school/classes.yml")
        if run.unit not in units:
            yield not_known(sheet, ("runs", run.index, "unit"), "unit", run.unit, units, home="units/")
        yield from _after(sheet, run, runs)
        before = first.setdefault((run.class_id, run.unit), run)
        if before is not run:
            line = sheet.places.find("runs", before.index).line
            what = f"{run.class_id} already runs {run.unit} (line {line}), and a class runs a unit once a school year"
            yield sheet.error("runs-twice", ("runs", run.index, "unit"), what, "leave one of the two out")


def _after(sheet: Sheet, run: Run, runs: tuple[Run, ...]) -> Iterator[Problem]:
    """A run begins after a unit that its class runs, and never in a circle."""
    if run.begins != "after":
        return
    own = {each.unit: each for each in runs if each.class_id == run.class_id}
    path = ("runs", run.index, "after")
    if run.after not in own:
        others = [unit for unit in own if unit != run.unit]
        yield not_known(sheet, path, "run", run.after, others, home=f"school/runs.yml as a unit of {run.class_id}")
        return
    chain = _chain(run, own)
    if chain[-1] == run.unit:
        yield sheet.error("after-circle", path, f"{' after '.join(chain)} is a circle", "write `starts:` with a date in one of them")


def _chain(run: Run, own: Mapping[str, Run]) -> list[str]:
    """The units one after the other up to one that begins otherwise, or that stood there already."""
    chain = [run.unit]
    at: Run | None = run
    while at is not None and at.begins == "after":
        chain.append(at.after)
        if at.after in chain[:-1]:
            break
        at = own.get(at.after)
    return chain


def check_run_dates(
    sheet: Sheet, runs: tuple[Run, ...], classes: Mapping[str, SchoolClass], calendar: Calendar, bells: Mapping[str, DayType]
) -> Iterator[Problem]:
    """Yield starts outside the year (errors), and starts and lost days on which the class does not meet (warnings)."""
    if not runs:
        return
    held = tuple(held_days(calendar))
    for run in runs:
        meets = meeting_days(held, bells, classes[run.class_id]) if run.class_id in classes else ()
        if run.begins == "date":
            yield from _start(sheet, run, meets, calendar)
        yield from _deadline(sheet, run, calendar)
        yield from _lost(sheet, run, meets)
        yield from check_record(sheet, run, meets)


def _start(sheet: Sheet, run: Run, meets: tuple[date, ...], calendar: Calendar) -> Iterator[Problem]:
    path = ("runs", run.index, "starts")
    if not calendar.first <= run.starts <= calendar.last:
        side = "before" if run.starts < calendar.first else "after"
        what = f"{run.starts} lies {side} the school year"
        yield sheet.error("starts-outside-year", path, what, f"write a day from {calendar.first} to {calendar.last}")
    elif meets and run.starts not in meets and not any(each.first <= run.starts <= each.last for each in calendar.short_notice):
        why = "school is closed" if is_closed(calendar, run.starts) else f"{run.class_id} does not meet"
        following = meets[bisect_left(meets, run.starts) :]
        remedy = f"write {following[0]}, the next day on which it meets" if following else "write an earlier day: it does not meet again"
        yield sheet.warning("starts-on-no-meeting", path, f"{why} on {run.starts}", remedy)


def _deadline(sheet: Sheet, run: Run, calendar: Calendar) -> Iterator[Problem]:
    path = ("runs", run.index, "by")
    if run.by is None:
        return
    if not calendar.first <= run.by <= calendar.last:
        side = "before" if run.by < calendar.first else "after"
        what = f"{run.by} lies {side} the school year"
        yield sheet.error("by-outside-year", path, what, f"write a day from {calendar.first} to {calendar.last}")
    elif run.begins == "date" and run.by < run.starts:
        yield sheet.error("by-before-start", path, f"{run.by} comes before this run starts on {run.starts}", "mend one of the two dates")


def _lost(sheet: Sheet, run: Run, meets: tuple[date, ...]) -> Iterator[Problem]:
    written = {text: index for index, text in reversed(tuple(enumerate(sheet.data["runs"][run.index].get("lost", []))))}
    for day in run.lost:
        path = ("runs", run.index, "lost", written[day.isoformat()])
        if run.begins == "date" and day < run.starts:
            what = f"{day} comes before this run starts on {run.starts}"
            yield sheet.warning("lost-before-start", path, what, "leave it out, or mend the date")
        elif meets and day not in meets:
            yield sheet.warning("lost-no-meeting", path, f"{run.class_id} does not meet on {day} anyway", "leave it out, or mend the date")


def sound_runs(runs: tuple[Run, ...], classes: Collection[str], units: Collection[str], calendar: Calendar) -> tuple[Run, ...]:
    """Return the runs of known classes and units that start within the year, the first where a class runs a unit twice."""
    first: dict[tuple[str, str], Run] = {}
    for run in runs:
        dated = run.begins != "date" or calendar.first <= run.starts <= calendar.last
        if run.class_id in classes and run.unit in units and dated and (run.by is None or calendar.first <= run.by <= calendar.last):
            first.setdefault((run.class_id, run.unit), run)
    return tuple(run for run in first.values() if run.begins != "after" or _settles(run, first))


def _settles(run: Run, runs: Mapping[tuple[str, str], Run]) -> bool:
    """Say whether what a run begins after begins some day itself."""
    own = {unit: each for (class_id, unit), each in runs.items() if class_id == run.class_id}
    chain = _chain(run, own)
    return chain[-1] in own and chain.count(chain[-1]) == 1
