"""A unit folder is read into a unit, with all its problems at once, and nothing in it stops the reader."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.reading.unit_files import codes, only, read, unit_folder
from trivet.model.station import Kind, Material, Per, Prompt, Step
from trivet.reading.unit import read_unit

EVERYTHING = """\
standards: MS-PS2-2, MS-PS3-1
new words:
  - slope
  - friction
round: 20-35 min
stretch: true
prefer: minutes
group by: usual
roles: students
returns to: float-or-sink
pre-check:
  - ask: What makes a cart stop?
    answer: 2
    skill: forces
spot checks:
  - station: hands-on
    ask: What will you do first?
    listen for: measure
reflection: Today we found ...
rubric:
  - part: claim
    levels:
      - none
      - half
      - whole
stations:
"""
HANDS_ON = """\
    hazards: spill, glass
    instead: Work with the data of another team.
    set up: 2.5 min
    clean up: 2 min
    put away: In the box.
    safety notes:
      - Keep feet off the track.
    expected:
      - of: length
        value: 80
        tolerance: 5 cm
        source: measured last year
    watch: 20 s
    work in: team
    again: float-or-sink/hands-on
    variables:
      change: the slope
      measure: the length
      keep: the cart
      printed: true
    record:
      columns: slope (books), length (cm)
      rows:
        - one book
        - 2
"""
TEACHER_LED = """\
    start alone: Read the story.
    data:
      columns: slope (books), length (cm)
      rows:
        - 1, 80
        - 2, 120.50
      show: empty axes
    misconceptions:
      - hear: Heavy carts roll farther.
        do: Try it.
    questions:
      - ask: What else? (support)
        listen for: the floor
"""


def everything(root: Path) -> object:
    return read(
        root,
        ("standards: MS-PS2-2\nstations:\n", EVERYTHING),
        ("    hazards: none\n", HANDS_ON),
        ("    questions:\n", TEACHER_LED),
        ("write-up:\n", "write-up:\n  evidence:\n    - the table\n  reasoning: slope\n  at home: true\n"),
    )


def test_every_key_reaches_the_model(tmp_path: Path) -> None:
    """What stands under a key stands in the field that the table names, in the model's own types."""
    found = everything(tmp_path)
    assert found.problems == ()
    unit = found.unit
    assert unit.standards == ("MS-PS2-2", "MS-PS3-1")
    assert unit.new_words == ("slope", "friction")
    assert (unit.round_minutes, unit.stretch, unit.prefer, unit.group_by, unit.roles) == ((20, 35), True, "minutes", "usual", "students")
    assert unit.returns_to == ("float-or-sink",)
    assert (unit.pre_check[0].answer, unit.pre_check[0].skill) == ("2", "forces")
    assert unit.spot_checks[0].station is Kind.HANDS_ON
    assert unit.rubric[0].levels == ("none", "half", "whole")
    assert (unit.write_up.evidence, unit.write_up.at_home) == (("the table",), True)
    hands_on = unit.hands_on
    assert hands_on.hazards == ("spill", "glass")
    assert (hands_on.set_up_minutes, hands_on.clean_up_minutes, hands_on.watch_seconds) == (2.5, 2.0, 20)
    assert hands_on.materials[0] == Material(Decimal(1), "cart", Per.TEAM)
    assert hands_on.steps[0] == Step("Let the cart roll from the top and measure.", 2.0, 5)
    assert hands_on.expected[0].value == "80"
    assert hands_on.variables.printed is True
    assert hands_on.record.columns == ("slope (books)", "length (cm)")
    assert hands_on.record.rows == ("one book", "2")
    teacher_led = unit.teacher_led
    assert teacher_led.data.rows == (("1", "80"), ("2", "120.50"))
    assert teacher_led.data.drawn is False
    assert (teacher_led.questions[0].ask, teacher_led.questions[0].prompt) == ("What else?", Prompt.SUPPORT)
    assert teacher_led.misconceptions[0].hear == "Heavy carts roll farther."
    assert unit.body_line > 40
    assert unit.places.find("stations", "hands-on", "steps", 0).line > 1


def test_defaults_need_no_key(tmp_path: Path) -> None:
    """A unit of the least keys has the model's defaults."""
    unit = read(tmp_path).unit
    assert unit.group_by == "mixed"
    assert unit.online.explore_minutes is None
    assert unit.round_minutes is None
    assert unit.hands_on.hazards == ()


def test_empty_rows_are_counted(tmp_path: Path) -> None:
    """A number of rows makes as many rows without a label."""
    found = read(tmp_path, ("    done when: Ten", "    record:\n      columns: length\n      rows: 3\n    done when: Ten"))
    assert found.unit.hands_on.record.rows == ("", "", "")


def test_files_of_the_folder_are_listed(tmp_path: Path) -> None:
    """Every file of the folder is named but index.md, hidden files and links."""
    folder = unit_folder(tmp_path, slug="float-or-sink")
    (folder / ".hidden").write_text("x")
    (folder / "link.csv").symlink_to("data/another-class.csv")
    found = read_unit(folder, "float-or-sink", tmp_path, ("float-or-sink",))
    assert found.unit.files == ("data/another-class.csv", "sim/index.html", "sim/tank.css", "sim/tank.js", "story.md")
    assert found.unit.teacher_led.read.words > 40


def test_all_problems_are_told_at_once(tmp_path: Path) -> None:
    """A key, a form, a hazard, a file and a link that are wrong are five answers, in the order of the file."""
    found = read(
        tmp_path,
        ("title:", "titel:"),
        ("(2 min, 5 times)", "(2 min x 5)"),
        ("    hazards: none", "    hazards: fire\n    instead: gone.csv"),
        ("(../float-or-sink/)", "(../float-or-sunk/)"),
    )
    assert found.unit is None
    assert codes(found) == ["unknown-key", "step-unreadable", "unknown-hazard", "file-not-there", "link-to-nothing"]


def test_quoted_text_is_marked_at_its_part(tmp_path: Path) -> None:
    """In a text in quotes the mark still stands under the faulty part."""
    found = read(tmp_path, ("- Let the cart roll and write how far it gets. (2 min, 5 times)", '- "Note: let it roll. (2 min x 5)"'))
    place = only(found, "step-unreadable").place
    line = found.sources["units/rolling-carts/index.md"].split("\n")[place.line - 1]
    assert line[place.column - 1 : place.column - 1 + place.length] == "2 min x 5"


def test_warnings_do_not_stop_a_unit(tmp_path: Path) -> None:
    """A unit with warnings and advice alone is a unit."""
    found = read(tmp_path, ("standards: MS-PS2-2", "standards: TX.7.6A"), ("    hazards: none", "    hazards: none\n    watch: 60 s"))
    assert sorted(codes(found)) == ["foreign-standard", "long-watch"]
    assert found.unit is not None


def test_unit_that_is_a_link_is_not_followed(tmp_path: Path) -> None:
    """An index.md that is a link is answered and never read."""
    folder = tmp_path / "units" / "rolling-carts"
    folder.mkdir(parents=True)
    (tmp_path / "secret.md").write_text("---\ntitle: secret\n---\n")
    (folder / "index.md").symlink_to(tmp_path / "secret.md")
    found = read_unit(folder, "rolling-carts", tmp_path, ())
    assert found.unit is None
    assert codes(found) == ["file-is-link"]
    assert "secret" not in str(found.sources)


@pytest.mark.parametrize(
    "content",
    [b"", b"\xff\xfe", b"---\n", b"---\n- a\n---\n", b"---\na: [1, {}]\n---\n", b"\x00" * 9, b"---\n---\n", "título".encode("latin-1")],
)
def test_odd_files_are_answered(tmp_path: Path, content: bytes) -> None:
    """Whatever bytes stand in index.md, the answer is a problem and no unit."""
    folder = unit_folder(tmp_path)
    (folder / "index.md").write_bytes(content)
    found = read_unit(folder, "rolling-carts", tmp_path, ())
    assert found.unit is None
    assert found.problems


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.data())
def test_no_content_raises(tmp_path: Path, data: st.DataObject) -> None:
    """Lines of a unit swapped, cut, doubled or filled with odd text never raise, and every problem has a line that exists."""
    folder = unit_folder(tmp_path)
    lines = (folder / "index.md").read_text(encoding="utf-8").split("\n")
    for _ in range(data.draw(st.integers(1, 3))):
        at = data.draw(st.integers(0, len(lines) - 1))
        how = data.draw(st.sampled_from(["delete", "double", "cut", "odd", "indent"]))
        odd = data.draw(st.text(max_size=12))
        changed = {
            "delete": [],
            "double": [lines[at]] * 2,
            "cut": [lines[at][: len(lines[at]) // 2]],
            "odd": [lines[at] + odd],
            "indent": [" " + lines[at]],
        }
        lines[at : at + 1] = changed[how]
        if not lines:
            lines = [""]
    (folder / "index.md").write_text("\n".join(lines), encoding="utf-8")
    found = read_unit(folder, "rolling-carts", tmp_path, ())
    total = len((folder / "index.md").read_text(encoding="utf-8").splitlines()) + 1
    assert all(1 <= problem.place.line <= total for problem in found.problems)
