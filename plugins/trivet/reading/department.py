"""Read a whole department: its school, its units and its kept groups, from committed files alone."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from trivet.model.department import Department
from trivet.model.problem import Place, Problem, Severity, in_order
from trivet.model.unit import Unit
from trivet.reading import versions
from trivet.reading.checks import code_files, folders, tables
from trivet.reading.lock import read_locks
from trivet.reading.school.read import read_school
from trivet.reading.school.units import unit_slugs
from trivet.reading.source import read_source
from trivet.reading.unit import ReadUnit, read_unit


@dataclass(frozen=True, slots=True)
class ReadDepartment:
    """`department` is None where the school can't be read; a unit with an error is left out of it and named in `units_with_problems`.

    `sources` are the texts of all files that were read, by name.
    """

    department: Department | None
    units_with_problems: tuple[str, ...]
    problems: tuple[Problem, ...]
    sources: Mapping[str, str]


def read_department(root: Path, only: str = "") -> ReadDepartment:
    """Read the project at `root`; never raises on any content, never opens the private folder, never follows a link.

    `only`: read this unit and those that its classes run too, which its dates hang on; the others are left out unread.
    """
    school = read_school(root)
    slugs = tuple(slug for slug in unit_slugs(root) if not _is_linked(root, slug))
    runs = school.school.runs if school.school else ()
    classes = {run.class_id for run in runs if run.unit == only} if only else None
    wanted = slugs if classes is None else {only, *(run.unit for run in runs if run.class_id in classes)}
    # Without the list of reviewed simulations, no unit can be blamed for its code.
    simulations = school.school.settings.simulations if school.school else slugs
    units = [read_unit(root / "units" / slug, slug, root, simulations, slugs) for slug in slugs if slug in wanted]
    locks = read_locks(root, school.school, classes)
    sources = {**school.sources, **locks.sources}
    for unit in units:
        sources |= unit.sources
    problems = [*school.problems, *locks.problems, *(problem for unit in units for problem in unit.problems)]
    answered = {problem.place.file for problem in problems if problem.code == "file-is-link"}
    problems += (problem for problem in folders.check_links(root) if problem.place.file not in answered)
    problems += _beside_units(root, slugs, sources)
    problems += _notes(root, sources)
    department = None
    if school.school:
        department = Department(school=school.school, units=_sound(units), locks=locks.locks, places=school.places)
    return ReadDepartment(department, tuple(unit.slug for unit in units if unit.unit is None), in_order(problems), sources)


def _is_linked(root: Path, slug: str) -> bool:
    return (root / "units").is_symlink() or (root / "units" / slug).is_symlink()


def _sound(units: list[ReadUnit]) -> dict[str, Unit]:
    return {each.slug: each.unit for each in units if each.unit}


def _notes(root: Path, sources: dict[str, str]) -> Iterator[Problem]:
    """Look at the notes that people leave for each other under school/: they are shared too."""
    for name in folders.files_of(root / "school") if not (root / "school").is_symlink() else ():
        if name.endswith(".md"):
            source = read_source(root / "school" / name, f"school/{name}")
            sources[f"school/{name}"] = source.text
            yield from source.problems
            yield from versions.check(source.text, f"school/{name}")
            yield from tables.check(f"school/{name}", source.text)


def _beside_units(root: Path, slugs: tuple[str, ...], sources: dict[str, str]) -> Iterator[Problem]:
    """Look at what lies under units/ and belongs to no unit: the home page, the guide, stray folders."""
    top = root / "units"
    if not top.is_dir() or top.is_symlink():
        return
    for entry in sorted(top.iterdir()):
        if entry.name in slugs or entry.name.startswith(".") or entry.is_symlink():
            continue
        files = folders.files_of(entry) if entry.is_dir() else ()
        where = f"units/{entry.name}/" if entry.is_dir() else "units/"
        folder = entry if entry.is_dir() else top
        names = (*files, "index.md") if (entry / "index.md").is_file() else files
        names = names if entry.is_dir() else (entry.name,)
        if entry.is_dir() and entry.name != folders.GUIDE and any(name.endswith(".md") for name in names):
            what = "this folder holds pages and no index.md, so it is no unit"
            yield Problem(
                "index-missing", Severity.ERROR, Place(where + "index.md"), what, "write index.md, or move the pages to units/guide/"
            )
        yield from code_files.check(folder, where, names, reviewed=False, slug="")
        for name in names:
            if name.endswith(".md"):
                source = read_source(folder / name, where + name)
                sources[where + name] = source.text
                yield from source.problems
                yield from versions.check(source.text, where + name)
                yield from tables.check(where + name, source.text)
                yield from folders.check_guide(where + name, source.text)
