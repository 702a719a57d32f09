"""Do kept groups fit the class, the unit and the folder that they stand in?"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Iterator
from datetime import date

from trivet.model.lock import Lock
from trivet.model.problem import Problem
from trivet.model.school import Run, School, SchoolClass
from trivet.reading.school.checks.known import not_known, remedy_for
from trivet.reading.school.sheet import Sheet

Drawn = tuple[Lock, Sheet]


def check_place(sheet: Sheet, lock: Lock, folder: str, name: str) -> Iterator[Problem]:
    """Yield what speaks against the folder (the class) and the file name (the unit) of a public lock."""
    if lock.leveled:
        where = f"private/groups/{folder}/{name}.yml"
        yield sheet.error(
            "leveled-in-public", ("how",), "leveled groups tell who is at which level, and this file is shared", f"move it to {where}"
        )
    elif lock.order:
        what = "wishes on the order of stations stand here, and these groups are not leveled"
        yield sheet.error("order-misplaced", ("order",), what, "write them into school/runs.yml, under `order:` of this run", at_key=True)
    for key, said, stands in (("class", lock.class_id, folder), ("unit", lock.unit, name)):
        if said != stands:
            what = f'the {key} is "{said}", and the file stands under "{stands}"'
            yield sheet.error(
                "lock-misplaced", (key,), what, f"write {key}: {stands}, or move the file to groups/{lock.class_id}/{lock.unit}.yml"
            )


def check_lock(sheet: Sheet, lock: Lock, school: School | None, units: Collection[str], *, several: bool) -> Iterator[Problem]:
    """Yield unknown classes, units and students, students who stand in two teams or in no pair, and a class that has grown.

    `several` says whether the class has other kept groups too.
    """
    if lock.unit not in units:
        yield not_known(sheet, ("unit",), "unit", lock.unit, units, home="units/")
    for index, slug in enumerate(lock.counted):
        if slug == lock.unit:
            yield sheet.error("lock-counts-itself", ("counted", index), f"{slug} is counted as history of itself", "leave it out")
        elif slug not in units:
            yield sheet.error("unknown-unit", ("counted", index), f'there is no unit "{slug}"', remedy_for(slug, units, "units/"))
    yield from _seated_once(sheet, lock)
    yield from _pairs(sheet, lock)
    if school is None:
        return
    school_class = school.classes.get(lock.class_id)
    if school_class is None:
        yield not_known(sheet, ("class",), "class", lock.class_id, school.classes, home="school/classes.yml")
    else:
        yield from _strangers(sheet, lock, school_class)
        yield from _joined(sheet, lock, school_class, _run(lock, school), several=several)


def check_leavers(drawn: Iterable[Drawn], school: School) -> Iterator[Problem]:
    """Yield a warning where the last groups of a class still hold students who have left; groups of earlier units are history."""
    last: dict[str, Drawn] = {}
    kept_groups: Counter[str] = Counter()
    for lock, sheet in drawn:
        kept_groups[lock.class_id] += 1
        kept = last.get(lock.class_id)
        if kept is None or _when(kept[0], school) < _when(lock, school):
            last[lock.class_id] = (lock, sheet)
    for class_id in sorted(last):
        lock, sheet = last[class_id]
        gone = {school.classes[class_id].number(seat) for seat in school.classes[class_id].gone}
        for path, student in _seats(lock):
            if student in gone:
                what = f"{student} has left the class since these groups were drawn"
                yield sheet.warning("lock-behind-class", path, what, _fit(lock, several=kept_groups[class_id] > 1), at_key=True)


def _seats(lock: Lock) -> Iterator[tuple[tuple[str | int, ...], str]]:
    for letter, group in lock.groups.items():
        for team, students in group.teams.items():
            for student in students:
                yield ("groups", letter, "teams", team, student), student


def _seated_once(sheet: Sheet, lock: Lock) -> Iterator[Problem]:
    first: dict[str, tuple[str | int, ...]] = {}
    for path, student in _seats(lock):
        if student in first:
            team = first[student][3]
            yield sheet.error(
                "lock-seat-twice", path, f"{student} is in team {team} too", "leave one of the two out, or draw again", at_key=True
            )
        first.setdefault(student, path)


def _pairs(sheet: Sheet, lock: Lock) -> Iterator[Problem]:
    for letter, group in lock.groups.items():
        path = ("groups", letter, "pairs")
        paired = Counter(student for pair in group.pairs for student in pair)
        wrong = sorted({*paired, *group.students} - {s for s in group.students if paired[s] == 1})
        if wrong:
            said = ", ".join(wrong)
            what = f"each student of group {letter} stands in one pair, which is not so for {said}"
            yield sheet.error("lock-pairs", path, what, "mend the pairs, or draw again", at_key=True)


def _strangers(sheet: Sheet, lock: Lock, school_class: SchoolClass) -> Iterator[Problem]:
    known = {school_class.number(seat) for seat in (*school_class.seats, *school_class.gone)}
    for path, student in _seats(lock):
        if student not in known:
            what = f"{student} is no number of class {school_class.id}"
            yield sheet.error("lock-unknown-seat", path, what, _draw_again(lock), at_key=True)


def _joined(sheet: Sheet, lock: Lock, school_class: SchoolClass, run: Run | None, *, several: bool) -> Iterator[Problem]:
    seated = {student for _, student in _seats(lock)}
    joins = {each.seat: each.first for each in school_class.late}
    # A late student is missing only from what begins after the student has come.
    starts = date.max if run is None else run.starts if run.begins == "date" else lock.drawn_on
    missing = [school_class.number(seat) for seat in school_class.seats if joins.get(seat, date.min) <= starts]
    missing = [student for student in missing if student not in seated]
    if missing:
        what = f"{', '.join(missing)} joined the class after these groups were drawn"
        remedy = f"{_fit(lock, several=several)}; where a number came later than this unit, write its date under `late` in classes.yml"
        yield sheet.warning("lock-behind-class", ("groups",), what, remedy, at_key=True)


def _fit(lock: Lock, *, several: bool) -> str:
    """Say how kept groups are fitted to a class that has changed: all coming ones at once, where there are `several`."""
    if several:
        return f"fit the groups of all coming units with trivet groups --year --class {lock.class_id} --change --write"
    return f"fit them with trivet groups {lock.unit} --class {lock.class_id} --change --write"


def _draw_again(lock: Lock) -> str:
    return f"draw again with trivet groups {lock.unit} --class {lock.class_id} --write"


def _run(lock: Lock, school: School) -> Run | None:
    return next((run for run in school.runs if (run.class_id, run.unit) == (lock.class_id, lock.unit)), None)


def _when(lock: Lock, school: School) -> tuple[date, date, str]:
    run = _run(lock, school)
    return (run.starts if run and run.begins == "date" else lock.drawn_on, lock.drawn_on, lock.unit)
