"""The guide's page on how long a class can go with new teammates: worked out, then written as a table and a drawing.

`TRIVET_REFRESH=1 python -m pytest tests/planning/grouping/test_how_long.py` writes both again (about a minute).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from trivet.pages.colors import LIGHT
from trivet.planning.grouping.weeks import weeks
from trivet.planning.team_sizes import class_shape

ROOT = Path(__file__).resolve().parent.parent.parent
PAGE = ROOT / "units/guide/how-long.md"
DRAWING = ROOT / "units/guide/how-long.svg"
SIZES = range(18, 41)
EXAMPLE = 31

NAMES = {3: "three", 4: "four", 5: "five"}
WIDTH, TOP, ROW, LEFT, UNIT = 360, 44, 20, 44, 18
"""Of the drawing, in pixels; one unit of a school year is as long as a row is high."""


@dataclass(frozen=True, slots=True)
class Row:
    """One class size: units in which all teammates are new, the most that counting allows, and the first unit after them."""

    students: int
    teams: tuple[int, ...]
    new: int
    ceiling: int
    repeats: int
    unavoidable: bool


def row(students: int) -> Row:
    """Work out one class size."""
    found = weeks(students)
    teams = tuple(sorted((size for group in class_shape(students) for size in group), reverse=True))
    pairs = students * (students - 1) // 2
    last = found[-1]
    return Row(
        students,
        teams,
        sum(not unit.repeats for unit in found),
        pairs // sum(size * (size - 1) // 2 for size in teams),
        last.repeats,
        last.unavoidable,
    )


def teams_in_words(teams: Sequence[int]) -> str:
    """Return the teams as people say them: 5 fours and 4 threes."""
    counted = Counter(teams)
    return " and ".join(f"{counted[size]} {NAMES[size]}{'' if counted[size] == 1 else 's'}" for size in sorted(counted, reverse=True))


def next_in_words(row: Row) -> str:
    """Return what the unit after the new ones brings."""
    met = "one pair has worked together" if row.repeats == 1 else f"{row.repeats} pairs have worked together"
    return f"{met}; " + ("fewer is not possible" if row.unavoidable else "fewer may be possible")


def table_line(row: Row) -> str:
    """Return the line of a class size in the table."""
    return f"| {row.students} | {teams_in_words(row.teams)} | {row.new} | {row.ceiling} | {next_in_words(row)} |"


PAGE_TEXT = """\
---
title: How long can a class go?
description: In how many units everyone gets new teammates, for classes of {first} to {last}.
---

# How long can a class go?

New groups in every unit: for how many units does everyone get teammates they have not worked with yet? It hangs on the size of the \
class and of its teams. For classes of {first} to {last} in teams of three and four it is {least} to {most} units, more than most \
classes run in a year.

![{described}](how-long.svg)

A full bar is a unit in which all teammates are new. The dashed line goes on to where counting says stop: a class of {example} has \
{pairs} pairs, a unit uses up {used} of them, so no arrangement whatever can have more than {ceiling} such units.

| class | teams | units all new | at most | in the unit after that |
| --- | --- | --- | --- | --- |
{lines}

*Fewer is not possible* means: after these units, proved. *Fewer may be possible* means that we found none and have no proof.

These are classes without rules, levels or absences. Rules that keep two together, mixed teams and a leveled unit cost some; \
`trivet groups --year --class p1` says what your own class can have. For another size or other teams ask \
`trivet groups --students 31 --team 3`. [How groups are made](grouping.md) says how the draw works.
"""


def page(rows: Sequence[Row]) -> str:
    """Return the page."""
    some = next(row for row in rows if row.students == EXAMPLE)
    return PAGE_TEXT.format(
        first=rows[0].students,
        last=rows[-1].students,
        least=min(row.new for row in rows),
        most=max(row.new for row in rows),
        described=described(rows),
        example=EXAMPLE,
        pairs=EXAMPLE * (EXAMPLE - 1) // 2,
        used=sum(size * (size - 1) // 2 for size in some.teams),
        ceiling=some.ceiling,
        lines="\n".join(map(table_line, rows)),
    )


def described(rows: Sequence[Row]) -> str:
    """Return the drawing in words."""
    return "Units with all teammates new, by class size: " + ", ".join(f"{row.students} students {row.new}" for row in rows)


FONT = "-apple-system, 'Segoe UI', Roboto, 'Noto Sans', 'Liberation Sans', sans-serif"


def drawing(rows: Sequence[Row]) -> str:
    """Return the drawing: a bar for each class size, one step a unit, and a dashed line on to what counting allows."""
    height = TOP + ROW * len(rows) + 12
    size = f'width="{WIDTH}" height="{height}"'
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" {size} viewBox="0 0 {WIDTH} {height}"',
        f'  font-family="{FONT}" font-size="13" fill="{LIGHT["ink"]}">',
        f"<title>{described(rows)}</title>",
        f'<rect {size} fill="{LIGHT["paper"]}"/>',
        *_scale(rows, height),
        *(line for place, row in enumerate(rows) for line in _bar(row, TOP + ROW * place)),
        "</svg>",
    ]
    return "\n".join(lines) + "\n"


def _scale(rows: Sequence[Row], height: int) -> Iterator[str]:
    yield f'<text x="{LEFT}" y="16">units with all teammates new</text>'
    yield f'<text x="{LEFT - 8}" y="36" text-anchor="end" fill="{LIGHT["ink-2"]}">class</text>'
    most = max(row.ceiling for row in rows)
    for units in range(most + 1):
        x, tick = LEFT + UNIT * units, 7 if units % 5 == 0 else 4
        yield f'<path d="M{x} {TOP - tick}V{TOP}" stroke="{LIGHT["rule-mark"]}"/>'
        if units and units % 5 == 0:
            yield f'<path d="M{x} {TOP}V{height - 12}" stroke="{LIGHT["rule"]}"/>'
            yield f'<text x="{x}" y="34" text-anchor="middle" fill="{LIGHT["ink-2"]}">{units}</text>'


def _bar(row: Row, top: int) -> Iterator[str]:
    middle, end = top + ROW // 2, LEFT + UNIT * row.new
    yield f'<text x="{LEFT - 8}" y="{middle + 5}" text-anchor="end">{row.students}</text>'
    yield f'<rect x="{LEFT}" y="{top + 2}" width="{UNIT * row.new}" height="{ROW - 4}" fill="{LIGHT["ink"]}"/>'
    if row.ceiling > row.new:
        yield f'<path d="M{end} {middle}H{LEFT + UNIT * row.ceiling}" stroke="{LIGHT["ink-2"]}" stroke-width="1.5" stroke-dasharray="3 3"/>'
    yield f'<text x="{end - 5}" y="{middle + 5}" text-anchor="end" fill="{LIGHT["paper"]}">{row.new}</text>'
