"""Two versions that git left in a file are answered, and the first is read."""

from __future__ import annotations

import pytest

from trivet.reading.versions import check, settled

MERGE = "a\n<<<<<<< mine\nb\n||||||| before\nc\n=======\nd\ne\n>>>>>>> theirs\nf\n"


def test_the_first_version_stays_on_its_lines() -> None:
    """Signs and second version become empty lines, so that every line keeps its number."""
    text, problems = settled(MERGE, "f.md", 5)
    assert text.split("\n") == ["a", "", "b", "", "", "", "", "", "", "f", ""]
    assert [(p.code, p.place.line, p.place.column, p.place.length) for p in problems] == [("merge-conflict", 6, 1, 12)]
    assert "delete the lines with <<<<<<<" in problems[0].remedy


def test_each_place_is_answered() -> None:
    """Two places are two answers."""
    assert [problem.place.line for problem in check(MERGE + MERGE, "f.md")] == [2, 12]


@pytest.mark.parametrize(
    "text",
    [
        "Heading\n=======\n",
        "<<<<<<< no end\na\n=======\nb\n",
        "<<<<<<< no middle\na\n>>>>>>> x\n=======\n",
        " <<<<<<< shown\n=======\n>>>>>>> x\n",
        "<<<<<<<< eight\n=======\n>>>>>>> x\n",
    ],
)
def test_what_only_looks_like_it(text: str) -> None:
    """A heading, a sign without its fellows and an indented example are let be."""
    assert settled(text, "f.md") == (text, [])


def test_many_signs_take_no_time() -> None:
    """A file of signs alone is read in time that grows with its length."""
    for text in ("<<<<<<< a\n" * 20_000, "<<<<<<< a\n" * 20_000 + ">>>>>>> b\n=======\n", ("<<<<<<< a\n>>>>>>> b\n=======\n" * 7_000)):
        assert settled(text, "f.md")[1] == []
