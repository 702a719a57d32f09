"""Read everything under school/ but the kept groups, with all that is wrong in it at once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from trivet.model.places import Places
from trivet.model.problem import Problem, in_order
from trivet.model.school import School
from trivet.reading.school.bells import read_bells
from trivet.reading.school.calendar import read_calendar
from trivet.reading.school.checks.calendar import check_calendar, check_short_notice
from trivet.reading.school.checks.classes import Around, check_classes, sound_classes
from trivet.reading.school.checks.folder import KINDS, check_folder
from trivet.reading.school.checks.names import check_tables
from trivet.reading.school.checks.runs import check_run_dates, check_run_names, sound_runs
from trivet.reading.school.checks.settings import check_simulations, check_site
from trivet.reading.school.classes import read_classes
from trivet.reading.school.expectations import read_expectations
from trivet.reading.school.inventory import read_inventory
from trivet.reading.school.reader import Reader
from trivet.reading.school.roles import read_roles
from trivet.reading.school.rooms import read_rooms
from trivet.reading.school.runs import read_runs
from trivet.reading.school.settings import read_settings
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.units import unit_slugs


@dataclass(frozen=True, slots=True)
class ReadSchool:
    """`school` is None where a file could not be read. `places` and `sources` are by file (`school/bells.yml`)."""

    school: School | None
    places: Mapping[str, Places]
    problems: tuple[Problem, ...]
    sources: Mapping[str, str]


def read_school(root: Path) -> ReadSchool:
    """Read the school of the project at `root`; never raises, and never opens the private folder.

    A class that names no teacher, room or period, and a run that names no class or unit, is answered with an error and left
    out of the school, so that the rest can be shown beside the error.
    """
    reader = Reader(root)
    sheets = {kind: reader.sheet(kind) for kind in KINDS}
    school = _school(reader, sheets, unit_slugs(root))
    named = sheets["calendar"].data.get("files", ()) if sheets["calendar"] else None
    reader.add(check_folder(root / "school", named))
    reader.add(check_tables(root))
    return ReadSchool(school, reader.places, in_order(reader.problems), reader.sources)


def _school(reader: Reader, sheets: Mapping[str, Sheet | None], units: tuple[str, ...]) -> School | None:
    settings = reader.part(sheets["school"], read_settings)
    bells = reader.part(sheets["bells"], read_bells)
    calendar = reader.part(sheets["calendar"], read_calendar)
    classes = reader.part(sheets["classes"], read_classes)
    rooms = reader.part(sheets["rooms"], read_rooms)
    inventory = reader.part(sheets["inventory"], read_inventory) or ()
    runs = reader.part(sheets["runs"], read_runs) or ()

    if sheets["school"] and settings:
        reader.add(check_simulations(sheets["school"], settings, units))
        reader.add(check_site(sheets["school"], settings, reader.root / "mkdocs.yml"))
    if sheets["calendar"] and calendar and bells:
        reader.add(check_calendar(sheets["calendar"], calendar, bells))
    if sheets["calendar"] and calendar and bells and settings and sheets["calendar"].data.get("files"):
        calendar = reader.calendar_files(sheets["calendar"], calendar, bells, settings.time_zone)
    if sheets["calendar"] and calendar:
        reader.add(check_short_notice(sheets["calendar"], calendar))
    around = Around(settings, rooms, bells, calendar, _periods(sheets["bells"]))
    if sheets["classes"] and classes:
        reader.add(check_classes(sheets["classes"], classes, around))
    if sheets["runs"]:
        reader.add(check_run_names(sheets["runs"], runs, _ids(sheets["classes"]), units))
    if sheets["runs"] and classes and calendar and bells:
        reader.add(check_run_dates(sheets["runs"], runs, classes, calendar, bells))

    if reader.broken or not (settings and bells and calendar and classes and rooms):
        return None
    sound = sound_classes(classes, around)
    return School(
        settings=settings,
        bells=bells,
        calendar=calendar,
        classes=sound,
        rooms=rooms,
        roles=read_roles(sheets["roles"]),
        expectations=read_expectations(sheets["expectations"]),
        inventory=inventory,
        runs=sound_runs(runs, sound, units, calendar),
    )


def _periods(sheet: Sheet | None) -> tuple[str, ...]:
    """Return the names of periods that bells.yml gives, also those whose times can't be so."""
    return tuple(name for written in sheet.data["day types"].values() for name in written) if sheet else ()


def _ids(sheet: Sheet | None) -> tuple[str, ...] | None:
    """Return the ids that classes.yml gives, also those of classes that can't be used; None where it could not be read."""
    return tuple(sheet.data["classes"]) if sheet else None
