"""`school/classes.yml`: the classes, by numbers alone."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from trivet.model.problem import Problem
from trivet.model.school import LateSeat, SchoolClass
from trivet.reading.forms import write_numbers
from trivet.reading.school.sentences import read_sentence
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.values import listed


def read_classes(sheet: Sheet) -> tuple[Mapping[str, SchoolClass], tuple[Problem, ...]]:
    """Return the classes by id, and what is wrong with their numbers. A class whose numbers can't be so is left out."""
    problems: list[Problem] = []
    read = (_class(sheet, class_id, said, problems) for class_id, said in sheet.data["classes"].items())
    return {each.id: each for each in read if each}, tuple(problems)


def _class(sheet: Sheet, class_id: str, said: Mapping[str, Any], problems: list[Problem]) -> SchoolClass | None:
    path = ("classes", class_id)
    numbers = read_sentence(sheet, (*path, "numbers"), "numbers", said["numbers"], problems)
    gone = read_sentence(sheet, (*path, "gone"), "numbers", said["gone"], problems) if "gone" in said else ()
    late = read_sentence(sheet, (*path, "late"), "late", said["late"], problems) if "late" in said else ()
    if numbers is None or gone is None or late is None:
        return None
    problems += _contradictions(sheet, path, numbers, gone, late)
    return SchoolClass(
        id=class_id,
        name=said["name"],
        teacher=said["teacher"],
        grade=said["grade"],
        period=said["period"],
        room=said["room"],
        seats=tuple(sorted({*numbers, *(each.seat for each in late)} - set(gone))),
        meets=listed(said.get("meets")),
        late=tuple(each for each in late if each.seat not in gone),
        gone=gone,
        avoid=listed(said.get("avoid")),
        adults=said.get("adults", 1),
    )


def _contradictions(
    sheet: Sheet, path: tuple[str, ...], numbers: tuple[int, ...], gone: tuple[int, ...], late: tuple[LateSeat, ...]
) -> list[Problem]:
    problems = []
    both = {each.seat for each in late} & set(numbers)
    joined = {*numbers, *(each.seat for each in late)}
    if both:
        left = write_numbers(sorted(set(numbers) - both))
        what = f"{write_numbers(sorted(both))} joins late, and stands among `numbers` too"
        remedy = f"write numbers: {left}, or leave {write_numbers(sorted(both))} out here" if left else "leave it out here"
        problems.append(sheet.error("number-twice", (*path, "late"), what, remedy))
    if strangers := set(gone) - joined:
        what = f"{write_numbers(sorted(strangers))} has left, but the class has only {write_numbers(sorted(joined))}"
        problems.append(sheet.error("number-not-in-class", (*path, "gone"), what, "write a number of the class, or leave it out"))
    if joined and joined <= set(gone):
        remedy = "leave the class out, or mend its numbers"
        problems.append(sheet.error("empty-class", (*path, "gone"), "no student is left in this class", remedy))
    return problems
