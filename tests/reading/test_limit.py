"""A file that is no unit at all is answered with a hundred sentences at most, and one that counts the rest."""

from __future__ import annotations

from trivet.model.problem import Place, Problem, Severity
from trivet.reading.front import read_front
from trivet.reading.limit import PROBLEMS_MOST, limited
from trivet.reading.strict import load
from trivet.reading.validate import validate


def problems(count: int) -> list[Problem]:
    return [Problem("no-key", Severity.ERROR, Place("u.md", line, 1, 9), "x", "y") for line in range(count, 0, -1)]


def test_up_to_a_hundred_are_told() -> None:
    """A hundred are all told, in the order of the file."""
    assert [problem.place.line for problem in limited(problems(PROBLEMS_MOST))] == list(range(1, PROBLEMS_MOST + 1))


def test_the_rest_is_counted() -> None:
    """From the hundred and first on there is one sentence, at its place."""
    more = limited(problems(PROBLEMS_MOST + 1201))
    assert len(more) == PROBLEMS_MOST + 1
    assert more[-1].code == "many-problems"
    assert more[-1].place.line == PROBLEMS_MOST + 1
    assert more[-1].what == "from here on there are 1,201 more problems"
    assert limited(problems(PROBLEMS_MOST + 1))[-1].what == "from here on there is one more problem"


def test_nothing_is_said_about_the_content() -> None:
    """Where a hundred lines can't be read, what the others seem to say is not judged."""
    lines = "Nobody knows.\n" * 500
    front = read_front(f"---\ntitle: x\n{lines}---\n", "u.md")
    assert (front.value, front.readable, len(front.problems)) == (None, False, PROBLEMS_MOST + 1)
    loaded = load(f"a: 1\n{lines}b: 2\n", "f.yml")
    assert (loaded.value, loaded.readable, len(loaded.problems)) == (None, False, PROBLEMS_MOST + 1)


def test_unknown_keys_are_answered_twenty_at_a_time() -> None:
    """A table pasted as keys gets twenty answers and a number."""
    loaded = load("".join(f"k{n}: x\n" for n in range(5_000)), "school/rooms.yml")
    found = [problem for problem in validate(loaded.value, "rooms", loaded.places, "school/rooms.yml") if problem.code == "unknown-key"]
    assert len(found) == 21
    assert found[-1].what == "4,980 more keys are not known here"
    assert found[-1].place.line == 21
