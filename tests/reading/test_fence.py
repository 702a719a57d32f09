"""A unit file is split at its two fences, and a missing one is answered at 1:1."""

from __future__ import annotations

import pytest

from trivet.reading.fence import split


def test_split_keeps_line_numbers() -> None:
    """Front matter and body know the line at which they begin."""
    parts = split("---\ntitle: A\n---\n\nNotes\n", "u.md")
    assert (parts.front, parts.front_line, parts.body, parts.body_line) == ("title: A", 2, "\nNotes\n", 4)
    assert parts.problems == ()
    assert parts.readable


@pytest.mark.parametrize("closing", ["--- ", "---\t ", "---"])
def test_blanks_after_a_fence(closing: str) -> None:
    """Blanks after the three hyphens do no harm, and a later rule of the body is not a fence."""
    parts = split(f"--- \na: 1\n{closing}\nx\n---\ny", "u.md")
    assert parts.problems == ()
    assert parts.body == "x\n---\ny"


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("# Notes\n", "the unit does not begin with ---; write --- as the first line, then the keys, then --- again"),
        ("", "the unit does not begin with ---; write --- as the first line, then the keys, then --- again"),
        ("---\ntitle: A\n", "the line --- that ends the keys is missing; write --- on a line of its own at the end of the file"),
        (
            "---\ntitle: A\nsteps:\n- a\n  # b\n\nNotes: x\n\n```\n",
            "the line --- that ends the keys is missing; write --- on a line of its own below the last key (above line 7, it seems)",
        ),
    ],
)
def test_missing_fences(text: str, sentence: str) -> None:
    """Without a fence nothing is read, and one sentence says where it belongs."""
    parts = split(text, "u.md")
    (problem,) = parts.problems
    assert problem.sentence == sentence
    assert (problem.place.line, problem.place.column) == (1, 1)
    assert not parts.readable


@pytest.mark.parametrize("near", ["—", "–-", "----", "--", " ---", "+++", "***", "~~~", "```"])
def test_near_fences_are_named_and_read(near: str) -> None:
    """What a word processor makes of three hyphens is answered with its line, and the rest is still read."""
    parts = split(f"---\ntitle: A\n{near}\nNotes", "u.md")
    (problem,) = parts.problems
    assert problem.code == "fence-not-closed"
    assert problem.sentence.startswith("line 3 has ")
    assert (problem.place.line, problem.place.column) == (1, 1)
    assert (parts.front, parts.body, parts.readable) == ("title: A", "Notes", True)


def test_opening_fence_further_down_or_mistyped() -> None:
    """What stands above the fence, an em dash for it, or no fence at all is answered, and the keys are read all the same."""
    second = "delete what stands above line 3, or move it below the second ---"
    for text, sentence, front_line in (
        ("\n\n---\na: 1\n---\n", "the line --- is not the first line; delete the empty lines above it", 4),
        ("# Carts\n\n---\na: 1\n---\n", f"the line --- stands on line 3, and it must be the first; {second}", 4),
        ("```yaml\n---\na: 1\n---\n```", f"the line --- stands on line 2, and it must be the first; {second.replace('3', '2')}", 3),
        ("—\na: 1\n---\nb: 2\n", "line 1 has — where three hyphens belong; write ---", 2),
        ("```yaml\na: 1\n---\n", "line 1 has ```yaml where three hyphens belong; write ---", 2),
        ("a: 1\n---\nb: 2\n", "the line --- above the first key is missing; write --- on a line of its own above line 1", 1),
    ):
        parts = split(text, "u.md")
        assert [p.sentence for p in parts.problems] == [sentence]
        assert (parts.front, parts.front_line, parts.readable) == ("a: 1", front_line, True)
