"""`trivet plan --week` and `trivet plan --what-if`: the week in words, and what would change, with nothing written."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

import pytest

from tests.command.small_project import run
from tests.support.project import copy_project
from trivet.command.plan import plan

WEEK = ["--week", "2026-12-03"]


@pytest.fixture(scope="module")
def project(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the demo."""
    return copy_project(tmp_path_factory.mktemp("demo") / "project")


def digest(folder: Path) -> str:
    """Of all files of a folder, names included."""
    found = hashlib.sha256()
    for path in sorted(folder.rglob("*")):
        found.update(str(path.relative_to(folder)).encode() + (path.read_bytes() if path.is_file() else b""))
    return found.hexdigest()


def test_the_week_in_words(project: Path) -> None:
    """The week that holds the date: each school day with its bells, lessons by the clock, who is where, write-ups and pre-checks."""
    done = run(plan, project, WEEK)
    assert done.exit_code == 0
    for part in (
        "Week of Monday, November 30",
        "Wednesday, December 2: regular, A day",
        "  08:05 to 08:57  p1  Float or sink?: round 3 of 3 (A teacher-led, B online, C hands-on)",
        "  08:05 to 08:57  p1  Float or sink?: write-up",
        "  13:15 to 14:07  k6a  Moving plates: round 2 of 3 (all hands-on)",
        "p4  Float or sink?: pre-check, 5 min",
    ):
        assert part in done.output
    only = run(plan, project, [*WEEK, "--class", "k6a"]).output
    assert "k6a" in only and "p1" not in only and "  no lesson of a unit" in only
    assert "Wednesday, November 25: no school (fall break)" in run(plan, project, ["--week", "2026-11-25"]).output


def test_the_week_as_data(project: Path) -> None:
    """The same as data."""
    data = json.loads(run(plan, project, [*WEEK, "--json", "--class", "p1"]).output)
    assert data["week"] == "2026-11-30"
    assert [[each["rounds"] for each in one["lessons"]] for one in data["days"]] == [[[1]], [[2]], [[3]], [[]], []]
    assert data["days"][3]["lessons"][0]["write_up"] is True


def test_a_lost_wednesday(project: Path) -> None:
    """What moves is said run by run, then the lines that would make it so; nothing is written."""
    before = digest(project)
    done = run(plan, project, ["--what-if", "2026-12-02 lost"])
    assert done.exit_code == 0
    for part in (
        "If Wednesday, December 2 were lost:",
        "p1, Float or sink?\n  round 3 moves from Wednesday, December 2 to Thursday, December 3\n",
        "the write-up moves from Thursday, December 3 to Friday, December 4",
        "k6a, Moving plates\n  round 2 moves from Wednesday, December 2 to Friday, December 4",
        "Nothing changes for the other 13 runs.",
        "Nothing was written. To make it so:",
        "p1, float-or-sink: write `lost:` with `- 2026-12-02` below it, in the run at school/runs.yml:",
    ):
        assert part in done.output, part
    assert digest(project) == before


def test_why_a_round_moves(project: Path) -> None:
    """Where a day is too short for a round, that stands beside what moves; a run with a lost day already is told to add a line."""
    done = run(plan, project, ["float-or-sink", "--class", "p1", "--what-if", "2026-12-02 early release"]).output
    assert "If Wednesday, December 2 were an early release day:" in done
    assert "  Wednesday, December 2: the period is too short for a round of 23 min, so nothing is planned\n" in done
    again = run(plan, project, ["beaks-and-seeds", "--class", "p2", "--what-if", "2026-10-22 lost"]).output
    assert "p2, beaks-and-seeds: write `- 2026-10-22` under its `lost:`, in the run at school/runs.yml:" in again
    week = run(plan, project, ["--week", "2026-12-02", "--what-if", "2026-12-02 B", "--class", "p1"]).output
    assert week.startswith("Week of Monday, November 30, if Wednesday, December 2 were a B day\n")


def test_one_run_alone(project: Path) -> None:
    """With a unit and a class, or a class alone, only these are looked at."""
    done = run(plan, project, ["float-or-sink", "--class", "p1", "--what-if", "2026-12-02 lost"]).output
    assert "p1, Float or sink?" in done and "p2" not in done and "k6a" not in done
    line = next(each for each in done.splitlines() if "`- 2026-12-02`" in each)
    number = int(line.rsplit(":", 1)[1])
    assert (project / "school" / "runs.yml").read_text(encoding="utf-8").splitlines()[number - 1].strip() == "- class: p1"


def test_a_lost_lesson_stands_in_its_week(project: Path) -> None:
    """The week as it would be names the lessons that are lost on their day, in words and as data."""
    asked = ["--week", "2026-11-30", "--what-if", "2026-12-02 lost"]
    wednesday = run(plan, project, asked).output.partition("Wednesday, December 2: regular")[2].partition("Thursday")[0]
    assert "  lost            p1  Float or sink?: no lesson\n" in wednesday and "no lesson of a unit" not in wednesday
    data = json.loads(run(plan, project, [*asked, "--class", "k6a", "--json"]).output)
    assert [each["lost"] for each in data["days"]] == [[], [], [{"class": "k6a", "unit": "moving-plates"}], [], []]


def test_what_it_says_comes_true(project: Path, tmp_path: Path) -> None:
    """With the lines written as it says, the week is the one that was shown."""
    supposed = run(plan, project, ["--week", "2026-11-30", "--what-if", "2026-12-02 early release", "--json"]).output
    lines = run(plan, project, ["--what-if", "2026-12-02 early release"]).output
    assert "write `2026-12-02: early release` under `days:` in school/calendar.yml" in lines
    changed = copy_project(tmp_path / "changed")
    calendar = changed / "school" / "calendar.yml"
    calendar.write_text(
        calendar.read_text(encoding="utf-8").replace("\ndays:\n", "\ndays:\n  2026-12-02: early release\n"), encoding="utf-8"
    )
    assert run(plan, changed, ["--week", "2026-11-30", "--json"]).output == supposed
    assert supposed != run(plan, project, ["--week", "2026-11-30", "--json"]).output


def test_several_at_once_and_what_is_wrong_then(project: Path) -> None:
    """Several changes count together, and a last date that would be missed is told."""
    done = run(plan, project, ["--class", "p1", "--what-if", "2027-01-12 lost", "--what-if", "2027-01-13 lost"]).output
    assert "If Tuesday, January 12 were lost and Wednesday, January 13 were lost:" in done
    assert "To decide then:\n  p1, warm-metal-cool-water: the unit ends on " in done
    assert "after its last date, Thursday, January 14" in done


def test_a_unit_that_is_to_end_by_a_date_and_has_begun(project: Path, tmp_path: Path) -> None:
    """A closed day in mid-unit moves only what comes after it; the lines that keep it so are said, and with them it comes true."""
    asked = ["warm-metal-cool-water", "--class", "p1", "--what-if", "2027-01-13 snow day"]
    done = run(plan, project, asked).output
    assert "round 1" not in done and "round 3 moves from Wednesday, January 13 to Thursday, January 14" in done
    assert "To decide then:\n  p1, warm-metal-cool-water: the unit ends on Friday, January 15" in done
    assert "write `- 2027-01-13, snow day` under `closures:` in school/calendar.yml\n" in done
    assert "write `- 2027-01-13` below a line `short notice:` there: then all that lies before it stays as planned\n" in done
    for notice, first in (("short notice:\n  - 2027-01-13\n", "2027-01-11"), ("", "2027-01-07")):
        written = copy_project(tmp_path / first)
        calendar = written / "school" / "calendar.yml"
        text = calendar.read_text(encoding="utf-8").replace("closures:\n", "closures:\n  - 2027-01-13, snow day\n")
        calendar.write_text(f"{text.rstrip()}\n{notice}", encoding="utf-8")
        data = json.loads(run(plan, written, ["warm-metal-cool-water", "--class", "p1", "--json"]).output)
        assert data["days"][0]["date"] == first


def test_short_notice_only_where_it_matters(project: Path) -> None:
    """No line under `short notice` is asked for where nothing before the day would change without it."""
    assert "short notice" not in run(plan, project, ["--what-if", "2026-12-02 early release"]).output
    assert "short notice" not in run(plan, project, ["--what-if", "2027-01-13 lost"]).output


def test_as_data(project: Path) -> None:
    """The same as data: what was asked, each run before and after, and the lines."""
    data = json.loads(run(plan, project, ["--what-if", "2026-12-02 early_release", "--json"]).output)
    assert data["what_if"] == 1
    assert data["asked"] == [{"first": "2026-12-02", "last": "2026-12-02", "is": "early release"}]
    p1 = next(each for each in data["runs"] if (each["class"], each["unit"]) == ("p1", "float-or-sink"))
    assert (p1["before"]["last"], p1["after"]["last"]) == ("2026-12-03", "2026-12-04")
    assert p1["changes"][0].startswith("round 3 moves")
    assert all(each["changes"] or each["before"] == each["after"] for each in data["runs"])


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("2026-11-26 early release", "Nothing changes: Thursday, November 26 is closed (fall break)."),
        ("2026-12-18 lost", "Nothing changes."),
    ],
)
def test_nothing_changes(project: Path, asked: str, said: str) -> None:
    """Where nothing changes that is said, with the closure that outranks what was asked."""
    assert said in run(plan, project, ["--what-if", asked]).output


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--what-if", "2026-12-02 erly release"], "write 2026-12-02 early release"),
        (["--what-if", "2027-07-02 lost"], "the school year goes from 2026-08-24 to 2027-06-04; write a day of it"),
        (["--what-if", "2026-12-02 lost", "--class", "p11"], "there is no class p11; did you mean p1?"),
        (["--what-if", "2026-12-02 lost", "--private"], "leave it out"),
        (["--week", "Wednesday"], "Wednesday is no date; write --week with any day of the week, such as 2026-11-30"),
        (["float-or-sink"], "write --class, such as trivet plan float-or-sink --class p1"),
        ([], "write UNIT and --class"),
    ],
)
def test_misuse(project: Path, arguments: list[str], said: str) -> None:
    """What can't be answered is misuse, with what to write."""
    done = run(plan, project, arguments)
    assert done.exit_code == 2
    assert said in done.output + done.stderr
