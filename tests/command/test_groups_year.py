"""`trivet groups` for a year, for a class of some size, for a change, and its explanations and checks."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from tests.command.small_project import CANARIES, everything_below, run, small_project
from trivet.command.groups import groups
from trivet.model.lock import Lock
from trivet.reading.lock import read_lock, write_lock

BEFORE = ["--today", "2026-09-01"]
P1 = ["--class", "p1"]


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """The small project with a private list."""
    return small_project(tmp_path / "project")


def lock_of(project: Path, unit: str) -> Lock:
    lock, problems = read_lock((project / "school" / "groups" / "p1" / f"{unit}.yml").read_text(encoding="utf-8"), unit)
    assert lock is not None and problems == ()
    return lock


def edit(path: Path, before: str, after: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert before in text
    path.write_text(text.replace(before, after), encoding="utf-8")


def test_a_year_is_shown_and_not_written(project: Path) -> None:
    """--year shows every unit with repeats and proof, cards, and who is never together; nothing is written."""
    before = everything_below(project)
    done = run(groups, project, ["--year", *P1, *BEFORE])
    assert done.exit_code == 0
    assert "Class p1, 12 students, 3 units:" in done.output
    assert re.search(r"2026-10-05 floating: all teammates new, teams within 0\.\d\d of a level", done.output)
    assert re.search(r"2027-01-11 seeds: teammates have worked together before (once|\d+ times), fewer is not possible", done.output)
    assert re.search(
        r"Duties over the year, how often each student: leader \d to \d, .*; nobody's three differ by more than 1\.", done.output
    )
    assert re.search(r"Pairs of students who are in no team together all year: \d+ of 66\.", done.output)
    assert everything_below(project) == before


def test_a_year_is_kept(project: Path) -> None:
    """--year --write keeps a lock for each unit, each counting those before it; cards differ by at most one; each lock checks out."""
    done = run(groups, project, ["--year", *P1, "--write", *BEFORE])
    assert done.exit_code == 0
    locks = [lock_of(project, unit) for unit in ("floating", "plates", "seeds")]
    assert [lock.counted for lock in locks] == [(), ("floating",), ("floating", "plates")]
    held: dict[tuple[str, str], int] = {}
    for lock in locks:
        for group in lock.groups.values():
            for team in group.teams.values():
                for number, roles in team.items():
                    held[number, roles[0]] = held.get((number, roles[0]), 0) + 1
    for number in {number for number, _ in held}:
        counts = [held.get((number, role), 0) for role in ("leader", "recorder", "materials")]
        assert max(counts) - min(counts) <= 1
    for unit in ("floating", "plates", "seeds"):
        checked = run(groups, project, ["--check", str(project / "school" / "groups" / "p1" / f"{unit}.yml")])
        assert checked.exit_code == 0 and "DOES NOT HOLD" not in checked.output
    again = run(groups, project, ["--year", *P1, "--write", *BEFORE])
    assert again.output.count("kept already") == 3 and "Nothing was written" in again.output


def test_a_year_keeps_what_is_kept(project: Path) -> None:
    """Units with kept groups stay as they are; one that began without groups is left out and named."""
    run(groups, project, ["plates", *P1, "--write", *BEFORE])
    before = lock_of(project, "plates").groups
    done = run(groups, project, ["--year", *P1, "--write", "--today", "2026-10-20"])
    assert "plates: kept already" in done.output and "begun without kept groups: floating" in done.output
    assert lock_of(project, "plates").groups == before
    assert not (project / "school" / "groups" / "p1" / "floating.yml").exists()


def test_students_need_no_project(tmp_path: Path) -> None:
    """--students answers without a project; its JSON has teams, station groups, repeats and proved minimum."""
    done = run(groups, tmp_path, ["--students", "9", "--units", "3", "--json"])
    data = json.loads(done.output)
    assert data["students"] == 9 and len(data["units"]) == 3
    for unit in data["units"]:
        assert list(unit) == ["teams", "station_groups", "repeats", "proved_minimum"]
        assert sorted(s for team in unit["teams"] for s in team) == list(range(1, 10))
        assert sorted(t for group in unit["station_groups"] for t in group) == [0, 1, 2]
    whole = json.loads(run(groups, tmp_path, ["--students", "16", "--whole-class", "--json"]).output)
    assert all("station_groups" not in unit for unit in whole["units"])
    assert [unit["repeats"] for unit in whole["units"][:5]] == [0] * 5
    text = run(groups, tmp_path, ["--students", "24"]).output
    assert "A class of 24 goes 7 units without a repeated teammate; unit 8 is the first with one" in text
    assert "could not be avoided" in text
    assert run(groups, tmp_path, ["--students", "24", "--team", "6"]).exit_code == 2


def test_explain(project: Path) -> None:
    """--explain tells the rules in force, what each aim reached, the history, the proof and who has been with whom."""
    run(groups, project, ["floating", *P1, "--write", *BEFORE])
    done = run(groups, project, ["plates", *P1, "--explain", *BEFORE])
    for part in (
        "In this order: rules, then levels, then teammates who have not met",
        "Rules: none in force.",
        "How to group: mixed, every team spans the levels.",
        "Earlier units that count: floating.",
        "The proof: give each student the number below.",
        "p1-01 ",
        "Who has been in a team with whom, this unit included:",
        "In words: of 66 pairs of students",
    ):
        assert part in done.output
    assert not any(canary in done.output for canary in CANARIES)


def test_check_finds_what_was_changed(project: Path) -> None:
    """--check says what does not hold and exits with 1; a file that is not there is misuse."""
    run(groups, project, ["--year", *P1, "--write", *BEFORE])
    path = project / "school" / "groups" / "p1" / "seeds.yml"
    lock = lock_of(project, "seeds")
    edit(path, f"repeats: {lock.repeats}\n", f"repeats: {lock.repeats - 1}\n")
    done = run(groups, project, ["--check", str(path)])
    assert done.exit_code == 1
    assert re.search(r"DOES NOT HOLD: teammates have worked together before: .* in the file, counted again (once|\d+ times)\n", done.output)
    assert run(groups, project, ["--check", str(project / "no.yml")]).exit_code == 2


def test_change_moves_few(project: Path) -> None:
    """--change fits kept groups to a leaver and a late arrival, tells the moves, and writes them with --write."""
    run(groups, project, ["floating", *P1, "--write", *BEFORE])
    before = lock_of(project, "floating")
    classes = project / "school" / "classes.yml"
    edit(classes, "numbers: 1-12", "numbers: 1-12\n    gone: 4\n    late: 13 from 2026-09-01")
    shown = run(groups, project, ["floating", *P1, "--change", *BEFORE])
    assert shown.exit_code == 0
    assert "Left: p1-04." in shown.output and "New: p1-13 to " in shown.output and "Nobody moves." in shown.output
    assert lock_of(project, "floating") == before
    run(groups, project, ["floating", *P1, "--change", "--write", *BEFORE])
    after = lock_of(project, "floating")
    stay = {n: code for group in before.groups.values() for code, team in group.teams.items() for n in team if n != "p1-04"}
    now = {n: code for group in after.groups.values() for code, team in group.teams.items() for n in team}
    assert all(now[number] == code for number, code in stay.items())
    assert run(groups, project, ["plates", *P1, "--change", *BEFORE]).exit_code == 1


def test_absences_and_leveled_units_count_privately(project: Path) -> None:
    """Who was absent all days did not meet anyone, and leveled units count: both change the teacher's figure, never the published one."""
    run(groups, project, ["floating", *P1, "--leveled", "--write", *BEFORE])
    done = run(groups, project, ["plates", *P1, "--write", *BEFORE])
    assert done.exit_code == 0
    lock = lock_of(project, "plates")
    assert lock.counted == () and lock.repeats == 0
    team_of_leveled = read_lock((project / "private/example/groups/p1/floating.yml").read_text(encoding="utf-8"), "x")[0]
    assert team_of_leveled is not None
    (project / "private" / "example" / "absences-p1.csv").write_text("date,seat\n2026-10-05,3\nnonsense,4\n", encoding="utf-8")
    wrong = run(groups, project, ["seeds", *P1, *BEFORE])
    assert wrong.exit_code == 1
    assert "private/example/absences-p1.csv:3:" in wrong.stderr and "no date stands here" in wrong.stderr
    assert "nonsense" not in wrong.stderr


@pytest.mark.parametrize(
    ("arguments", "answer"),
    [
        ([], "which class? write --class"),
        (P1, "which unit? write its folder's name"),
        (["floating", *P1, "--units", "3"], "--units does not go with a class of the department"),
        (["floating", "--students", "12"], "UNIT does not go with --students"),
        (["floating", *P1, "--year"], "UNIT does not go with --year"),
        (["--year", "--class", "p99"], "there is no class p99; did you mean p9?"),
    ],
)
def test_misuse(project: Path, arguments: list[str], answer: str) -> None:
    """Options that don't go together are misuse, told in plain words."""
    done = run(groups, project, arguments)
    assert done.exit_code == 2 and answer in done.stderr


def test_locks_read_back(project: Path) -> None:
    """What is written is what is read, to the byte."""
    run(groups, project, ["--year", *P1, "--write", *BEFORE])
    for unit in ("floating", "plates", "seeds"):
        path = project / "school" / "groups" / "p1" / f"{unit}.yml"
        assert write_lock(lock_of(project, unit)) == path.read_text(encoding="utf-8")


def test_a_newcomer_in_the_middle_of_the_year(project: Path) -> None:
    """--year --change seats a late arrival in every coming unit, leaves the one that has begun, counts again, and each lock checks out."""
    run(groups, project, ["--year", *P1, "--write", *BEFORE])
    first = lock_of(project, "floating")
    classes = project / "school" / "classes.yml"
    edit(classes, "numbers: 1-12", "numbers: 1-12\n    late: 13 from 2026-10-06")
    arguments = ["--year", "--change", *P1, "--today", "2026-10-07"]
    before = everything_below(project)
    shown = run(groups, project, arguments)
    assert shown.exit_code == 0 and everything_below(project) == before
    assert "floating: has begun, so its groups stay" in shown.output
    assert re.search(r"plates: new: p1-13 to [ABC]1; nobody moves", shown.output)
    assert "Nothing was written; --write keeps these changes." in shown.output
    done = run(groups, project, [*arguments, "--write"])
    assert done.exit_code == 0 and "Kept: school/groups/p1/plates.yml, school/groups/p1/seeds.yml." in done.output
    assert lock_of(project, "floating") == first
    for unit in ("plates", "seeds"):
        assert "p1-13" in {number for group in lock_of(project, unit).groups.values() for number in group.students}
        checked = run(groups, project, ["--check", str(project / "school" / "groups" / "p1" / f"{unit}.yml")])
        assert checked.exit_code == 0, checked.output
    again = run(groups, project, [*arguments, "--write"])
    assert again.output.count("nobody came or left") == 2 and "Nothing to write" in again.output
    data = json.loads(run(groups, project, [*arguments, "--json"]).stdout)
    assert [unit["begun"] for unit in data["units"]] == [True, False, False]


def test_a_day_with_absences(project: Path) -> None:
    """--day closes the kept groups up around the absences of the private list and of --absent, and writes nothing."""
    run(groups, project, ["floating", *P1, "--write", *BEFORE])
    (project / "private" / "example" / "absences-p1.csv").write_text("date,seat\n2026-10-05,3\n", encoding="utf-8")
    before = everything_below(project)
    done = run(groups, project, ["floating", *P1, "--day", "2026-10-05", "--absent", "p1-07, 11"])
    assert done.exit_code == 0 and everything_below(project) == before
    assert "Absent: p1-03, p1-07, p1-11." in done.output
    assert not re.search(r"p1-(03|07|11) \(", done.output)
    alone = run(groups, project, ["floating", *P1, "--day", "2026-10-06"])
    assert "Nobody is absent on Tuesday, October 6: the kept groups hold." in alone.output
    other = run(groups, project, ["floating", *P1, "--day", "2026-12-24"])
    assert other.exit_code == 1 and "write --day and one of 2026-10-05" in other.stderr
    wrong = run(groups, project, ["floating", *P1, "--day", "2026-10-05", "--absent", "13"])
    assert wrong.exit_code == 2 and "--absent: 13 is no number of class p1" in wrong.stderr
    undrawn = run(groups, project, ["plates", *P1, "--day", "2026-11-09"])
    assert undrawn.exit_code == 1 and "draw them first: trivet groups plates --class p1" in undrawn.stderr


def test_a_redraw_is_shown_with_what_it_changes(project: Path) -> None:
    """Drawing again shows how many get other teammates and what later kept units then count, before anything is written."""
    run(groups, project, ["--year", *P1, "--write", *BEFORE])
    roster = project / "private" / "example" / "roster-p1.csv"
    mates = next(sorted(team) for group in lock_of(project, "plates").groups.values() for team in group.teams.values())
    one, other = (int(number[-2:]) for number in mates[:2])
    lines = roster.read_text(encoding="utf-8").splitlines()
    lines[one] = lines[one].replace('""', f'"not in one team: {other}"')
    roster.write_text("\n".join(lines) + "\n", encoding="utf-8")
    before = everything_below(project)
    done = run(groups, project, ["plates", *P1, *BEFORE])
    assert re.search(r"Groups of this unit are kept already; with these \d+ of 12 students would have other teammates\.", done.output)
    assert re.search(r"seeds, kept too, would be counted again: repeats \d+ → \d+\.", done.output)
    assert everything_below(project) == before


def test_leveled_groups_are_changed_in_the_private_folder(project: Path) -> None:
    """--change fits leveled groups too, and writes them where they stand; nothing comes to the shared folder."""
    run(groups, project, ["floating", *P1, "--leveled", "--write", *BEFORE])
    edit(project / "school" / "classes.yml", "numbers: 1-12", "numbers: 1-12\n    late: 13 from 2026-09-01")
    done = run(groups, project, ["floating", *P1, "--change", "--write", *BEFORE])
    assert done.exit_code == 0 and "Kept in private/example/groups/p1/floating.yml." in done.output
    assert not (project / "school" / "groups").exists()


def test_the_pre_check_advises(project: Path) -> None:
    """--how auto draws mixed groups and says what the pre-check advises; with enough scores these are the levels; nothing is kept of it."""
    plain = run(groups, project, ["floating", *P1, "--how", "auto", *BEFORE])
    assert "Advice: mixed groups, since no pre-check of this unit was taken." in plain.output
    scores = "".join(f"floating,{seat},{20 if seat % 2 else 90}\n" for seat in range(1, 13))
    (project / "private" / "example" / "pre-check-p1.csv").write_text(f"unit,seat,score\n{scores}", encoding="utf-8")
    split = run(groups, project, ["floating", *P1, "--how", "auto", "--write", *BEFORE])
    assert "6 scored 40 % or less and 6 scored 80 % or more" in split.output
    assert "The levels are the scores of this unit's pre-check." in split.output
    assert "score" not in (project / "school/groups/p1/floating.yml").read_text(encoding="utf-8")
    by_team = [sum(1 for n in team if int(n[-2:]) % 2) for g in lock_of(project, "floating").groups.values() for team in g.teams.values()]
    assert by_team == [2, 2, 2]


@pytest.mark.parametrize(
    ("arguments", "answer"),
    [
        (["--students", "0"], "--students: 0 is too few; write --students and the number of students, from 1 to 60"),
        (["--students", "61"], "--students: 61 is too many"),
        (["--students", "thirty"], "--students: thirty is no whole number"),
        (["--students", "31", "--team", "6"], "--team: 6 is too many; write --team and the number of students in a team, from 3 to 5"),
        (["--students", "31", "--units", "2.5"], "--units: 2.5 is no whole number"),
        (["--students", "31", "--units", "-1"], "--units: -1 is too few"),
        (["floating", *P1, "--how", "levelled"], "--how: levelled is none of mixed, usual, leveled, auto; write --how leveled"),
        (["floating", *P1, "--how", "mixed", "--leveled"], "--leveled and --how mixed ask for two ways"),
    ],
)
def test_odd_values_are_answered(project: Path, arguments: list[str], answer: str) -> None:
    """A number or a word that an option can't take is misuse, told in plain words with what to write."""
    done = run(groups, project, arguments)
    assert done.exit_code == 2 and answer in done.stderr and "Invalid" not in done.stderr


@pytest.mark.parametrize(("students", "teams"), [(1, [[1]]), (2, [[1], [2]]), (7, None)])
def test_tiny_classes(project: Path, students: int, teams: list[list[int]] | None) -> None:
    """One or two students have no teammates, which is said; seven have, in three station groups."""
    done = run(groups, project, ["--students", str(students), "--json"])
    data = json.loads(done.output)
    assert sorted(seat for team in data["units"][0]["teams"] for seat in team) == list(range(1, students + 1))
    if teams is not None:
        assert [unit["teams"] for unit in data["units"]] == [teams]
        assert "nobody has a teammate" in run(groups, project, ["--students", str(students)]).output
