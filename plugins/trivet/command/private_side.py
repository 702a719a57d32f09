"""What a command may take from the private folder: the class's private list, the key of the seals, leveled groups."""

from __future__ import annotations

import secrets
from collections.abc import Collection
from dataclasses import dataclass, replace
from pathlib import Path

from trivet.model.department import Department
from trivet.model.lock import Lock
from trivet.model.problem import Problem, Severity
from trivet.model.roster import Roster
from trivet.model.school import SchoolClass
from trivet.planning.grouping.experience import Experience

KEY_BYTES = 32


@dataclass(frozen=True, slots=True)
class PrivateSide:
    """The private folder of a project, None where there is none."""

    root: Path
    folder: Path | None

    def shown(self, path: Path) -> str:
        """Return a path as it may be printed: relative to the project, or to the private folder where that lies elsewhere."""
        for base, before in ((self.root, ""), (self.folder, "(private folder)/")):
            if base is not None and path.is_relative_to(base):
                return before + path.relative_to(base).as_posix()
        return path.name

    def roster(self, school_class: SchoolClass) -> tuple[Roster | None, tuple[Problem, ...]]:
        """Return the class's private list, None where there is none or it has errors; problems name no line of it."""
        from trivet.reading.roster import read_roster

        if self.folder is None:
            return None, ()
        roster, problems = read_roster(self.folder, school_class)
        return roster, tuple(replace(p, place=replace(p.place, file=self.shown(Path(p.place.file)))) for p in problems)

    def experience(self, school_class: SchoolClass, units: Collection[str]) -> tuple[Experience, tuple[Problem, ...]]:
        """Return leveled groups, absences and pre-check scores of a class; problems quote no line of the lists."""
        from trivet.reading.absences import read_absences
        from trivet.reading.pre_check import read_pre_checks

        if self.folder is None:
            return Experience(), ()
        absences, problems = read_absences(self.folder, school_class)
        scores, more = read_pre_checks(self.folder, school_class, units)
        shown = tuple(replace(p, place=replace(p.place, file=self.shown(Path(p.place.file)))) for p in (*problems, *more))
        return Experience(self.leveled(school_class.id), absences, scores), shown

    def key(self) -> bytes:
        """Return the key of the seals, made on first use and readable by its owner alone."""
        if self.folder is None:
            raise AssertionError("a seal needs a private folder")
        path = self.folder / "key"
        if not path.exists():
            path.touch(mode=0o600)
            path.write_text(secrets.token_hex(KEY_BYTES) + "\n", encoding="ascii")
        return bytes.fromhex(path.read_text(encoding="ascii"))

    def leveled_path(self, class_id: str, unit: str) -> Path | None:
        """Return where leveled groups of a class and unit stand, or would."""
        return None if self.folder is None else self.folder / "groups" / class_id / f"{unit}.yml"

    def leveled(self, class_id: str) -> dict[str, Lock]:
        """Return the leveled groups of a class by unit; a file that can't be read is left out."""
        from trivet.reading.lock import read_lock

        found = {}
        folder = None if self.folder is None else self.folder / "groups" / class_id
        for path in sorted(folder.glob("*.yml")) if folder is not None and folder.is_dir() else ():
            lock, _ = read_lock(path.read_text(encoding="utf-8"), self.shown(path))
            if lock is not None:
                found[path.stem] = lock
        return found


def private_side(root: Path, department: Department) -> PrivateSide:
    """Return the private folder that this department uses."""
    from trivet.reading.private import private_folder

    return PrivateSide(root, private_folder(root, department.school.settings))


def has_errors(problems: tuple[Problem, ...]) -> bool:
    """Say whether one of the problems is an error."""
    return any(problem.severity is Severity.ERROR for problem in problems)
