"""Reports for people quote the spot."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.reading.report.problems import SOURCES, STEP, WARNING
from trivet.model.problem import Place, Problem, Severity
from trivet.reading import report
from trivet.reading.report.for_people import WIDTH, one_line


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


@given(st.text(alphabet=st.characters(min_codepoint=33, max_codepoint=0x2FF), min_size=1, max_size=400), st.data())
def test_the_mark_stands_under_the_sign(line: str, data: st.DataObject) -> None:
    """Wherever a problem is on a line of any length, the first mark stands under its sign, and no more than WIDTH signs are shown."""
    column = data.draw(st.integers(1, len(line)))
    problem = Problem("c", Severity.ERROR, Place("a.md", 2, column, data.draw(st.integers(1, 9))), "this is odd", "write it")
    _, quoted, marks, *_ = report.text([problem], {"a.md": f"first\n{line}"}).split("\n")
    sign = line[column - 1]
    assert quoted[marks.index("^")] == (sign if sign.isprintable() else "\ufffd")
    assert len(marks.rstrip()) <= len(quoted) <= WIDTH + len("     2 | ... ...  ")


@pytest.mark.parametrize("place", [Place("a.md"), Place("a.md", 7, 1, 3), Place("b.md", 2, 1, 3), Place("a.md", 3, 1, 3)])
def test_nothing_is_quoted_where_nothing_can_be_shown(place: Place) -> None:
    """A problem of a whole file, beyond its end, of a file that could not be read or on an empty line is one line."""
    problem = Problem("c", Severity.ERROR, place, "this is odd", "write it")
    assert report.text([problem], {"a.md": "first\nsecond\n"}).splitlines() == [one_line(problem), "1 error in 1 file"]
