"""Where in school/ a run, a class, a room or kept groups stand."""

from __future__ import annotations

from trivet.model.department import Department
from trivet.model.places import Places
from trivet.model.problem import Place
from trivet.model.school import Run

RUNS, CLASSES, ROOMS = "school/runs.yml", "school/classes.yml", "school/rooms.yml"


def in_file(department: Department, file: str, *path: str | int) -> Place:
    """Return the place of the value at `path` of a file, else of the nearest thing above it."""
    return department.places.get(file, Places(file)).find(*path)


def of_run(department: Department, run: Run, *path: str) -> Place:
    """Return the place of a run, or of one of its values."""
    return in_file(department, RUNS, "runs", run.index, *path)


def named(run: Run) -> str:
    """Return how a run is called in a message."""
    return f"{run.class_id}, {run.unit}"
