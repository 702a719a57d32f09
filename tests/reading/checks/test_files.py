"""Files that the keys of a unit name lie in its folder."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.reading.unit_files import answers, draft_of
from trivet.reading.checks.files import check, is_path

FILES = ("data/a.csv", "sim/index.html", "story.md")


@pytest.mark.parametrize(
    ("station", "key", "value", "expected"),
    [
        ("online", "open", "sim/", []),
        ("online", "open", "https://example.org/tank", []),
        ("online", "open", "http://example.org", [("address-not-safe", "write https://example.org")]),
        ("online", "open", "sim/indexx.html", [("file-not-there", "write sim/index.html")]),
        ("teacher-led", "read", "story.md", []),
        ("teacher-led", "read", "Story.md", [("file-not-there", "write story.md")]),
        ("teacher-led", "read", "data/a.csv", [("reading-not-text", "write the name of a file that ends in .md or .txt")]),
        ("hands-on", "instead", "data/a.csv", []),
        ("hands-on", "instead", "data/b.csv", [("file-not-there", "write data/a.csv")]),
        ("hands-on", "instead", "Keep the time.", []),
        (
            "hands-on",
            "instead",
            "story.md",
            [("instead-not-published", "save it as story.txt, or write what the student does as a sentence")],
        ),
    ],
)
def test_a_file_that_is_named_is_there(station: str, key: str, value: str, expected: list[tuple[str, str]]) -> None:
    """A file, a folder with a page and a safe address pass; anything else gets the nearest thing to write."""
    assert answers(check(draft_of({"stations": {station: {key: value}}}, files=FILES))) == expected


@given(st.text(min_size=1), st.text(min_size=1))
def test_two_words_are_never_a_path(one: str, other: str) -> None:
    """What has a blank in it is a sentence, so that no sentence is looked for among the files."""
    assert not is_path(f"{one} {other}")


@pytest.mark.parametrize(("written", "path"), [("data/", True), ("a.csv", True), ("data/a", True), ("Watch", False), ("Watch.", False)])
def test_a_path_has_a_slash_or_an_ending(written: str, *, path: bool) -> None:
    """One word is a path where it has a slash, or a file's ending."""
    assert is_path(written) == path
