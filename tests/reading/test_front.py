"""A unit file is read in one go, with the places of the file as typed, and nothing that is typed makes it fail."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.model.problem import Place
from trivet.reading.fence import split
from trivet.reading.front import read_front
from trivet.reading.scan import scan
from trivet.reading.source import source_of
from trivet.reading.strict import load

UNIT = """\
---
title: Float or sink?
question: Why does a lump of clay sink while the same clay floats as a boat?
grades: 6-8
stations:
  online:
    goal: Find what decides whether a block floats.
    open: sim/                              # a page in this folder, or an https address
    leave alone: liquid
    steps:
      - Set the volume to 100 mL. Drop a 50 g block and write what happens. (3 min)
      - Raise the mass by 20 g and drop it again. (2 min, 4 times)
  hands-on:
    materials:
      - 1 balance 0.1 g per 2 teams
    hazards: glass, spill                   # or: none
    set up: 2 min
  teacher-led:
    questions:
      - ask: What did they change, and what did they measure?
        listen for: the stone; mass and volume
write-up:
  claim starts: Whether an object floats depends on ...
---

Notes for the teacher.
"""


def test_a_unit_is_read_without_a_word() -> None:
    """A unit as teachers write it gives its data, its places and its prose."""
    front = read_front(UNIT, "u.md")
    assert front.problems == ()
    assert front.readable
    assert front.value["grades"] == "6-8"
    assert front.value["stations"]["online"]["open"] == "sim/"
    assert front.value["stations"]["hands-on"]["hazards"] == "glass, spill"
    assert front.value["stations"]["teacher-led"]["questions"][0]["listen for"] == "the stone; mass and volume"
    assert front.places.find("stations", "online", "steps", 1) == Place("u.md", 12, 9, 58)
    assert front.places.find("stations", "hands-on", "set up") == Place("u.md", 17, 13, 5)
    assert (front.body, front.body_line) == ("\nNotes for the teacher.\n", 25)


def test_places_stay_on_the_line_as_typed() -> None:
    """A value on a line that was mended has a length that fits the line in the file."""
    front = read_front('---\ntitle: Force: "a" push\n---\n', "u.md")
    assert front.value == {"title": 'Force: "a" push'}
    assert front.places.find("title") == Place("u.md", 2, 8, 15)


def test_unreadable_front_matter_is_said_once() -> None:
    """Without a fence there is one problem, no value, and the text as body."""
    front = read_front("Title A\n", "u.md")
    assert [p.code for p in front.problems] == ["fence-missing"]
    assert (front.value, front.readable, front.body) == (None, False, "Title A\n")


def test_of_two_versions_the_first_is_read() -> None:
    """Where git left two versions, each place is answered once, and neither the fence nor the second version adds a word."""
    merge = "<<<<<<< mine\n---\ntitle: A\n=======\n---\ntitle: B\n>>>>>>> theirs\ngrades: 7\n---\nOld.\n"
    front = read_front(merge + "<<<<<<< mine\nNew.\n||||||| base\nOld.\n=======\nOther.\n>>>>>>> theirs\n", "u.md")
    assert front.value == {"title": "A", "grades": 7}
    assert [(p.code, p.place.line) for p in front.problems] == [("merge-conflict", 1), ("merge-conflict", 11)]
    assert [line for line in front.body.split("\n") if line] == ["Old.", "New."]
    assert front.places.find("grades").line == 8


def test_signs_that_only_look_like_two_versions() -> None:
    """A heading underlined with seven signs is none of git's."""
    assert read_front("---\ntitle: A\n---\nNotes\n=======\n", "u.md").problems == ()


PIECES = st.sampled_from(
    [
        "steps:", "  - ", "- ", ": ", ":", "\n", "\n  ", "\n    ", "goal", "questions:\n", "ask: ", "listen for: ", "#", " # ", "  # ",
        '"', "'", "*", "&", "[", "]", "{", "}", "|", ">", "@", "`", "%", "!", "?", "---\n", "...\n", "\t", "\u00a0", "é", "😀", "(2 min)",
        "1 cup per team", "<<", "true", "10:30", "\\", "\\x", "\\U", "“", "–", "\u2028", "\x00", "\x07", "\r\n", "\ufeff", "<<<<<<< a\n",
        "- - ", "a: b\n", "=", ",", "7", "~", "\u200b", "\x85",
    ]
)  # fmt: skip
ANYTHING = st.one_of(
    st.text(max_size=2000),
    st.lists(PIECES, max_size=120).map("".join),
    st.lists(PIECES, max_size=120).map(lambda p: f"---\n{''.join(p)}\n---\n"),
)


@settings(max_examples=500, deadline=None)
@given(ANYTHING)
def test_anything_is_read_or_answered(text: str) -> None:
    """Whatever is typed, each layer answers with values whose problems have a remedy and stand inside the file."""
    source = source_of(text.encode("utf-8", "surrogatepass"), "u.md")
    lines = source.text.count("\n") + 1
    front = read_front(source.text, "u.md")
    parts = split(source.text, "u.md")
    scanned = scan(text, "u.md")
    for problem in (*source.problems, *front.problems, *parts.problems):
        assert problem.what
        assert problem.remedy
        assert 1 <= problem.place.line <= max(lines, 1)
        assert problem.place.column >= 1
    assert front.readable or front.problems
    assert scanned.text.count("\n") == text.count("\n")
    loaded = load(text, "school/x.yml")
    assert loaded.readable or loaded.problems
