"""Why a plan is as it is: a note for each decision that a teacher may question."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date

from trivet.model.department import Department
from trivet.model.plan import Day, MaterialTotal, Note
from trivet.model.school import Calendar, Room
from trivet.model.station import Kind
from trivet.model.wish import Wish
from trivet.planning.catch_up import places
from trivet.planning.cautions import hazards_of
from trivet.planning.class_size import area_advice, class_size_advice
from trivet.planning.costs import DayParts, overhead
from trivet.planning.halves import halves, spoken
from trivet.planning.hazards import POLICY
from trivet.planning.materials import DEVICE, at_station
from trivet.planning.say import STATION_NAMES, say_closed, say_count, say_date, say_dates, say_gap, say_list
from trivet.planning.sharing import cure_of
from trivet.planning.timed_runs import TimedRun
from trivet.planning.where import Square
from trivet.planning.wishes import asked, met, refusals, why


def notes(
    timed: TimedRun,
    square: Square | None,
    totals: Sequence[MaterialTotal],
    department: Department,
    wishes: Sequence[Wish] = (),
) -> tuple[Note, ...]:
    """Return the notes of one run in the order in which questions come up: time, places, things, safety.

    `square` is None where groups are not public. Nothing here says how groups were made.
    """
    room = department.school.rooms.get(timed.school_class.room)
    titles = {slug: unit.title for slug, unit in department.units.items()}
    found = [
        *_begins(timed, titles),
        *_station_minutes(timed),
        *_days(timed, titles),
        *_closed(timed, department.school.calendar),
        *_expectations(timed),
        *_write_up(timed),
        *_launch(timed),
        *_left_over(timed),
        *_pre_check(timed),
        *_waiting(timed, square),
        *_order(timed, square, wishes),
        *_devices(timed, totals),
        *_safety(timed, room),
    ]
    return tuple(Note(code, text) for code, text in found)


Found = Iterator[tuple[str, str]]


def _begins(timed: TimedRun, titles: Mapping[str, str]) -> Found:
    """Why it begins when it does, where that was worked out, and whether it keeps its last date."""
    run, first, last = timed.run, say_date(timed.days[0].date), say_date(timed.days[-1].date)
    if run.after:
        gap = f", after {say_gap(run.gap_days)}" if run.gap_days else ""
        yield "begins", f"It begins when {titles.get(run.after, run.after)} has ended{gap}: on {first}."
    if run.by is not None and timed.days[-1].date <= run.by:
        late = " It begins as late as that allows." if run.begins == "by" else ""
        yield "by", f"It is to end by {say_date(run.by)}, and ends on {last}.{late}"
    elif run.by is not None:
        yield "by", f"It was to end by {say_date(run.by)}, and ends on {last}."


def _station_minutes(timed: TimedRun) -> Found:
    minutes, allowed, needed = timed.timetable.station_minutes, timed.allowed, timed.needed
    longest = max(needed.stations, key=lambda station: station.half_minutes)
    same = {2 * each.minutes for each in timed.held} == {2 * minutes}
    first = f"Each station lasts {minutes} min, the same in all rounds. " if same else f"Each station still to come lasts {minutes} min. "
    if allowed.differ and not same:
        lengths = say_list([str(each.minutes) for each in timed.held])
        first = f"Rounds last {lengths} min: the unit prefers more minutes to rounds of one length, up to {allowed.target}. "
    first += f"The longest, {STATION_NAMES[longest.kind]}, needs {spoken(longest.half_minutes)}"
    if allowed.differ and not same:
        yield "station_minutes", f"{first}."
    elif minutes < allowed.target:
        yield "station_minutes", f"{first}; {allowed.target} were wanted, but {_tightest(timed)} holds no more."
    elif timed.unit.stretch and minutes == needed.most:
        yield "station_minutes", f"{first}; the unit stretches to its longest round of {needed.most}."
    elif needed.half_minutes <= 2 * needed.least and minutes == needed.least:
        yield "station_minutes", f"{first}; no round is shorter than {needed.least}."
    elif minutes == needed.most:
        yield "station_minutes", f"{first}; no round is longer than {needed.most}."
    elif 2 * minutes == needed.half_minutes:
        yield "station_minutes", f"{first}."
    else:
        yield "station_minutes", f"{first}; {spoken(2 * minutes - needed.half_minutes)} more let every team finish."


def _tightest(timed: TimedRun) -> str:
    """The first day that could not hold one minute more."""
    evidence = timed.costs.evidence if timed.timetable.every_evidence else 0
    for place, meeting in enumerate(timed.meetings):
        parts = timed.timetable.day(place)
        if parts is None or not parts.rounds:
            continue
        more = 2 * (timed.timetable.station_minutes + 1) * parts.rounds
        if overhead(parts, timed.costs) + more + evidence > 2 * meeting.minutes:
            return f"{say_date(meeting.date)} ({meeting.minutes} min)"
    return "a day of the shortest plan"


def _days(timed: TimedRun, titles: Mapping[str, str]) -> Found:
    first, last = say_date(timed.meetings[0].date), say_date(timed.meetings[-1].date)
    marks = _marks(timed)
    text = f"{say_count(len(timed.days), 'day').capitalize()}: from {first} on, no plan ends before {last}."
    if marks:
        text = (
            f"{say_count(len(timed.days), 'day').capitalize()}. What was left on {say_date(marks[-1])} was planned anew: no plan of it ends"
        )
        text += f" before {last}. The days before it stay as they were."
    if max(timed.timetable.rounds) == 1:
        two = overhead(DayParts(2), timed.costs) + 4 * timed.allowed.low
        text += f" Two rounds in one period would need {spoken(two)} min or more."
    yield "days", text
    yield from _passed_over(timed)
    lost = sorted(day for day in timed.run.lost if day <= timed.meetings[-1].date)
    if lost:
        yield "lost", f"{say_dates(lost)}: lost, so nothing is planned."
    yield from _behind(timed)
    if timed.follows:
        still = f"The class is still at {titles.get(timed.follows, timed.follows)} on {say_date(timed.run.starts)}"
        yield "follows", f"{still}, so this unit begins when that one has ended."
    if timed.whole_class:
        yield (
            "whole_class",
            "The whole class does one kind of station together in each round, to learn how it goes; the teacher walks and watches roles.",
        )


def _passed_over(timed: TimedRun) -> Found:
    """Meetings that hold nothing, neither planned nor recorded: before the last round too short for one, after it for the write-up."""
    busy = {*(day.date for day in timed.days), *timed.run.lost}
    passed = [meeting.date for meeting in timed.meetings if meeting.date not in busy]
    last_round = max(timed.round_dates, default=date.min)
    rounds = [day for day in passed if day < last_round]
    minutes = timed.allowed.low if timed.allowed.differ else timed.timetable.station_minutes
    for days, what in ((rounds, f"a round of {minutes} min"), (passed[len(rounds) :], "the write-up")):
        if days:
            yield "passed_over", f"{say_dates(days)}: the period is too short for {what}, so nothing is planned."


def _closed(timed: TimedRun, calendar: Calendar) -> Found:
    """Closed days between the unit's first day and its last: what the dates step over."""
    inside = range(timed.days[0].date.toordinal(), timed.days[-1].date.toordinal())
    told = set()
    for closure in calendar.closures:
        days = map(date.fromordinal, range(closure.first.toordinal(), closure.last.toordinal() + 1))
        if any(day.weekday() in calendar.weekly and day.toordinal() in inside for day in days):
            stretch = say_date(closure.first) + (f" to {say_date(closure.last)}" if closure.last > closure.first else "")
            told.add((closure.first, f"{stretch}: {say_closed(closure.reason)}, so nothing is planned."))
    yield from (("closed", text) for _, text in sorted(told))


def _marks(timed: TimedRun) -> list[date]:
    """The dates from which on the rest was planned anew: recorded ones of the run's meetings, and what came at short notice."""
    run = timed.run
    recorded = {*run.lost, *(each.date for each in run.done), *(each.date for each in run.half), *timed.noticed}
    return sorted(day for day in recorded if timed.meetings[0].date <= day <= timed.meetings[-1].date)


def _behind(timed: TimedRun) -> Found:
    """What was missed or stopped, and what follows from it."""
    for letters, numbers in _missed(timed).items():
        groups, goes = (f"Group {letters[0]}", "goes") if len(letters) == 1 else (f"Groups {say_list(letters)}", "go")
        rounds, first = (f"round {numbers[0]}", "that station") if len(numbers) == 1 else (f"rounds {say_list(numbers)}", "those stations")
        yield "missed", f"{groups} missed {rounds} and {goes} to {first} first; what is left takes as few rounds as it can."
    for each in timed.held:
        if each.half:
            stopped = f"Round {each.round} was stopped on {say_date(each.date)} after {each.minutes} min. It goes on at the same places"
            yield "half", f"{stopped} with a recap of {spoken(timed.costs.recap)} min in place of a launch."


def _missed(timed: TimedRun) -> dict[tuple[str, ...], list[str]]:
    """The rounds that the same groups missed, by their letters."""
    found: dict[tuple[str, ...], list[str]] = {}
    for number, letters in sorted(timed.missed.items()):
        found.setdefault(tuple(letters), []).append(str(number))
    return found


def _expectations(timed: TimedRun) -> Found:
    if timed.costs.expectations:
        which = "one of the class's first runs" if timed.full_expectations else "the class knows them"
        yield "expectations", f"Expectations take {spoken(timed.costs.expectations)} min on the first day: {which}."


def _write_up(timed: TimedRun) -> Found:
    minutes = spoken(timed.timetable.write_up)
    missing = [day.date for day in timed.days if _has(day, "station") and not _has(day, "evidence")]
    if timed.unit.write_up.at_home:
        yield "write_up", "The write-up is done at home and takes no minutes here."
    elif timed.timetable.every_evidence:
        yield "write_up", f"The write-up takes {minutes} min, since an evidence line was written on every day with a round."
    else:
        yield "write_up", f"The write-up takes {minutes} min, since not every day has time for its evidence line."
    if missing:
        yield "evidence", f"{say_dates(missing)}: no time for a written evidence line; tell it in the reflection."


def _has(day: Day, kind: str) -> bool:
    return any(block.kind == kind for block in day.blocks)


def _launch(timed: TimedRun) -> Found:
    made = timed.launch
    text = (
        f"A launch takes {spoken(made.half_minutes)} min: {spoken(made.read)} to read (the longest card has {made.words} words; "
        f"three of four students in grade {made.grade} read {made.words_a_minute} a minute or more), "
        f"{spoken(made.explain)} to explain to a partner, {spoken(made.ask)} to ask your partner"
    )
    if timed.whole_class:
        yield "launch", f"{text}. The teacher asks while teams work."
    else:
        yield "launch", f"{text}, {spoken(made.spot_checks)} for spot checks of up to {say_count(made.teams, 'team')}."


def _left_over(timed: TimedRun) -> Found:
    for day in timed.days:
        if not day.surplus_minutes:
            continue
        left = f"{say_date(day.date)} keeps {spoken(halves(day.surplus_minutes))} min"
        if _has(day, "station"):
            yield "left_over", f"{left} at its end: reflection and pack-up have all they can use."
        else:
            yield "left_over", f"{left} at its end for make-ups and the next unit's pre-check."


def _pre_check(timed: TimedRun) -> Found:
    if timed.pre_check is not None:
        yield "pre_check", f"The pre-check stands at the end of {say_date(timed.pre_check.date)}, two school days or more before round 1."
    elif timed.unit.pre_check:
        auto = " Without it, `group by: auto` draws mixed groups." if timed.unit.group_by == "auto" else ""
        yield "pre_check", f"There is no meeting for the pre-check two school days or more before round 1, so it is left out.{auto}"


def _waiting(timed: TimedRun, square: Square | None) -> Found:
    """Groups without a station in a round that is held for others."""
    if square is None or not timed.missed:
        return
    for number, where in enumerate(places(square, timed.missed), start=1):
        waiting = [letter for letter in square if letter not in where and letter not in timed.missed.get(number, ())]
        if waiting and where:
            groups, have = (f"Group {waiting[0]}", "has") if len(waiting) == 1 else (f"Groups {say_list(waiting)}", "have")
            yield (
                "waiting",
                f"{groups} {have} no station to go to in round {number}: finished early, the write-up, or the next unit's pre-check.",
            )


def _order(timed: TimedRun, square: Square | None, wishes: Sequence[Wish]) -> Found:
    if timed.whole_class:
        return
    if square is None:
        yield "order", "Groups are not shown here. Which group begins where is decided with them; every group meets every station once."
        return
    yield "order", "Every group meets every station once. Who begins where evens out over the year, then who goes where next."
    wanted = asked(wishes)
    if wanted:
        count = len(met(wanted, square))
        all_met = count == len(wanted)
        yield "order_asked", f"{count} of {len(wanted)} wishes on the order are met{'' if all_met else ', the most that any order gives'}."
    for refusal in refusals(wishes, square):
        yield "order_wish", why(refusal)


def _devices(timed: TimedRun, totals: Sequence[MaterialTotal]) -> Found:
    for total in totals:
        if total.item == DEVICE and total.short > 0 and total.have is not None:
            at_once = max((group.students for group in at_station(timed.headcount, whole_class=timed.whole_class)), default=0)
            work_in, whole_class = timed.unit.online.work_in, timed.whole_class
            cure = cure_of(at_once, int(total.have), int(total.short), work_in, whole_class=whole_class)
            yield "devices", f"{total.need} devices are in use at once and the room has {total.have}: {cure}."


def share_devices(*, whole_class: bool) -> str:
    """Return what students do where devices are short."""
    return "let trios share, or halves take turns" if whole_class else "let trios share a device"


def _safety(timed: TimedRun, room: Room | None) -> Found:
    if not hazards_of(timed.unit):
        return
    students = timed.headcount.students
    at_once = max((group.students for group in at_station(timed.headcount, whole_class=timed.whole_class)), default=0)
    for code, advice in (
        ("class_size", class_size_advice(students, at_once)),
        ("area", area_advice(students, timed.school_class.adults, room.area_sq_ft if room else None)),
    ):
        if advice:
            yield code, advice
    if timed.run.second_adult is Kind.HANDS_ON:
        yield "second_adult", "A second adult is at the hands-on station."
    yield "safety", POLICY
