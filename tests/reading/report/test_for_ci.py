"""Reports for CI hosts are one line each."""

from __future__ import annotations

import json
import re

from hypothesis import given
from hypothesis import strategies as st

from tests.reading.report.problems import ALL, STEP
from trivet.model.problem import Place, Problem, Severity
from trivet.reading import report


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
