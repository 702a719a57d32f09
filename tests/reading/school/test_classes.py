from __future__ import annotations

from datetime import date

import pytest

from tests.support.sheets import said, schema_problems, sheet
from trivet.model.problem import Problem
from trivet.model.school import LateSeat, SchoolClass
from trivet.reading.school.classes import read_classes

LEAST = "classes:\n  p1:\n    name: Science 7, period 1\n    teacher: rowan\n    grade: 7\n    period: P1\n    room: r12\n"


def read_all(*lines: str) -> tuple[SchoolClass | None, tuple[Problem, ...]]:
    """Read one class with these lines below the others; None where its numbers can't be so."""
    classes, problems = read_classes(sheet("classes", LEAST + "".join(f"    {line}\n" for line in lines)))
    return classes.get("p1"), problems


def read(*lines: str) -> tuple[SchoolClass, tuple[Problem, ...]]:
    """Read one class whose numbers can be read."""
    school_class, problems = read_all(*lines)
    assert school_class is not None
    return school_class, problems


def test_a_class_needs_only_its_place_and_its_numbers() -> None:
    """One adult, every day, nothing to avoid: all of it by default."""
    school_class, problems = read("numbers: 1-31")
    assert problems == ()
    assert school_class.seats == tuple(range(1, 32))
    assert (school_class.adults, school_class.meets, school_class.avoid, school_class.late, school_class.gone) == (1, (), (), (), ())


@pytest.mark.parametrize(
    ("written", "seats"), [("5", (5,)), ("1-3, 5, 7-8", (1, 2, 3, 5, 7, 8)), ("1 to 3", (1, 2, 3)), ("1–3", (1, 2, 3))]
)
def test_numbers_are_stretches_or_single_ones(written: str, seats: tuple[int, ...]) -> None:
    """A lone number, a comma list, the word `to` and a long dash are all read."""
    assert read(f"numbers: {written}")[0].seats == seats


def test_those_gone_leave_and_those_late_join() -> None:
    """The seats in use are the numbers without the gone ones and with the late ones, ascending."""
    school_class, problems = read("numbers: 1-9, 11-31", "gone: 9", "late: 32 from 2026-10-05")
    assert problems == ()
    assert school_class.seats == (*range(1, 9), *range(11, 33))
    assert school_class.gone == (9,)
    assert school_class.late == (LateSeat(32, date(2026, 10, 5)),)


def test_one_who_came_late_may_leave_again() -> None:
    """A number that joined and left is gone, and no longer late."""
    school_class, problems = read("numbers: 1-3", "late: 4 from 2026-10-05", "gone: 4")
    assert problems == ()
    assert (school_class.seats, school_class.late, school_class.gone) == ((1, 2, 3), (), (4,))


def test_rotation_days_and_what_to_avoid_are_comma_lists() -> None:
    """Both may be one thing or several."""
    school_class, _ = read("numbers: 1-3", "meets: A, C", "avoid: latex, peanut", "adults: 2")
    assert (school_class.meets, school_class.avoid, school_class.adults) == (("A", "C"), ("latex", "peanut"), 2)


@pytest.mark.parametrize(
    ("lines", "sentence"),
    [
        (("numbers: 31-1",), "8: class p1, numbers: 31-1 runs backward; write numbers: 1-31"),
        (("numbers: 1-9, 9-12",), "8: class p1, numbers: 9 is named twice; write numbers: 1-12"),
        (("numbers: 1-3", "gone: 2, 2"), "9: class p1, gone: 2 is named twice; write gone: 2"),
        (("numbers: 1-3", "late: 4 from 2026-02-30"), "9: class p1, late: February 2026 has 28 days; write late: 4 from 2026-02-28"),
        (("numbers: 1-3", "late: 4 from 2026-10-05, 4 from 2026-10-06"), "9: class p1, late: 4 joins twice; leave one of the two out"),
    ],
)
def test_numbers_that_can_not_be_are_answered_and_the_class_is_left_out(lines: tuple[str, ...], sentence: str) -> None:
    """Each slip is one error at its line, with the corrected line where it can be given."""
    school_class, problems = read_all(*lines)
    assert school_class is None
    assert said(problems) == [sentence]


@pytest.mark.parametrize(
    ("lines", "sentence"),
    [
        (
            ("numbers: 1-3", "gone: 9"),
            "9: class p1, gone: 9 has left, but the class has only 1-3; write a number of the class, or leave it out",
        ),
        (("numbers: 1-2", "gone: 1, 2"), "9: class p1, gone: no student is left in this class; leave the class out, or mend its numbers"),
        (
            ("numbers: 1-3", "late: 3 from 2026-10-05"),
            "9: class p1, late: 3 joins late, and stands among `numbers` too; write numbers: 1-2, or leave 3 out here",
        ),
    ],
)
def test_numbers_that_contradict_each_other_are_answered(lines: tuple[str, ...], sentence: str) -> None:
    """Each contradiction is one error at its line, with the corrected numbers where they can be given."""
    assert said(read(*lines)[1]) == [sentence]


def test_a_class_id_has_a_form() -> None:
    """Ids become addresses and parts of numbers: small letters, digits and hyphens, a letter first, at most twelve."""
    for bad in ("P1", "1p", "a-very-long-class"):
        problems = schema_problems("classes", LEAST.replace("p1:", f"{bad}:") + "    numbers: 1-3\n")
        assert len(problems) == 1, bad
        assert "write the class id with a small letter first" in problems[0]
    assert schema_problems("classes", LEAST.replace("p1:", "r12-p3:") + "    numbers: 1-3\n") == []


def test_a_class_id_that_stands_twice_is_answered_with_both_lines() -> None:
    """Ids are unique in the department, and YAML would let the second win without a word."""
    twice = LEAST + "    numbers: 1-3\n" + LEAST.partition("\n")[2] + "    numbers: 1-3\n"
    problems = schema_problems("classes", twice)
    assert len(problems) == 1
    assert problems[0].startswith("9: ")
    assert "line 2" in problems[0]


def test_there_is_no_number_zero_and_none_above_99() -> None:
    """A student's number has two digits, from 01."""
    for bad in ("0-31", "1-100", "0", "100"):
        assert len(schema_problems("classes", LEAST + f"    numbers: {bad}\n")) == 1, bad
