from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path
from textwrap import dedent
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support.department import tiny_class, tiny_school
from tests.support.lock import tiny_lock
from tests.support.sheets import codes, said
from trivet.model.lock import ROLE_IDS, Lock, StationGroup
from trivet.model.problem import Problem
from trivet.model.school import LateSeat, Run, School
from trivet.reading.lock import read_lock, read_locks, write_lock

FILE = "school/groups/p1/float-or-sink.yml"
SLUG = st.from_regex(r"[a-z][a-z0-9-]{1,20}", fullmatch=True)
HEX = st.integers(0, 16**12).map("{:016x}".format)


@st.composite
def locks(draw: st.DrawFn) -> Lock:
    """Any lock: a class of any size, teams of one to six, roles in any number and order, with or without a bound."""
    class_id = draw(st.from_regex(r"[a-z][a-z0-9-]{0,11}", fullmatch=True))
    seats = draw(st.permutations([f"{class_id}-{n:02d}" for n in range(1, draw(st.integers(0, 40)) + 1)]))
    groups = {}
    for index, letter in enumerate("ABC"):
        rest = list(seats[index::3])
        teams: dict[str, dict[str, tuple[str, ...]]] = {}
        students = list(rest)
        while rest:
            size = draw(st.integers(1, min(6, len(rest))))
            team, rest = rest[:size], rest[size:]
            teams[f"{letter}{len(teams) + 1}"] = {s: tuple(draw(st.permutations(ROLE_IDS))[: draw(st.integers(0, 3))]) for s in team}
        cut = len(students) - len(students) % 2
        pairs = [tuple(sorted(students[i : i + 2])) for i in range(0, cut, 2)]
        groups[letter] = StationGroup(teams, tuple(sorted([*pairs, *([tuple(students[cut:])] if students[cut:] else [])])))
    bound = draw(st.none() | st.integers(0, 300))
    return Lock(
        unit=draw(SLUG | st.just("true")),
        class_id=class_id,
        drawn_on=draw(st.dates(date(2000, 1, 1), date(2099, 12, 31))),
        engine=draw(st.sampled_from(["1", "2", "1.10"])),
        drawn_from=draw(st.sampled_from(["roster", "numbers"])),
        counted=tuple(draw(st.lists(SLUG, max_size=4, unique=True))),
        inputs="sha256 " + draw(HEX),
        seal=draw(st.just("") | HEX),
        groups=groups,
        repeats=draw(st.integers(0, 99)),
        pair_repeats=draw(st.integers(0, 99)),
        proved_minimum=bound,
        certificate={} if bound is None else {seat: draw(st.integers(-9999, 9999)) for seat in sorted(seats)[:3]},
        leveled=draw(st.booleans()),
    )


@settings(max_examples=120, deadline=None)
@given(locks())
def test_what_is_written_comes_back(lock: Lock) -> None:
    """Reading what was written gives the same lock, without a problem."""
    read, problems = read_lock(write_lock(lock), FILE)
    assert problems == ()
    assert read == lock


@settings(max_examples=60, deadline=None)
@given(locks(), st.randoms(use_true_random=False))
def test_the_same_groups_are_the_same_bytes(lock: Lock, dice: object) -> None:
    """The order in which teams, students and pairs happen to stand in memory leaves no trace in the file."""
    shuffle = dice.shuffle  # type: ignore[attr-defined] # a random.Random

    def mixed(group: StationGroup) -> StationGroup:
        teams, pairs = list(group.teams.items()), [tuple(reversed(pair)) for pair in group.pairs]
        shuffle(teams)
        shuffle(pairs)
        return StationGroup({team: dict(reversed(list(students.items()))) for team, students in teams}, tuple(pairs))

    letters = list(lock.groups.items())
    shuffle(letters)
    assert write_lock(replace(lock, groups={letter: mixed(group) for letter, group in letters})) == write_lock(lock)


@settings(max_examples=30, deadline=None)
@given(locks())
def test_a_lock_is_block_style_in_the_order_of_the_format(lock: Lock) -> None:
    """The keys stand in the order of the format, and nothing stands in brackets but what is empty."""
    order = ["lock", "unit", "class", "drawn_on", "engine", "drawn_from", "how", "counted", "inputs", "seal", "groups", "repeats"]
    order += ["pair_repeats", "proved_minimum", "certificate"]
    text = write_lock(lock)
    keys = [line.partition(":")[0] for line in text.splitlines() if line[0] not in " "]
    assert keys == [key for key in order if key in keys]
    assert {"lock", "unit", "class", "drawn_on", "groups", "pair_repeats"} <= set(keys)
    assert not set("{}[]") & set(text.replace("[]", "").replace("{}", ""))


def test_the_text_of_a_small_lock() -> None:
    """Groups of two, one and none, letter for letter."""
    groups = {**tiny_lock(tiny_class(size=4)).groups, "C": StationGroup({}, ())}
    bound: dict[str, Any] = {"proved_minimum": 0, "certificate": {"p1-01": 1250}}
    lock = tiny_lock(tiny_class(size=3), groups=groups, counted=("moving-plates",), inputs="sha256 0f", seal="9b", **bound)
    assert write_lock(lock) == dedent(
        """\
        lock: 1
        unit: float-or-sink
        class: p1
        drawn_on: 2026-11-23
        engine: "1"
        drawn_from: numbers
        counted:
          - moving-plates
        inputs: "sha256 0f"
        seal: "9b"
        groups:
          A:
            teams:
              A1:
                p1-01:
                  - leader
                p1-02:
                  - recorder
            pairs:
              - - p1-01
                - p1-02
          B:
            teams:
              B1:
                p1-03:
                  - leader
            pairs:
              - - p1-03
          C:
            teams: {}
            pairs: []
        repeats: 0
        pair_repeats: 0
        proved_minimum: 0
        certificate:
          p1-01: 1250
        """
    )


def test_a_bound_that_was_not_worked_out_leaves_no_line() -> None:
    """Without a proved minimum there is neither the minimum nor a certificate."""
    text = write_lock(tiny_lock(tiny_class(size=6)))
    assert "proved_minimum" not in text
    assert "certificate" not in text


def test_a_file_of_another_version_is_not_guessed_at() -> None:
    """A later format is answered, not read."""
    lock, problems = read_lock(write_lock(tiny_lock(tiny_class(size=6))).replace("lock: 1", "lock: 2"), FILE)
    assert lock is None
    assert len(problems) == 1


def test_a_name_in_a_lock_is_an_error_of_its_own() -> None:
    """A student's name beside a number is answered as a name, once, and the lock is not used."""
    text = write_lock(tiny_lock(tiny_class(size=6))) + "names:\n  p1-01: someone\n"
    lock, problems = read_lock(text, FILE)
    assert lock is None
    assert codes(problems) == ["student-names"]


def folder(root: Path, lock: Lock, *, text: str = "", at: str = FILE, units: tuple[str, ...] = ("float-or-sink", "moving-plates")) -> Path:
    """Write a lock file, and folders for the units, below `root`."""
    (root / at).parent.mkdir(parents=True, exist_ok=True)
    (root / at).write_text(text or write_lock(lock), encoding="utf-8")
    for slug in units:
        (root / "units" / slug).mkdir(parents=True, exist_ok=True)
        (root / "units" / slug / "index.md").touch()
    return root


def problems_of(tmp_path: Path, lock: Lock, school: School | None = None, **where: Any) -> tuple[Problem, ...]:
    """Read one lock among a school's and return its problems."""
    return read_locks(folder(tmp_path, lock, **where), school or tiny_school(size=6)).problems


SIX = tiny_lock(tiny_class(size=6))


def test_a_lock_that_fits_is_found_by_class_and_unit(tmp_path: Path) -> None:
    """The lock is there under its class and unit, with the text of its file."""
    read = read_locks(folder(tmp_path, SIX), tiny_school(size=6))
    assert read.problems == ()
    assert read.locks == {("p1", "float-or-sink"): SIX}
    assert read.sources == {FILE: write_lock(SIX)}


def test_without_a_folder_there_are_no_locks(tmp_path: Path) -> None:
    """A department that has drawn nothing has no problem."""
    read = read_locks(tmp_path, tiny_school())
    assert (read.locks, read.problems, read.sources) == ({}, (), {})


@pytest.mark.parametrize(
    ("lock", "expected"),
    [
        (replace(SIX, class_id="p2"), ["lock-misplaced", "unknown-class"]),
        (replace(SIX, unit="moving-plates"), ["lock-misplaced"]),
        (replace(SIX, leveled=True), ["leveled-in-public"]),
        (replace(SIX, counted=("moving-plates", "moving-plats")), ["unknown-unit"]),
        (replace(SIX, counted=("float-or-sink",)), ["lock-counts-itself"]),
        (tiny_lock(tiny_class(size=7)), ["lock-unknown-seat"]),
        (tiny_lock(tiny_class(size=5)), ["lock-behind-class"]),
    ],
)
def test_a_lock_that_does_not_fit_is_answered(tmp_path: Path, lock: Lock, expected: list[str]) -> None:
    """Folder, class, unit, history and students are each held against what there is."""
    problems = problems_of(tmp_path, lock)
    assert sorted(codes(problems)) == sorted(expected)


def test_a_lock_with_an_error_is_not_used(tmp_path: Path) -> None:
    """Groups that do not fit are left out, so that nobody works from them."""
    assert read_locks(folder(tmp_path, tiny_lock(tiny_class(size=7))), tiny_school(size=6)).locks == {}


def test_a_student_stands_in_one_team(tmp_path: Path) -> None:
    """The second team of a student is answered, and names the first."""
    group = StationGroup({"B1": {"p1-01": ("leader",), "p1-03": ("recorder",), "p1-04": ("materials",)}}, (("p1-01", "p1-03", "p1-04"),))
    problems = problems_of(tmp_path, replace(SIX, groups={**SIX.groups, "B": group}))
    assert codes(problems) == ["lock-seat-twice"]
    assert problems[0].what == "p1-01 is in team A1 too"


def test_every_student_of_a_group_stands_in_one_pair(tmp_path: Path) -> None:
    """A student without a pair, one in two pairs and a stranger in a pair are told by number."""
    group = StationGroup(SIX.groups["A"].teams, (("p1-01", "p1-03"),))
    problems = problems_of(tmp_path, replace(SIX, groups={**SIX.groups, "A": group}))
    assert codes(problems) == ["lock-pairs"]
    assert problems[0].what.endswith("p1-02, p1-03")


def run(unit: str, starts: date) -> Run:
    """A run of p1."""
    return Run(class_id="p1", unit=unit, starts=starts)


def test_who_joins_after_a_unit_is_not_missing_from_it(tmp_path: Path) -> None:
    """A late date after the start of the run makes the lock right as it is; one before it makes the lock old."""
    late = tiny_class(size=6, late=(LateSeat(6, date(2026, 12, 7)),))
    lock = tiny_lock(tiny_class(size=5))
    before = tiny_school(classes=(late,), runs=(run("float-or-sink", date(2026, 11, 30)),))
    after = tiny_school(classes=(late,), runs=(run("float-or-sink", date(2027, 1, 11)),))
    assert problems_of(tmp_path, lock, before) == ()
    assert codes(problems_of(tmp_path, lock, after)) == ["lock-behind-class"]
    remedy = "fit them with trivet groups float-or-sink --class p1 --change --write; where a number came later than this unit"
    assert remedy in said(problems_of(tmp_path, lock, after))[0]
    folder(tmp_path, lock, at="school/groups/p1/moving-plates.yml")
    both = [each for each in said(problems_of(tmp_path, lock, after)) if "joined" in each]
    assert both and all("trivet groups --year --class p1 --change --write; where" in each for each in both)


def test_who_has_left_is_told_in_the_last_groups_alone(tmp_path: Path) -> None:
    """Groups of earlier units are history: only the latest lock of the class is asked to be drawn again."""
    left = tiny_class(size=5, gone=(6,))
    school = tiny_school(classes=(left,), runs=(run("float-or-sink", date(2026, 11, 30)), run("moving-plates", date(2027, 1, 11))))
    folder(tmp_path, replace(SIX, unit="moving-plates"), at="school/groups/p1/moving-plates.yml")
    problems = problems_of(tmp_path, SIX, school)
    assert codes(problems) == ["lock-behind-class"]
    assert problems[0].place.file == "school/groups/p1/moving-plates.yml"
    assert said(problems)[0].endswith("fit the groups of all coming units with trivet groups --year --class p1 --change --write")
    (tmp_path / "school" / "groups" / "p1" / "moving-plates.yml").unlink()
    assert said(problems_of(tmp_path, SIX, school))[0].endswith("fit them with trivet groups float-or-sink --class p1 --change --write")


def test_files_beside_the_locks_are_answered(tmp_path: Path) -> None:
    """A file that no draw reads is an error; a note is let be."""
    root = folder(tmp_path, SIX)
    for name in ("p1/old.yaml", "stray.yml", "p1/README.md"):
        (root / "school" / "groups" / name).touch()
    problems = read_locks(root, tiny_school(size=6)).problems
    assert [(p.code, p.place.file) for p in problems] == [
        ("unknown-file", "school/groups/p1/old.yaml"),
        ("unknown-file", "school/groups/stray.yml"),
    ]
