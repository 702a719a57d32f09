from __future__ import annotations

from dataclasses import fields
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support.department import tiny_class
from tests.support.sheets import codes
from trivet.model.problem import Problem
from trivet.model.roster import PairRule, Roster, RuleKind, Student
from trivet.reading import roster_titles
from trivet.reading.roster import read_roster, roster_of
from trivet.reading.schemas import schema

FILE = "private/roster-p1.csv"
SIX = tiny_class(size=6)
SECRET = "Quillfeather"


def read(text: str, school_class: object = SIX) -> tuple[Roster | None, tuple[Problem, ...]]:
    """Read a roster of a class of six."""
    return roster_of(text, FILE, school_class)  # type: ignore[arg-type] # a class, whatever the variant


def rows_of(*lines: str, title: str = "seat,name,level,rules") -> str:
    """A roster with these lines, filled up to six seats."""
    written = {line.partition(",")[0] for line in lines}
    return "\n".join([title, *lines, *(str(seat) for seat in range(1, 7) if str(seat) not in written)]) + "\n"


def test_a_roster_says_all_that_is_known_of_a_student() -> None:
    """Each column reaches its field."""
    text = (
        "seat,name,level,table,rules,needs,avoid,agreement,adult\n"
        "2,Ada Quillfeather,72,4,not in one team: 3,large print,latex,yes,yes\n"
        "1,,,,,,,no,\n3,,,,,,,,no\n4,,,,,,,,\n5,,,,,,,,\n6,,,,,,,,\n"
    )
    roster, problems = read(text)
    assert problems == ()
    assert roster is not None
    assert roster.students[1] == Student(
        seat=2, name="Ada Quillfeather", level=72, table="4", needs="large print", avoid="latex", agreement=True, adult=True
    )
    assert (roster.students[0].agreement, roster.students[2].agreement, roster.students[2].adult) == (False, None, False)
    assert roster.rules == (PairRule(RuleKind.NOT_ONE_TEAM, 2, 3),)
    assert [student.seat for student in roster.students] == [1, 2, 3, 4, 5, 6]


def test_only_seat_must_be_there_and_columns_stand_in_any_order() -> None:
    """A class list of numbers and levels is enough, the level first."""
    roster, problems = read("level,seat\n" + "".join(f"{level},{seat}\n" for seat, level in enumerate((1, 2, 3, 4, 1, 2), start=1)))
    assert problems == ()
    assert roster is not None
    assert [student.level for student in roster.students] == [1, 2, 3, 4, 1, 2]


@pytest.mark.parametrize(
    "data", [b"\xef\xbb\xbfseat,name\r\n1,Zo\xc3\xab\r\n", b"seat;name\n1;Zo\xc3\xab\n", b'"seat","name"\r\n"p1-01","Zo\xc3\xab"\r\n']
)
def test_what_spreadsheets_write_is_read(tmp_path: Path, data: bytes) -> None:
    """A byte-order mark, Windows line ends, quotes, semicolons and whole numbers of students are all read."""
    (tmp_path / "roster-p1.csv").write_bytes(data)
    roster, problems = read_roster(tmp_path, tiny_class(size=1))
    assert problems == ()
    assert roster is not None
    assert roster.students[0].name == "Zoë"


def test_without_a_file_there_is_no_roster_and_no_problem(tmp_path: Path) -> None:
    """A class may be drawn by number."""
    assert read_roster(tmp_path, SIX) == (None, ())


def test_language_partners_and_fixed_seats() -> None:
    """A language partner is a rule for two; a fixed seat is a mark of one student; a list of numbers fixes a whole team."""
    roster, problems = read(rows_of('1,,,"language partner: 4; Fixed  seat"', '2,,,"same team: 3, 5"'))
    assert problems == ()
    assert roster is not None
    assert roster.rules == tuple(
        sorted(
            PairRule(kind, *two)
            for kind, two in (
                (RuleKind.LANGUAGE, (1, 4)),
                (RuleKind.SAME_TEAM, (2, 3)),
                (RuleKind.SAME_TEAM, (2, 5)),
            )
        )
    )
    assert [student.seat for student in roster.students if student.fixed] == [1]


@pytest.mark.parametrize(
    ("cell", "remedy"),
    [
        ("not in one taem: 2", "write `not in one team: 12`"),
        ("language partners: 2", "write `language partner: 12`"),
        ("fixed seats", "write `fixed seat`"),
        ("fixed seat: 3", "write `fixed seat`"),
        ("support spread: 3", "write `not in one team: 12, 20; same team: 5;"),
    ],
)
def test_a_misspelled_rule_is_answered_with_the_nearest(cell: str, remedy: str) -> None:
    """The remedy is the form that was probably meant, else all forms; kinds that follow from columns can't be written."""
    roster, problems = read(rows_of(f"1,,,{cell}"))
    assert roster is None
    assert [problem.code for problem in problems] == ["unreadable-rule"]
    assert problems[0].remedy.startswith(remedy)


def test_rules_are_of_few_kinds_and_each_stands_once() -> None:
    """A rule told from both sides is one rule, the lower seat first."""
    roster, problems = read(
        rows_of(
            '1,,,"not in one team: 2, 3; same team: 4; not in one station group: 5; same group: 6"',
            "2,,,Not in one  team: 1;",
        )
    )
    assert problems == ()
    assert roster is not None
    assert set(roster.rules) == {
        PairRule(RuleKind.NOT_ONE_TEAM, 1, 2),
        PairRule(RuleKind.NOT_ONE_TEAM, 1, 3),
        PairRule(RuleKind.SAME_TEAM, 1, 4),
        PairRule(RuleKind.NOT_ONE_GROUP, 1, 5),
        PairRule(RuleKind.SAME_GROUP, 1, 6),
    }


BAD = {
    "seat-twice": rows_of("1,,,", "1,,,"),
    "unreadable-seat": rows_of(f"{SECRET},,,"),
    "unknown-seat": rows_of("7,,,"),
    "unreadable-level": rows_of(f"1,,{SECRET},"),
    "level-out-of-range": rows_of("1,,101,"),
    "unreadable-rule": rows_of(f"1,,,not with {SECRET}"),
    "rule-unknown-seat": rows_of("1,,,same team: 40"),
    "rule-with-self": rows_of("1,,,same team: 1"),
    "rules-contradict": rows_of("1,,,same team: 2", "2,,,not in one team: 1"),
    "too-many-cells": rows_of(f"1,{SECRET},3,not in one team: 2, 3"),
    "quote-not-closed": rows_of(f'1,"{SECRET},3,'),
    "not-yes-or-no": rows_of(f"1,{SECRET}", title="seat,agreement"),
    "unknown-column": rows_of("1,,,", title="seat,name,levle,rules"),
    "column-twice": rows_of("1,,,", title="seat,name,level,name"),
    "missing-column": f"1,{SECRET},3\n2,Other {SECRET},4\n",
}


@pytest.mark.parametrize("code", sorted(BAD))
def test_each_error_has_its_code_and_leaves_no_roster(code: str) -> None:
    """Nothing is drawn from a list that was misread."""
    roster, problems = read(BAD[code])
    assert roster is None
    assert code in codes(problems)


@pytest.mark.parametrize(("first", "second"), [("same team", "not in one station group"), ("same group", "not in one station group")])
def test_rules_that_no_grouping_can_hold_are_found(first: str, second: str) -> None:
    """One team lies inside one station group, so together in one and apart in the other can't be."""
    assert codes(read(rows_of(f'1,,,"{first}: 2; {second}: 2"'))[1]) == ["rules-contradict"]


def test_one_station_group_and_two_teams_can_hold() -> None:
    """Two students may share a station and not a team."""
    assert read(rows_of('1,,,"same group: 2; not in one team: 2"'))[1] == ()


def test_who_has_left_is_a_warning() -> None:
    """A line or a rule of a student who is gone is passed over, and the rest is used."""
    roster, problems = read(rows_of("1,,,same team: 6", "6,,,"), tiny_class(size=5, gone=(6,)))
    assert codes(problems) == ["rule-gone-seat", "seat-gone"]
    assert roster is not None
    assert (len(roster.students), roster.rules) == (5, ())


def test_numbers_without_a_line_are_counted_once() -> None:
    """A class that has grown is one warning, with no number in it."""
    roster, problems = read("seat\n1\n2\n3\n4\n")
    assert roster is not None
    assert codes(problems) == ["seats-missing"]
    assert problems[0].what == "2 numbers of the class have no line here"


def test_a_column_of_another_kind_is_passed_over() -> None:
    """An export may carry columns that Trivet does not know; they are named by position alone."""
    roster, problems = read("seat,locker combination\n" + "".join(f"{seat},x\n" for seat in range(1, 7)))
    assert roster is not None
    assert codes(problems) == ["unknown-column"]
    assert "locker" not in problems[0].sentence


@pytest.mark.parametrize(
    ("title", "column"), [("Seats", "seat"), ("Class number", "seat"), ("nmae", "name"), ("Score", "level"), ("rule", "rules")]
)
def test_a_title_that_was_meant_is_offered(title: str, column: str) -> None:
    """Slips and everyday words find the column."""
    remedies = [problem.remedy for problem in read(f"{title}\n1\n")[1] if problem.code == "unknown-column"]
    assert remedies == [f"write {column} if that is meant, else leave the column out"]


PRIVATE = st.sampled_from([SECRET, "Ada", "7th place", "99", "medical", "not in one team: Ada", "same team: 1", "-", '"', "x,y", "é"])


@settings(max_examples=200)
@given(st.lists(st.lists(PRIVATE, min_size=1, max_size=5), min_size=1, max_size=6), st.booleans())
def test_no_problem_repeats_what_stands_in_a_cell(table: list[list[str]], titled: bool) -> None:
    """Whatever is wrong, a name, a level, a reason or a need never reaches a message; nor does anything raise."""
    lines = ["seat,name,level,rules,needs"] if titled else []
    _, problems = read("\n".join([*lines, *(",".join(row) for row in table)]) + "\n")
    for problem in problems:
        for secret in (SECRET, "Ada", "7th", "medical", "é"):
            assert secret not in problem.sentence


def test_a_file_that_is_not_utf8_does_not_show_the_letter(tmp_path: Path) -> None:
    """The place is told; the byte, which is part of a name, is not."""
    (tmp_path / "roster-p1.csv").write_bytes(b"seat,name\n1,Zo\xeb\n")
    roster, problems = read_roster(tmp_path, SIX)
    assert roster is None
    assert codes(problems) == ["file-not-utf8"]
    assert "ë" not in problems[0].sentence
    assert "0x" not in problems[0].sentence


def test_a_roster_does_not_show_itself() -> None:
    """Names, levels and rules stay out of what a program prints of a roster."""
    roster, _ = read(rows_of(f"1,{SECRET},3,not in one team: 2"))
    assert SECRET not in repr(roster)
    assert "NOT_ONE_TEAM" not in repr(roster)


def test_columns_of_the_schema_are_the_columns_that_are_read() -> None:
    """The schema, the titles and the model's fields name the same things."""
    columns = tuple(schema("roster")["items"]["properties"])
    assert columns == roster_titles.COLUMNS
    assert {field.name for field in fields(Student)} - {"fixed"} | {"rules"} == set(columns)  # a fixed seat is one of the rules
