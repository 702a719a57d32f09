"""Odd calendars, from files to pages: each is planned, or answered in plain words, and the site stands all the same."""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta
from itertools import pairwise
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import icalendar
import pytest

from tests.examples.harness import OWN_FILES, PLAIN
from trivet.hosts.build import Built, build_site
from trivet.planning.dates import school_days
from trivet.reading.department import read_department

Build = Callable[..., Built]

WEEK = "".join(f"  {day}: regular\n" for day in ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday"))
CLASS = (PLAIN / "school" / "classes.yml").read_text(encoding="utf-8")
SCHOOL = (PLAIN / "school" / "school.yml").read_text(encoding="utf-8")
STORM = "closures:\n  - 2026-12-01 to 2026-12-03, storm\n"
STORM_TO_THE_END = "closures:\n  - 2026-12-02 to 2027-06-04, storm\n"
LETTERS = "rotation:\n  days: A, B, C, D, E, F, G, H\n"


def year(more: str = "", first: str = "2026-08-24", last: str = "2027-06-04", week: str = WEEK) -> str:
    return f"first day: {first}\nlast day: {last}\nweek:\n{week}{more}"


def runs(starts: str = "2026-11-30", more: str = "") -> str:
    return f"runs:\n  - class: p1\n    unit: float-or-sink\n    starts: {starts}\n{more}"


def lost(count: int) -> str:
    """That many weekdays from 2026-11-30 on."""
    days = (date(2026, 11, 30) + timedelta(days=7 * (number // 5) + number % 5) for number in range(count))
    return "    lost:\n" + "".join(f"      - {day}\n" for day in days)


def bells(times: str) -> str:
    return f"day types:\n  regular:\n    P1: {times}\n"


SUNDAYS = f"{WEEK}  Sunday: regular\n"
ALL_CLOSED = "closures:\n  - 2026-08-24 to 2027-06-04, shut\n"

CASES: dict[str, tuple[dict[str, str], tuple[str, ...]]] = {
    "no day of school": ({"calendar.yml": year(ALL_CLOSED)}, ("class-never-meets", "year-without-school")),
    "a year of one day": ({"calendar.yml": year(first="2026-11-30", last="2026-11-30")}, ("year-ends",)),
    "a year of one Sunday": (
        {"calendar.yml": year(first="2026-11-29", last="2026-11-29"), "runs.yml": runs("2026-11-29")},
        ("class-never-meets", "year-without-school"),
    ),
    "a year of four years": ({"calendar.yml": year(last="2029-12-31")}, ("year-too-long",)),
    "a term of one day": ({"calendar.yml": year("terms:\n  - Day, 2026-11-30 to 2026-11-30\n")}, ("past-term",)),
    "a term of one closed day": (
        {"calendar.yml": year("closures:\n  - 2026-12-04, shut\nterms:\n  - Day, 2026-12-04 to 2026-12-04\n")}, (),
    ),
    "eight letters": (
        {"calendar.yml": year(LETTERS), "classes.yml": f"{CLASS}    meets: C, G\n", "runs.yml": runs("2026-12-04")}, (),
    ),
    "a letter that is none of the eight": (
        {"calendar.yml": year(LETTERS), "classes.yml": f"{CLASS}    meets: I\n"}, ("class-never-meets", "unknown-rotation-day"),
    ),
    "29 February": (
        {"calendar.yml": year("days:\n  2028-02-29: regular\n", first="2027-08-23", last="2028-06-02"), "runs.yml": runs("2028-02-29")}, (),
    ),
    "29 February in a year without": ({"calendar.yml": year("days:\n  2027-02-29: regular\n")}, ("date-unreadable",)),
    "a period over noon": ({"bells.yml": bells("11:45-12:40")}, ()),
    "a period over noon, by twelve hours": ({"bells.yml": bells("11:45-12:40").replace("12:40", "1:40")}, ("times-unreadable",)),
    "a period over midnight": ({"bells.yml": bells("23:30-0:30")}, ("times-unreadable",)),
    "a period of no length": ({"bells.yml": bells("9:05-9:05")}, ("times-unreadable",)),
    "a period of 18 hours": ({"bells.yml": bells("6:00-23:59")}, ()),
    "a class that meets on no day": (
        {"bells.yml": f"{bells('8:05-8:57')}  other:\n    P9: 8:05-8:57\n", "classes.yml": CLASS.replace("period: P1", "period: P9")},
        ("class-never-meets", "class-without-days"),
    ),
    "60 lost days": ({"runs.yml": runs(more=lost(60))}, ()),
    "every day lost": ({"runs.yml": runs(more=lost(135))}, ("all-lost",)),
    "the clock goes back": ({"calendar.yml": year(week=SUNDAYS), "runs.yml": runs("2026-11-01")}, ()),
    "the clock goes forward": ({"calendar.yml": year(week=SUNDAYS), "runs.yml": runs("2027-03-14")}, ()),
    "a time zone that there is not": ({"school.yml": SCHOOL.replace("Chicago", "Chicagoo")}, ("unknown-time-zone",)),
    "closed at short notice": ({"calendar.yml": year(f"{STORM}short notice:\n  - 2026-12-01 to 2026-12-03\n")}, ()),
    "closed at short notice to the end": (
        {"calendar.yml": year(f"{STORM_TO_THE_END}short notice:\n  - 2026-12-02 to 2027-06-04\n")}, ("year-ends",),
    ),
    "the hour that the clock leaves out": ({"bells.yml": bells("2:15-3:15")}, ("times-unreadable",)),
    "forty rotation days": (
        {
            "calendar.yml": year(f"rotation:\n  days: {', '.join(f'd{number}' for number in range(40))}\n"),
            "classes.yml": f"{CLASS}    meets: d39\n",
        },
        ("starts-on-no-meeting",),
    ),
}  # fmt: skip

JARGON = re.compile(r"\binvalid\b|Traceback|Error\b|\bNone\b|\bnull\b|schema|regex|datetime|index out", re.IGNORECASE)


@pytest.fixture
def build(tmp_path: Path) -> Build:
    """Build the plain department with other school files."""

    def built(files: dict[str, str]) -> Built:
        root = tmp_path / "project"
        shutil.copytree(PLAIN, root, ignore=shutil.ignore_patterns(*OWN_FILES))
        for name, text in {"runs.yml": runs(), **files}.items():
            (root / "school" / name).write_text(text, encoding="utf-8")
        return build_site(root)

    return built


def events(built: Built) -> list[Any]:
    (file,) = [asset for asset in built.site.assets if asset.path == "calendar/p1.ics"]
    return list(icalendar.Calendar.from_ical(file.content).walk("VEVENT"))


@pytest.mark.parametrize("name", CASES)
def test_odd_years(name: str, build: Build) -> None:
    """The site is built with its year page and calendar, and whatever is wrong is said in plain words, by these codes."""
    files, codes = CASES[name]
    built = build(files)
    assert tuple(sorted(p.code for p in built.problems if p.severity.value != "advice")) == codes, built.problems
    assert not [problem.sentence for problem in built.problems if JARGON.search(problem.sentence)]
    assert "year/" in {page.path for page in built.site.pages}
    planned = [page for page in built.site.pages if page.path == "lesson/p1/float-or-sink/"]
    if planned:
        assert events(built)
    else:
        assert [problem for problem in built.problems if problem.severity.value == "error"]


def test_eight_letters(build: Build, tmp_path: Path) -> None:
    """A class that meets on two of eight letters has its days on these alone."""
    built = build(CASES["eight letters"][0])
    department = read_department(tmp_path / "project").department
    assert department is not None
    letters = {day.date: day.rotation_day for day in school_days(department.school.calendar)}
    held = [event["DTSTART"].dt.date() for event in events(built)]
    assert len(held) == 4 and {letters[day] for day in held} == {"C", "G"}
    assert {(after - before).days for before, after in pairwise(held)} <= {4, 6}


def test_29_february(build: Build) -> None:
    """A lesson stands on 29 February of a leap year."""
    assert events(build(CASES["29 February"][0]))[0]["DTSTART"].dt.date() == date(2028, 2, 29)


def test_over_noon(build: Build) -> None:
    """A lesson over noon ends after it begins, and the sheet's clock goes on from 12:59 to 1:00 for readers."""
    built = build({"bells.yml": bells("12:20-13:15")})
    first = events(built)[0]
    assert (f"{first['DTSTART'].dt:%H:%M}", f"{first['DTEND'].dt:%H:%M}") == ("12:20", "13:15")
    (sheet,) = [page.body for page in built.site.pages if page.path == "lesson/p1/float-or-sink/"]
    assert "12:20 to 1:15" in sheet


def test_60_lost_days(build: Build) -> None:
    """A unit of which 60 weekdays are lost begins on the 61st."""
    assert events(build(CASES["60 lost days"][0]))[0]["DTSTART"].dt.date() == date(2027, 2, 22)


@pytest.mark.parametrize(("name", "hour"), [("the clock goes back", 14), ("the clock goes forward", 13)])
def test_days_on_which_the_clock_changes(name: str, hour: int, build: Build) -> None:
    """On the day of a change a lesson stands at its local time and is as long as its period; US clocks change on these two Sundays."""
    first = events(build(CASES[name][0]))[0]
    start, end = (first[key].dt.replace(tzinfo=ZoneInfo("America/Chicago")).astimezone(UTC) for key in ("DTSTART", "DTEND"))
    assert start == datetime(start.year, start.month, start.day, hour, 5, tzinfo=UTC)
    assert end - start == timedelta(minutes=52)
