"""The page that a broken file has in the live preview."""

from __future__ import annotations

import re

from tests.pages.scenario import BUILD, SOURCE, department, pages, plans
from trivet.model.plan import Plans
from trivet.model.problem import Place, Problem, Severity
from trivet.pages.problem_page import SourceLine, problem_pages, source_lines
from trivet.pages.site import make_site
from trivet.pages.words import load_words

WORDS = load_words()


def one(place: Place, remedy: str = "write x", severity: Severity = Severity.ERROR) -> Problem:
    return Problem("code", severity, place, "what is wrong", remedy)


def test_a_broken_unit_has_a_page_in_its_own_place() -> None:
    """The problem, its place, the line to write and three source lines with the span marked stand at the unit's address."""
    page = pages()["units/broken/"]
    assert page.meta["kind"] == "problem"
    assert page.meta["title"] == "1 error, 1 warning, no advice in broken"
    text = re.sub(r"<[^>]+>", "", page.body)
    assert "units/broken/index.md:5:14" in text
    assert "<mark>glas</mark>" in page.body
    assert "<code>glass</code>" in page.body
    assert [int(n) for n in re.findall(r"<b>(\d+)</b><code>", page.body)] == [1, 2, 3, 4, 5, 6]


def test_a_remedy_without_a_line_is_said_in_words() -> None:
    """Only a remedy that gives a line to write is boxed as code."""
    body = pages()["units/broken/"].body
    assert "<span>ask what they changed</span>" in body
    assert body.count("<code>glass</code>") == 1


def test_a_unit_that_was_read_has_no_problem_page() -> None:
    """Warnings of a good unit do not replace its page, and a broken translation alone does not either."""
    made = department()
    problems = (
        one(Place("units/float-or-sink/index.md", 3)),
        one(Place("school/runs.yml", 1)),
        one(Place("units/other/index.md", 1), "", Severity.WARNING),
    )
    assert problem_pages(made, problems, {}, WORDS) == ()


def test_a_school_that_could_not_be_read_has_its_problems_at_home() -> None:
    """Without a department the home page lists every problem, and nothing else is published but the assets."""
    problems = (one(Place("school/bells.yml", 2, 3, 4)),)
    site = make_site(None, Plans((), (), ()), problems, BUILD, {"school/bells.yml": "a\nb: xxxx\nc\n"})
    assert [page.path for page in site.pages] == [""]
    assert "school/bells.yml:2:3" in site.pages[0].body
    assert "b:<mark> xxx</mark>x" in site.pages[0].body.replace("<code>", "")


def test_a_place_outside_the_file_shows_no_lines() -> None:
    """A problem with the whole file, a file that is not at hand, a column past the line's end: no lines, or the line unmarked."""
    made = department()
    for place, source in ((Place("units/broken/index.md", 99), SOURCE), (Place("units/broken/index.md", 1), "")):
        (page,) = problem_pages(made, (one(place),), {"units/broken/index.md": source}, WORDS)
        assert "<ol" not in page.body
    (page,) = problem_pages(made, (one(Place("units/broken/index.md", 2, 500, 3)),), {"units/broken/index.md": SOURCE}, WORDS)
    assert "<mark>" not in page.body


def test_the_marked_line_is_the_whole_line() -> None:
    """Before, wrong and after make up the line as it stands in the file."""
    lines = source_lines(one(Place("f", 5, 14, 4)), SOURCE)
    assert [line.number for line in lines] == [4, 5, 6]
    assert lines[1] == SourceLine(5, "    hazards: ", "glas", ", spill")
    assert all(line.before + line.wrong + line.after == SOURCE.splitlines()[line.number - 1] for line in lines)


def test_the_rest_of_the_site_stands() -> None:
    """A broken unit takes only its own page: all other pages are as without it."""
    made = department()
    without = {page.path: page for page in make_site(made, plans(made), (), BUILD, {}).pages}
    assert {path: page for path, page in pages().items() if path != "units/broken/"} == without
