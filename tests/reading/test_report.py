"""Reporters print the same problems, sorted, for people, programs and CI hosts."""

from __future__ import annotations

import json
import re

from hypothesis import given
from hypothesis import strategies as st

from trivet.model.problem import Place, Problem, Severity
from trivet.reading import report

SOURCES = {"units/a/index.md": "---\n      - Weigh the dry solid. (1 min x 3)\n" + "word " * 60 + "\n"}
STEP = Problem(
    "step-unreadable",
    Severity.ERROR,
    Place("units/a/index.md", 2, 31, 9),
    "the time of this step can't be read: (1 min x 3)",
    "write - Weigh the dry solid. (1 min, 3 times)",
    "hands-on, step 1",
)
WARNING = Problem("card-long", Severity.WARNING, Place("units/a/index.md", 3, 251, 4), "this is long", "write it shorter")
ADVICE = Problem("level-high", Severity.ADVICE, Place("units/a/index.md"), "this is hard to read")
ALL = [WARNING, ADVICE, STEP, STEP]


def test_text_has_the_agreed_shape_and_marks_the_spot() -> None:
    """Each problem is file:line:column: where: what; remedy, then its line with the faulty part marked."""
    assert report.text([STEP], SOURCES) == (
        "units/a/index.md:2:31: hands-on, step 1: the time of this step can't be read: (1 min x 3); "
        "write - Weigh the dry solid. (1 min, 3 times)\n"
        "     2 |       - Weigh the dry solid. (1 min x 3)\n"
        "       |                               ^^^^^^^^^\n"
        "1 error in 1 file\n"
    )


def test_text_quotes_the_part_of_a_long_line_around_the_mark() -> None:
    """Of a long line the part around the mark is shown, and the marks stand under the faulty word."""
    lines = report.text([WARNING], SOURCES).split("\n")
    at = lines[2].index("^")
    assert lines[1][at : at + 4] == "word"[WARNING.place.column % 5 - 1 :][:4]
    assert lines[1].startswith("     3 | ... ")
    assert len(lines[1]) < 150


def test_signs_that_a_terminal_obeys_are_not_quoted() -> None:
    """An escape, or a sign that turns the reading direction, is shown as one sign in the quoted line, and the marks stay under the part."""
    problem = Problem("x", Severity.ERROR, Place("a.md", 1, 7, 3), "this is odd", "take it out")
    lines = report.text([problem], {"a.md": "a\x1b[2J\u202ebad"}).split("\n")
    assert lines[1] == "     1 | a\ufffd[2J\ufffdbad"
    assert lines[2].index("^") == lines[1].index("bad")


def test_text_sorts_counts_once_and_keeps_advice_for_all() -> None:
    """Problems are in the order of the file, each once; advice is counted and shown on request."""
    without = report.text(ALL, {})
    assert without.splitlines()[0].startswith("units/a/index.md:2:31: hands-on")
    assert without.splitlines()[-1] == "1 error, 1 warning in 1 file (1 piece of advice with --all)"
    with_advice = report.text(ALL, {}, advice=True)
    assert with_advice.splitlines()[0] == "units/a/index.md:1:1: advice: this is hard to read"
    assert with_advice.splitlines()[-1] == "1 error, 1 warning, 1 piece of advice in 1 file"
    assert report.text([], {}) == "no problems\n"


def test_json_carries_every_field() -> None:
    """The JSON report is numbered and holds all that a problem holds."""
    said = json.loads(report.json(ALL, advice=True))
    assert said["report"] == 1
    assert said["counts"] == {"error": 1, "warning": 1, "advice": 1}
    assert said["problems"][1] == {
        "code": "step-unreadable",
        "severity": "error",
        "file": "units/a/index.md",
        "line": 2,
        "column": 31,
        "length": 9,
        "where": "hands-on, step 1",
        "what": STEP.what,
        "remedy": STEP.remedy,
    }


def test_annotation_is_one_line_of_the_open_format() -> None:
    """An annotation names file, line, columns and code, then says the sentence."""
    first = report.annotations(ALL, advice=True).splitlines()[1]
    assert first == f"::error file=units/a/index.md,line=2,col=31,endColumn=40,title=step-unreadable::{STEP.sentence}"


@given(st.text(), st.text())
def test_each_problem_stays_on_its_line(name: str, said: str) -> None:
    """Whatever a file is called and a message says, each report keeps a problem on one line that can be written as UTF-8."""
    problem = Problem("c", Severity.WARNING, Place(name), said, "write it", "where")
    line, last, _ = report.annotations([problem]).split("\n")
    assert last == "1 warning in 1 file"
    assert re.fullmatch(r"::warning file=[^,:]*,line=1,col=1,endColumn=2,title=c::[^\n\r]*", line)
    assert report.text([problem], {}).count("\n") == 2
    for form in (report.text([problem], {}), report.annotations([problem]), report.json([problem])):
        form.encode("utf-8")
    assert json.loads(report.json([problem]))["problems"][0]["line"] == 1


def test_annotation_escapes_what_the_format_reserves() -> None:
    """Percent signs, commas and colons in names are escaped, so that they split nothing."""
    problem = Problem("c", Severity.ERROR, Place("a,b:c%.md"), "50 % of it")
    assert report.annotations([problem]).startswith("::error file=a%2Cb%3Ac%25.md,line=1,col=1,endColumn=2,title=c::50 %25 of it")
