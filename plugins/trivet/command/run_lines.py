"""The lines of a run as school/runs.yml holds them, and that file with one run more: comments, order and line ends stay."""

from __future__ import annotations

import re
from collections.abc import Sequence

from trivet.model.school import Run
from trivet.planning.say import say_gap

ITEM = re.compile(r"^(\s*)-(\s+)\S")


def run_lines(run: Run) -> tuple[str, ...]:
    """Return the keys of a run, one a line, without dash and indentation."""
    lines = [f"class: {run.class_id}", f"unit: {run.unit}"]
    if run.begins == "date":
        lines.append(f"starts: {run.starts}")
    if run.after:
        lines.append(f"after: {run.after}")
    if run.gap_days:
        lines.append(f"gap: {say_gap(run.gap_days)}")
    if run.by is not None:
        lines.append(f"by: {run.by}")
    if run.way == "whole_class":
        lines.append("way: whole class")
    if run.second_adult is not None:
        lines.append(f"second adult: {run.second_adult.value.replace('_', '-')}")
    return tuple(lines)


def as_item(lines: Sequence[str], text: str) -> tuple[str, ...]:
    """Return the lines as an item of the list of runs, indented as the file (`text`) does it."""
    before, after = next(((m[1], m[2]) for m in map(ITEM.match, _runs(text)) if m), ("  ", " "))
    inner = " " * len(f"{before}-{after}")
    return (f"{before}-{after}{lines[0]}", *(f"{inner}{line}" for line in lines[1:]))


def with_run(text: str, lines: Sequence[str]) -> tuple[str, int]:
    """Return the file with the run as its last one, and the number of its first line. `text` is "" where there is no file."""
    end = "\r\n" if "\r\n" in text else "\n"
    mark = "\ufeff" if text.startswith("\ufeff") else ""
    text = text.removeprefix(mark)
    rows = text.splitlines() if text.strip() else ["runs:"]
    item = as_item(lines, text)
    rows = [re.sub(r"^(runs:)\s*\[\s*\]", r"\1", row) for row in rows]
    if not any(row.startswith("runs:") for row in rows):
        rows.append("runs:")
    # After the last line that says something: what stands below it are comments about nothing, or about the end.
    last = max(place for place, row in enumerate(rows) if row.strip() and not row.lstrip().startswith("#"))
    rows[last + 1 : last + 1] = item
    return mark + end.join(rows) + end, last + 2


def _runs(text: str) -> Sequence[str]:
    """The lines below `runs:`."""
    rows = text.splitlines()
    begin = next((place for place, row in enumerate(rows) if row.startswith("runs:")), len(rows))
    return rows[begin + 1 :]
