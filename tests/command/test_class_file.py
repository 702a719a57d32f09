"""`trivet class-file`: what it holds, where it may be written, and what it never tells."""

from __future__ import annotations

import json
import stat
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from tests.command.small_project import CANARIES, LEVELS, roster, run, small_project
from trivet.command.class_file import class_file
from trivet.command.groups import groups
from trivet.command.plan import plan
from trivet.reading.lock import read_lock
from trivet.reading.schemas import schema

TODAY = ["--today", "2026-10-01"]
P1 = ["--class", "p1"]


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """The small project: kept groups for one unit, leveled ones for a later one."""
    project = small_project(tmp_path / "project")
    assert run(groups, project, ["floating", *P1, "--write", *TODAY]).exit_code == 0
    assert run(groups, project, ["seeds", *P1, "--leveled", "--write", *TODAY]).exit_code == 0
    return project


def made(project: Path, *options: str, path: str = "private/class-file-p1.json") -> dict[str, Any]:
    done = run(class_file, project, ["p1", *TODAY, *options])
    assert done.exit_code == 0, done.output + done.stderr
    data: dict[str, Any] = json.loads((project / path).read_text(encoding="utf-8"))
    return data


def test_holds_numbers_with_names_and_what_a_device_needs(project: Path) -> None:
    """Every student with number, name, adult and agreement, and the date; the file fits its schema, its plans the plan's."""
    data = made(project)
    assert (data["class_file"], data["class"], data["name"], data["made_on"]) == (1, "p1", "Science 7, period 1", "2026-10-01")
    assert [student["seat"] for student in data["students"]] == [f"p1-{seat:02d}" for seat in range(1, 13)]
    nobody = [f"p1-{seat:02d}" for seat in range(2, 13)]
    one = {"seat": "p1-01", "name": "Zebulon Quillfeather 1", "adult": False, "agreement": True, "not_yet": nobody}
    assert data["students"][0] == one
    Draft202012Validator(schema("class-file")).validate(data)
    for each in data["plans"]:
        Draft202012Validator(schema("plan")).validate(each)


def test_says_with_whom_a_student_has_not_worked_yet(project: Path) -> None:
    """Units that have begun count, leveled ones among them; a unit that is still to come does not."""
    run(groups, project, ["--year", "--class", "p1", "--write", "--today", "2026-09-01"])
    lock, _ = read_lock((project / "school/groups/p1/floating.yml").read_text(encoding="utf-8"), "lock")
    assert lock is not None
    mates = next(team for group in lock.groups.values() for team in group.teams.values() if "p1-01" in team)
    data = made(project, "--today", "2026-10-10")
    assert data["students"][0]["not_yet"] == [f"p1-{seat:02d}" for seat in range(2, 13) if f"p1-{seat:02d}" not in mates]
    assert len(made(project, "--today", "2026-09-30")["students"][0]["not_yet"]) == 11


def test_needs_rules_and_tables_stay_where_they_are(project: Path) -> None:
    """Nothing of needs, what to avoid, rules or tables goes to the device."""
    (project / "private/example/roster-p1.csv").write_text(roster({1: "not in one team: 2"}), encoding="utf-8")
    made(project)
    text = (project / "private/class-file-p1.json").read_text(encoding="utf-8")
    assert not [canary for canary in CANARIES[2:] if canary in text]
    assert "not in one team" not in text


def test_levels_only_when_asked(project: Path) -> None:
    """Without --levels no level is in the file; with it, each student's."""
    assert all("level" not in student for student in made(project)["students"])
    data = made(project, "--levels")
    assert tuple(student["level"] for student in data["students"]) == LEVELS
    Draft202012Validator(schema("class-file")).validate(data)


def test_leveled_groups_of_coming_units_alone(project: Path) -> None:
    """A leveled unit's plan is there with its groups until its last day is over; public units are not, since the site has them."""
    (found,) = made(project)["plans"]
    shown = json.loads(run(plan, project, ["seeds", *P1, "--private", "--json"]).output)
    assert found == shown and len(found["groups"]["A"]["teams"]) >= 1
    last = found["days"][-1]["date"]
    assert len(made(project, "--today", last)["plans"]) == 1
    assert made(project, "--today", "2027-06-01")["plans"] == []


def test_a_published_unit_is_the_same_in_private(project: Path) -> None:
    """--private changes nothing in the plan of a unit whose groups are public, whatever the class did in leveled units before."""
    assert run(groups, project, ["plates", *P1, "--leveled", "--write", *TODAY]).exit_code == 0
    shown, own = (run(plan, project, ["floating", *P1, "--json", *more]).output for more in ([], ["--private"]))
    assert shown == own


@pytest.mark.parametrize(
    ("out", "where"),
    [
        ("units/names.json", "units/"),
        ("school/groups/p1/names.json", "school/"),
        ("site/names.json", "site/"),
        ("names.json", "names.json"),
        ("private/example/names.json", "private/example/"),
        ("private/../school/names.json", "school/"),
        ("units/new/deep/names.json", "units/"),
    ],
)
def test_never_where_it_would_be_shared(project: Path, out: str, where: str) -> None:
    """Inside the project it goes under private/ alone, and not where the demo's lists are shared; the remedy names a place."""
    done = run(class_file, project, ["p1", "--out", str(project / out)])
    assert done.exit_code == 2
    assert f"{where} is shared, and a class file holds names; write --out private/names.json" in done.stderr
    assert not (project / out).exists()


def test_a_link_does_not_lead_it_astray(project: Path, tmp_path: Path) -> None:
    """A link outside that points into units/ is refused like units/ itself."""
    (tmp_path / "desk").symlink_to(project / "units")
    done = run(class_file, project, ["p1", "--out", str(tmp_path / "desk" / "names.json")])
    assert done.exit_code == 2 and "units/ is shared" in done.stderr


def test_another_project_is_shared_too(project: Path, tmp_path: Path) -> None:
    """The folder of a second project is no place for names either."""
    other = small_project(tmp_path / "other", listed=False)
    done = run(class_file, project, ["p1", "--out", str(other / "school" / "names.json")])
    assert done.exit_code == 2 and "school/ is shared" in done.stderr


def test_outside_the_project(project: Path, tmp_path: Path) -> None:
    """Elsewhere it is written as asked, readable by its owner alone, and written again over itself."""
    out = tmp_path / "stick" / "p1.json"
    for _ in range(2):
        assert run(class_file, project, ["p1", *TODAY, "--out", str(out)]).exit_code == 0
    assert stat.S_IMODE(out.stat().st_mode) == 0o600
    assert [path.name for path in out.parent.iterdir()] == ["p1.json"]


def test_never_over_another_file(project: Path) -> None:
    """A list is not overwritten by a slip of the pen."""
    private = project / "private" / "roster-p1.csv"
    private.write_text(roster(), encoding="utf-8")
    done = run(class_file, project, ["p1", "--out", str(private)])
    assert done.exit_code == 2 and "is no class file; write another name" in done.stderr
    assert private.read_text(encoding="utf-8") == roster()


def test_a_folder_of_the_district_gets_it(project: Path, tmp_path: Path) -> None:
    """Where trivet.local.yml names a folder, the file goes there, and its path is not printed."""
    drive = tmp_path / "drive"
    drive.mkdir()
    (drive / "roster-p1.csv").write_text(roster(), encoding="utf-8")
    (project / "trivet.local.yml").write_text(f"folder: {drive}\n", encoding="utf-8")
    done = run(class_file, project, ["p1", *TODAY])
    assert done.exit_code == 0 and (drive / "class-file-p1.json").is_file()
    assert done.output.startswith("(private folder)/class-file-p1.json: 12 students.") and str(drive) not in done.output


def test_misuse_and_missing_lists(project: Path) -> None:
    """An unknown class is misuse with the nearest one; a class without a list is told what to write."""
    done = run(class_file, project, ["p11"])
    assert done.exit_code == 2 and "there is no class p11; did you mean p1?" in done.stderr
    done = run(class_file, project, ["p9"])
    assert done.exit_code == 1 and "there is no private list for class p9; write private/roster-p9.csv" in done.stderr


def test_says_what_it_wrote_and_no_name(project: Path) -> None:
    """The output tells the path, how many students and which leveled units, and no name, also for a list that can't be read."""
    done = run(class_file, project, ["p1", *TODAY])
    assert "private/class-file-p1.json: 12 students, leveled groups of seeds. It holds names" in done.output
    said = [done.output, done.stderr]
    path = project / "private/example/roster-p1.csv"
    path.write_text(roster().replace("1,Zebulon Quillfeather 1,97", '1,"Zebulon Quillfeather,97', 1), encoding="utf-8")
    broken = run(class_file, project, ["p1", *TODAY])
    assert broken.exit_code == 1
    said += [broken.output, broken.stderr]
    assert not [canary for canary in CANARIES if canary in "\n".join(said)]
    assert str(project) not in "\n".join(said)
