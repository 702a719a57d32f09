"""Read kept groups: one lock file, or all that stand under school/groups/."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from trivet.model.lock import Groups, Lock, StationGroup
from trivet.model.problem import Place, Problem, Severity, in_order
from trivet.model.school import School
from trivet.reading.lock_text import canonical_pairs, team_number, write_lock
from trivet.reading.school.checks.lock import check_leavers, check_lock, check_place
from trivet.reading.school.checks.names import check_keys
from trivet.reading.school.sentences import form_answer, read_sentence
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.units import unit_slugs
from trivet.reading.source import read_source
from trivet.reading.strict import load
from trivet.reading.validate import validate

__all__ = ["ReadLocks", "read_lock", "read_locks", "write_lock"]

FOLDER = "school/groups"


@dataclass(frozen=True, slots=True)
class ReadLocks:
    """The locks by (class id, unit slug), what is wrong in them, and their text by file."""

    locks: Mapping[tuple[str, str], Lock]
    problems: tuple[Problem, ...]
    sources: Mapping[str, str]


def read_lock(text: str, file: str) -> tuple[Lock | None, tuple[Problem, ...]]:
    """Return the lock that a text holds, None where it can't be trusted, and what is wrong in it. Places name `file`.

    What hangs on the school (seats, classes, units) is not asked here.
    """
    lock, _, problems = _read(text, file)
    return lock, problems


def read_locks(root: Path, school: School | None, classes: Collection[str] | None = None) -> ReadLocks:
    """Read every lock under school/groups/, or those of some classes. A lock with an error is left out.

    `school` is None where it could not be read.
    """
    locks: dict[tuple[str, str], tuple[Lock, Sheet]] = {}
    problems: list[Problem] = []
    sources: dict[str, str] = {}
    units = unit_slugs(root)
    files = _files(root, problems)
    kept = Counter(path.parent.name for path in files)
    for path in files:
        if classes is not None and path.parent.name not in classes:
            continue
        file = path.relative_to(root).as_posix()
        source = read_source(path, file)
        sources[file] = source.text
        problems += source.problems
        lock, sheet, found = _read(source.text, file) if source.readable else (None, None, ())
        problems += found
        if lock is None or sheet is None:
            continue
        fits = check_lock(sheet, lock, school, units, several=kept[path.parent.name] > 1)
        checked = [*check_place(sheet, lock, path.parent.name, path.stem), *fits]
        problems += checked
        if not any(problem.severity is Severity.ERROR for problem in checked):
            locks[lock.class_id, lock.unit] = (lock, sheet)
    if school is not None:
        problems += check_leavers(locks.values(), school)
    return ReadLocks({key: lock for key, (lock, _) in locks.items()}, in_order(problems), sources)


def _files(root: Path, problems: list[Problem]) -> list[Path]:
    """Return the lock files in order; anything else is answered."""
    found = []
    top = root / FOLDER
    for folder in sorted(top.iterdir()) if top.is_dir() else ():
        if folder.name.startswith("."):
            continue
        entries = sorted(folder.iterdir()) if folder.is_dir() else [folder]
        for entry in entries:
            if entry.parent == folder and entry.suffix == ".yml" and entry.is_file():
                found.append(entry)
            elif not entry.name.startswith(".") and entry.suffix.lower() not in (".md", ".txt"):
                place = Place(entry.relative_to(root).as_posix())
                what = f'nothing reads "{entry.name}" here'
                problems.append(
                    Problem(
                        "unknown-file", Severity.ERROR, place, what, "kept groups stand in groups/CLASS/UNIT.yml; move anything else away"
                    )
                )
    return found


def _read(text: str, file: str) -> tuple[Lock | None, Sheet | None, tuple[Problem, ...]]:
    loaded = load(text, file, empty_brackets=True)
    problems = list(loaded.problems)
    if not loaded.readable:
        return None, None, tuple(problems)
    named = list(check_keys(loaded.value, loaded.places))
    # A key for names is answered once, by its own words, and the schema need not add that it does not know it.
    at = {problem.place for problem in named}
    answered = {problem.place.line for problem in problems if problem.severity is Severity.ERROR}
    fits = validate(loaded.value, "lock", loaded.places, file, form_answer(loaded.places))
    problems += [*named, *(p for p in fits if p.place not in at and p.place.line not in answered)]
    if any(problem.severity is Severity.ERROR for problem in problems):
        return None, None, in_order(problems)
    sheet = Sheet(file, loaded.value, loaded.places)
    drawn_on = read_sentence(sheet, ("drawn_on",), "date", loaded.value["drawn_on"], problems)
    if drawn_on is None:
        return None, None, in_order(problems)
    data = loaded.value
    order = [read_sentence(sheet, ("order", place), "order", text, problems) for place, text in enumerate(data.get("order", ()))]
    lock = Lock(
        unit=data["unit"],
        class_id=data["class"],
        drawn_on=drawn_on,
        engine=data["engine"],
        drawn_from=data["drawn_from"],
        counted=tuple(data.get("counted", ())),
        inputs=data.get("inputs", ""),
        seal=data.get("seal", ""),
        groups=_groups(data["groups"]),
        repeats=data.get("repeats", 0),
        pair_repeats=data.get("pair_repeats", 0),
        proved_minimum=data.get("proved_minimum"),
        certificate=dict(sorted(data.get("certificate", {}).items())),
        leveled=data.get("how") == "leveled",
        order=tuple(each for each in order if each is not None),
    )
    return lock, sheet, in_order(problems)


def _groups(data: Mapping[str, Any]) -> Groups:
    """Return the three groups, an empty one for a letter that is not there, everything in canonical order."""
    return {letter: _group(data.get(letter, {"teams": {}, "pairs": []})) for letter in "ABC"}


def _group(data: Mapping[str, Any]) -> StationGroup:
    teams = {
        team: {student: tuple(data["teams"][team][student]) for student in sorted(data["teams"][team])}
        for team in sorted(data["teams"], key=team_number)
    }
    return StationGroup(teams, canonical_pairs(data["pairs"]))
