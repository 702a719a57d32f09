"""A small project in files: one class of twelve, three units in a row, a private list full of canaries."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from pathlib import Path

import click
from click.testing import CliRunner, Result

CANARIES = ("Quillfeather", "Zebulon", "large-print-canary", "sesame-canary", "oldest-canary")
"""Names, needs, what to avoid, a table: must never come out."""

LEVELS = (97, 14, 83, 22, 71, 35, 66, 41, 59, 48, 77, 29)

UNIT = """\
---
title: {title}
question: What decides whether a block floats?
grades: 6-8
stations:
  online:
    goal: Find what decides whether a block floats.
    open: https://example.org/tank/
    steps:
      - Set the volume and drop a block. (6 min)
      - Find where sinking begins. (10 min)
    done when: You have both volumes in the table.
  hands-on:
    goal: Find which solid is which.
    materials:
      - 1 graduated cylinder 25 mL per team
    hazards: none
    steps:
      - Weigh the dry solid. (2 min, 3 times)
      - Read the water, slide the solid in, read again. (3 min, 3 times)
    done when: Three densities stand in the table.
  teacher-led:
    goal: Read an experiment and judge its claim.
    questions:
      - ask: What did they change, and what did they measure?
        listen for: the stone; mass and volume
      - ask: Which point would you measure again, and why?
        listen for: the one off the line
      - ask: What would you ask them?
        listen for: how often they measured
    done when: You can say whether the data support the claim.
write-up:
  claim starts: Whether an object floats depends on ...
---

Notes.
"""

SCHOOL = {
    "school.yml": """\
        name: Marsh Lane Middle School
        demo: true
        locale: en-US
        paper: letter
        site: https://trivet.example/
        time zone: America/Chicago
        teachers:
          rowan: Ms. Rowan
        """,
    "bells.yml": """\
        day types:
          regular:
            P1: 8:05-8:57
        """,
    "calendar.yml": """\
        first day: 2026-08-24
        last day: 2027-06-04
        week:
          Monday: regular
          Tuesday: regular
          Wednesday: regular
          Thursday: regular
          Friday: regular
        """,
    "classes.yml": """\
        classes:
          p1:
            name: Science 7, period 1
            teacher: rowan
            grade: 7
            period: P1
            room: r12
            numbers: 1-12
          p9:
            name: Science 8, period 1
            teacher: rowan
            grade: 8
            period: P1
            room: r12
            numbers: 1-9
        """,
    "rooms.yml": """\
        rooms:
          r12:
            name: Room 12
            online: tables by the window
            hands-on: benches with sinks
            teacher-led: half-round table by the board
            teacher sees: hands-on, online
            devices: 12
        """,
    "roles.yml": """\
        roles:
          leader:
            name: Leader
            does: Keeps the team on the step.
            watch for: asks before telling
          recorder:
            name: Recorder
            does: Writes what the team sees.
            watch for: writes at once
          materials:
            name: Materials manager
            does: Fetches, checks and puts away.
            watch for: counts
          reporter:
            name: Reporter
            does: Tells what the team learned.
            watch for: says what the data show
          timekeeper:
            name: Timekeeper
            does: Says when half the time is gone.
            watch for: looks at the clock
        """,
    "expectations.yml": """\
        expectations:
          - We keep hands, feet and things where they belong.
          - We ask three peers first. Danger goes to the nearest adult at once.
        """,
    "inventory.yml": """\
        items:
          - item: graduated cylinder 25 mL
            have: 2
            store: north prep room
        """,
    "runs.yml": """\
        runs:
          - class: p1
            unit: floating
            starts: 2026-10-05
          - class: p1
            unit: plates
            starts: 2026-11-09
          - class: p1
            unit: seeds
            starts: 2027-01-11
          - class: p9
            unit: plates
            starts: 2026-11-16
        """,
}


def roster(rules: dict[int, str] | None = None) -> str:
    """Return the private list of class p1; `rules` by seat."""
    rows = ["seat,name,level,table,rules,needs,avoid,agreement,adult"]
    for seat, level in enumerate(LEVELS, start=1):
        rule = f'"{(rules or {}).get(seat, "")}"'
        rows.append(
            f"{seat},Zebulon Quillfeather {seat},{level},oldest-canary {(seat - 1) // 4},{rule},large-print-canary,sesame-canary,yes,"
        )
    return "\n".join(rows) + "\n"


def small_project(to: Path, *, rules: dict[int, str] | None = None, listed: bool = True) -> Path:
    """Write the project to `to` and return it."""
    for slug, title in (("floating", "Float or sink?"), ("plates", "Moving plates"), ("seeds", "Beaks and seeds")):
        folder = to / "units" / slug
        folder.mkdir(parents=True)
        (folder / "index.md").write_text(UNIT.format(title=title), encoding="utf-8")
    (to / "school").mkdir()
    for name, text in SCHOOL.items():
        (to / "school" / name).write_text(textwrap.dedent(text), encoding="utf-8")
    if listed:
        example = to / "private" / "example"
        example.mkdir(parents=True)
        (example / "roster-p1.csv").write_text(roster(rules), encoding="utf-8")
    return to


def run(command: click.Command, root: Path, arguments: Sequence[str]) -> Result:
    """Call a command on a project, as the shell would."""
    return CliRunner().invoke(command, list(arguments), obj=root, catch_exceptions=False)


def everything_below(folder: Path) -> str:
    """Return the text of every file of a project but the private lists themselves."""
    return "\n".join(p.read_text(encoding="utf-8") for p in sorted(folder.rglob("*")) if p.is_file() and not p.name.startswith("roster-"))
