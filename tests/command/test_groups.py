"""`trivet groups`: what it prints, what it writes, what it refuses, and what it never tells."""

from __future__ import annotations

import json
import re
import stat
from pathlib import Path

import pytest

from tests.command.small_project import CANARIES, LEVELS, everything_below, run, small_project
from trivet.command.groups import groups
from trivet.command.plan import plan
from trivet.model.station import Kind
from trivet.model.wish import Wish
from trivet.reading.lock import read_lock

BEFORE = ["--today", "2026-10-01"]
AFTER = ["--today", "2026-10-06"]
P1 = ["--class", "p1"]


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """The small project with a private list."""
    return small_project(tmp_path / "project")


def lock_file(project: Path, unit: str = "floating") -> Path:
    return project / "school" / "groups" / "p1" / f"{unit}.yml"


def test_prints_lists_and_writes_nothing(project: Path) -> None:
    """Without --write the groups are printed with a plain sentence, and no file changes."""
    before = everything_below(project)
    done = run(groups, project, ["floating", *P1])
    assert done.exit_code == 0
    assert "Float or sink? (floating), class p1, 12 students, drawn with the class's private list." in done.output
    assert "Station group A (4 students)" in done.output and "p1-01 (" in done.output and "  online  p1-" in done.output
    assert "No earlier unit of this school year counts yet" in done.output
    assert "Nothing was written; --write keeps these groups." in done.output
    assert everything_below(project) == before


def test_by_number_where_there_is_no_list(tmp_path: Path) -> None:
    """Without a private list the draw goes by number, says so on the screen and in the file, and seals nothing."""
    project = small_project(tmp_path / "project", listed=False)
    done = run(groups, project, ["floating", *P1, "--write", *BEFORE])
    assert done.exit_code == 0
    assert "drawn by number: there is no private list for this class, so no levels and no rules" in done.output
    lock, problems = read_lock(lock_file(project).read_text(encoding="utf-8"), "lock")
    assert lock is not None and problems == ()
    assert (lock.drawn_from, lock.seal) == ("numbers", "")
    assert not (project / "private").exists()


def test_write_keeps_what_was_shown(project: Path) -> None:
    """--write keeps the same groups in a lock with digest, seal and date, and makes a key that only its owner reads."""
    shown = json.loads(run(groups, project, ["floating", *P1, "--json"]).output)
    done = run(groups, project, ["floating", *P1, "--write", *BEFORE])
    assert done.exit_code == 0 and "Kept in school/groups/p1/floating.yml." in done.output
    assert "replace" not in done.output
    lock, problems = read_lock(lock_file(project).read_text(encoding="utf-8"), "lock")
    assert lock is not None and problems == ()
    assert {letter: list(group["teams"]) for letter, group in shown["groups"].items()} == {k: list(v.teams) for k, v in lock.groups.items()}
    assert lock.inputs.startswith("sha256 ") and lock.seal.startswith("hmac-sha256 ")
    assert (lock.drawn_on.isoformat(), lock.engine, lock.drawn_from, lock.counted) == ("2026-10-01", "1", "roster", ())
    key = project / "private" / "example" / "key"
    assert len(bytes.fromhex(key.read_text(encoding="ascii"))) == 32
    assert stat.S_IMODE(key.stat().st_mode) == 0o600


def test_seal_depends_on_the_key_and_the_lists(project: Path, tmp_path: Path) -> None:
    """Another key, or another level, gives another seal; the digest of the public inputs stays."""
    other = small_project(tmp_path / "other")
    for each in (project, other):
        assert run(groups, each, ["floating", *P1, "--write", *BEFORE]).exit_code == 0
    one, two = (read_lock(lock_file(each).read_text(encoding="utf-8"), "lock")[0] for each in (project, other))
    assert one is not None and two is not None
    assert one.seal != two.seal
    assert (one.inputs, one.groups) == (two.inputs, two.groups)


def test_a_second_unit_counts_the_first(project: Path) -> None:
    """The next unit's lock names the earlier one, and its teammates are new."""
    for unit in ("floating", "plates"):
        assert run(groups, project, [unit, *P1, "--write", *BEFORE]).exit_code == 0
    lock, _ = read_lock(lock_file(project, "plates").read_text(encoding="utf-8"), "lock")
    assert lock is not None and lock.counted == ("floating",)
    assert "unit" not in run(groups, project, ["seeds", *P1]).output.splitlines()[-1]


def test_writing_again_changes_nothing(project: Path) -> None:
    """Writing the same draw again, on a later day, leaves the file as it is and says so."""
    run(groups, project, ["floating", *P1, "--write", *BEFORE])
    before = lock_file(project).read_bytes()
    done = run(groups, project, ["floating", *P1, "--write", "--today", "2026-10-03"])
    assert "These groups are kept already in school/groups/p1/floating.yml, drawn on 2026-10-01; nothing was written." in done.output
    assert lock_file(project).read_bytes() == before


def test_groups_that_were_worked_in_stay(project: Path) -> None:
    """Once a date of the plan has passed, other groups are refused; --force writes them and says what is then false."""
    run(groups, project, ["floating", *P1, "--write", *BEFORE])
    before = lock_file(project).read_bytes()
    (project / "private" / "example" / "roster-p1.csv").unlink()
    refused = run(groups, project, ["floating", *P1, "--write", *AFTER])
    assert refused.exit_code == 1
    assert "class p1 has worked in the groups of school/groups/p1/floating.yml on Monday, October 5" in refused.output
    assert "write --force to replace them all the same" in refused.output
    assert lock_file(project).read_bytes() == before
    assert run(groups, project, ["floating", *P1, "--write", "--today", "2026-10-05"]).exit_code == 0
    (project / "school" / "classes.yml").write_text(
        (project / "school" / "classes.yml").read_text(encoding="utf-8").replace("numbers: 1-12", "numbers: 1-12\n    gone: 3"),
        encoding="utf-8",
    )
    forced = run(groups, project, ["floating", *P1, "--write", "--force", *AFTER])
    assert forced.exit_code == 0
    assert "The count of who has worked with whom" in forced.output or "are no longer true" in forced.output
    assert "These groups replace those drawn on 2026-10-05." in forced.output
    assert "p1-03" not in lock_file(project).read_text(encoding="utf-8")


def test_a_redraw_counts_later_units_again(project: Path) -> None:
    """Drawing an earlier unit after a later one puts it into the later one's count, groups unchanged, in the same write."""
    run(groups, project, ["seeds", *P1, "--write", *BEFORE])
    alone, _ = read_lock(lock_file(project, "seeds").read_text(encoding="utf-8"), "lock")
    done = run(groups, project, ["plates", *P1, "--write", *BEFORE])
    assert "Counted again: school/groups/p1/seeds.yml." in done.output
    again, _ = read_lock(lock_file(project, "seeds").read_text(encoding="utf-8"), "lock")
    assert alone is not None and again is not None
    assert (alone.counted, again.counted) == ((), ("plates",))
    assert again.groups == alone.groups and again.inputs != alone.inputs


def test_conflicting_rules_are_named_by_number(tmp_path: Path) -> None:
    """Rules that can't all hold are named by class numbers in the words they were written in, and nothing is written."""
    project = small_project(
        tmp_path / "project",
        rules={2: "not in one station group: 5, 7, 11", 5: "not in one station group: 7, 11", 7: "not in one station group: 11"},
    )
    done = run(groups, project, ["floating", *P1, "--write", *BEFORE])
    assert done.exit_code == 1
    assert "these 6 rules can't all hold in a class of 12 with teams of 4" in done.output
    assert "not in one station group: p1-02 and p1-05" in done.output
    assert "leave out any one of them in the private list and the others can hold" in done.output
    assert not lock_file(project).exists()


def test_leveled_groups_stay_private(project: Path) -> None:
    """--leveled --write keeps the whole lock in the private folder, nothing under school/, and not beside groups of another kind."""
    done = run(groups, project, ["floating", *P1, "--leveled", "--write", *BEFORE])
    assert done.exit_code == 0 and "Kept in private/example/groups/p1/floating.yml." in done.output
    assert not (project / "school" / "groups").exists()
    lock, problems = read_lock((project / "private/example/groups/p1/floating.yml").read_text(encoding="utf-8"), "lock")
    assert lock is not None and problems == () and lock.leveled
    by_group = [sorted(LEVELS[int(n[-2:]) - 1] for n in group.students) for group in lock.groups.values()]
    assert sorted(level for levels in by_group for level in levels) == sorted(LEVELS)
    ordered = sorted(by_group)
    assert ordered[0][-1] < ordered[1][0] and ordered[1][-1] < ordered[2][0]
    refused = run(groups, project, ["floating", *P1, "--write", *BEFORE])
    assert refused.exit_code == 1 and "delete that file, then draw again" in refused.output


def test_the_order_of_leveled_groups_is_private_too(project: Path) -> None:
    """Wishes on the order of leveled groups stand in the private file, outlive a new draw, and decide who is where for the teacher alone.

    Those in runs.yml, which is shared, count for groups that all can see: a leveled draw says to move them.
    """
    asked = ["seeds", *P1, "--leveled", "--write", "--force", *BEFORE]
    done = run(groups, project, asked)
    assert "move `order:`" not in done.output
    path = project / "private/example/groups/p1/seeds.yml"
    path.write_text(path.read_text(encoding="utf-8").replace("how: leveled\n", "how: leveled\norder:\n  - C teacher-led first\n"), "utf-8")
    published = run(plan, project, ["seeds", *P1, "--json"]).output
    runs = project / "school" / "runs.yml"
    written = runs.read_text(encoding="utf-8")
    runs.write_text(written.replace("unit: seeds\n", "unit: seeds\n    order:\n      - A teacher-led first\n"), encoding="utf-8")
    assert runs.read_text(encoding="utf-8") != written
    again = run(groups, project, asked)
    assert "move `order:` to private/example/groups/p1/seeds.yml" in again.output
    lock, problems = read_lock(path.read_text(encoding="utf-8"), "lock")
    assert lock is not None and not problems and lock.order == (Wish(Kind.TEACHER_LED, "C"),)
    own = json.loads(run(plan, project, ["seeds", *P1, "--json", "--private"]).output)
    assert own["rounds"][0]["stations"]["C"] == "teacher_led"
    assert run(plan, project, ["seeds", *P1, "--json"]).output == published


def test_nothing_private_comes_out(project: Path) -> None:
    """Names, needs, what to avoid and tables never stand in output, errors or any file written; nor does a level of anyone."""
    said = []
    for arguments in (
        ["floating", *P1],
        ["floating", *P1, "--json"],
        ["floating", *P1, "--write", *BEFORE],
        ["floating", *P1, "--write", *BEFORE],
        ["seeds", *P1, "--leveled", "--write", *BEFORE],
        ["plates", *P1, "--write", "--json", *BEFORE],
        ["plates", "--class", "p9"],
        ["nothing", *P1],
        ["floating", "--class", "p7"],
    ):
        done = run(groups, project, arguments)
        said.append(done.output + done.stderr)
    numbers = {int(n) for n in re.findall(r"\b\d+\b", "\n".join([*said, everything_below(project / "school" / "groups")]))}
    assert not numbers & set(LEVELS)
    for broken in ("level,97", "Zebulon,level", '"Zebulon'):
        path = project / "private" / "example" / "roster-p1.csv"
        whole = path.read_text(encoding="utf-8")
        path.write_text(whole.replace(f"1,Zebulon Quillfeather 1,{LEVELS[0]}", f"1,Zebulon Quillfeather 1,{broken}"), encoding="utf-8")
        done = run(groups, project, ["floating", *P1])
        assert done.exit_code == 1
        said.append(done.output + done.stderr)
        path.write_text(whole, encoding="utf-8")
    text = "\n".join([*said, everything_below(project)])
    for canary in CANARIES:
        assert canary not in text
    assert str(project) not in "\n".join(said)


def test_misuse_names_the_nearest(project: Path) -> None:
    """A unit, class or run that is not there is misuse (exit 2), answered with the nearest name or what to write."""
    for arguments, answer in (
        (["floatin", *P1], "did you mean floating?"),
        (["floating", "--class", "p99"], "did you mean p9?"),
        (["floating", "--class", "p9"], "school/runs.yml has no row for class p9 and unit floating; write `- class: p9`"),
        (["floating", "--class", "p9"], "if they stand there, `trivet check` says what is wrong"),
    ):
        done = run(groups, project, arguments)
        assert done.exit_code == 2 and answer in done.stderr


def test_usual_tables(project: Path) -> None:
    """A unit that keeps the usual tables gives the tables as teams; a student without one is named by number."""
    unit = project / "units" / "floating" / "index.md"
    unit.write_text(unit.read_text(encoding="utf-8").replace("grades: 6-8", "grades: 6-8\ngroup by: usual"), encoding="utf-8")
    data = json.loads(run(groups, project, ["floating", *P1, "--json"]).output)
    teams = sorted(sorted(team) for group in data["groups"].values() for team in group["teams"].values())
    assert teams == [[f"p1-{s:02d}" for s in range(a, a + 4)] for a in (1, 5, 9)]
    path = project / "private" / "example" / "roster-p1.csv"
    path.write_text(path.read_text(encoding="utf-8").replace("oldest-canary 2", ""), encoding="utf-8")
    done = run(groups, project, ["floating", *P1])
    assert done.exit_code == 1 and "no table for p1-09, p1-10, p1-11, p1-12" in done.output
