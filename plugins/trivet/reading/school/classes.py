"""`school/classes.yml`: the classes, by numbers alone."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from trivet.model.problem import Problem
from trivet.model.school import LateSeat, SchoolClass
from trivet.reading.school.dates import read_date
from trivet.reading.school.sheet import Sheet
from trivet.reading.school.values import comma_list, ends_of, entries, stretches

Path = tuple[str | int, ...]


def read_classes(sheet: Sheet) -> tuple[Mapping[str, SchoolClass], tuple[Problem, ...]]:
    """Return the classes by id, and what is wrong with their numbers."""
    problems: list[Problem] = []
    classes = {class_id: _class(sheet, class_id, said, problems) for class_id, said in sheet.data["classes"].items()}
    return classes, tuple(problems)


def _class(sheet: Sheet, class_id: str, said: Mapping[str, Any], problems: list[Problem]) -> SchoolClass:
    path = ("classes", class_id)
    numbers = _numbers(sheet, (*path, "numbers"), said["numbers"], problems)
    late = _late(sheet, (*path, "late"), said.get("late", []), numbers, problems)
    joined = numbers | {each.seat for each in late}
    gone = _gone(sheet, (*path, "gone"), said.get("gone", []), joined, problems)
    seats = tuple(sorted(joined - set(gone)))
    if joined and not seats:
        remedy = "leave the class out, or mend its numbers"
        problems.append(sheet.error("empty-class", (*path, "gone"), "no student is left in this class", remedy))
    return SchoolClass(
        id=class_id,
        name=said["name"],
        teacher=said["teacher"],
        grade=said["grade"],
        period=said["period"],
        room=said["room"],
        seats=seats,
        meets=comma_list(said.get("meets", [])),
        late=tuple(each for each in late if each.seat not in gone),
        gone=gone,
        avoid=comma_list(said.get("avoid", [])),
        adults=said.get("adults", 1),
    )


def _numbers(sheet: Sheet, path: Path, said: Any, problems: list[Problem]) -> set[int]:
    numbers: set[int] = set()
    for text, at in entries(said, path):
        low, high = (int(end) for end in ends_of(text))
        if low > high:
            problems.append(sheet.error("numbers-backwards", at, f"{low} is more than {high}", f"write {high}-{low}"))
            low, high = high, low
        stretch = set(range(low, high + 1))
        if twice := numbers & stretch:
            what = f"{stretches(twice)} stands here twice"
            problems.append(sheet.error("number-twice", at, what, f"write {stretches(numbers | stretch)}"))
        numbers |= stretch
    return numbers


def _gone(sheet: Sheet, path: Path, said: Any, joined: set[int], problems: list[Problem]) -> tuple[int, ...]:
    gone: list[int] = []
    for text, at in entries(said, path):
        number = int(text)
        if number in gone:
            problems.append(sheet.error("number-twice", at, f"{number} stands here twice", "leave one of them out"))
        elif number not in joined:
            what = f"{number} has left, but the class has only {stretches(joined)}"
            problems.append(sheet.error("number-not-in-class", at, what, "write a number of the class, or leave it out"))
        else:
            gone.append(number)
    return tuple(sorted(gone))


def _late(sheet: Sheet, path: Path, said: Any, numbers: set[int], problems: list[Problem]) -> tuple[LateSeat, ...]:
    late: dict[int, LateSeat] = {}
    for text, at in entries(said, path):
        number, _, written = text.partition(" from ")
        seat, first = int(number), read_date(sheet, at, written.strip(), problems)
        if seat in late:
            problems.append(sheet.error("number-twice", at, f"{seat} stands here twice", "leave one of them out"))
        elif seat in numbers:
            what = f"{seat} is among the numbers from the first day on and joins late"
            left = stretches(numbers - {seat})
            remedy = f"write numbers: {left}, or leave {seat} out here" if left else "leave it out here"
            problems.append(sheet.error("number-twice", at, what, remedy))
        elif first is not None:
            late[seat] = LateSeat(seat, first)
    return tuple(sorted(late.values(), key=lambda each: each.seat))
