"""A value that does not fit its schema is answered in plain words at the right place."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from trivet.model.places import Places
from trivet.model.problem import Place, Severity
from trivet.reading.validate import validate


def good() -> dict[str, Any]:
    """The smallest unit that fits."""
    return {
        "title": "Float or sink?",
        "question": "Why?",
        "grades": "6-8",
        "stations": {
            "online": {"goal": "g", "open": "sim/", "steps": ["Drop it. (3 min)"], "done when": "d"},
            "hands-on": {
                "goal": "g",
                "materials": ["1 balance per team"],
                "hazards": "none",
                "steps": ["Weigh it. (1 min, 3 times)"],
                "done when": "d",
            },
            "teacher-led": {"goal": "g", "questions": [{"ask": "What?", "listen for": "that"}]},
        },
        "write-up": {"claim starts": "It ..."},
    }


def sentences(value: Any) -> list[tuple[str, str]]:
    return [(problem.code, problem.sentence) for problem in validate(value, "unit", Places("u.md"), "u.md")]


def changed(path: tuple[str | int, ...], value: Any) -> dict[str, Any]:
    unit = good()
    spot: Any = unit
    for step in path[:-1]:
        spot = spot[step]
    if value is KeyError:
        del spot[path[-1]]
    else:
        spot[path[-1]] = value
    return unit


def test_good_unit_has_no_problem() -> None:
    """The smallest unit fits."""
    assert validate(good(), "unit", Places("u.md"), "u.md") == ()


CASES: list[tuple[tuple[str | int, ...], Any, str, str]] = [
    (("titel",), "x", "unknown-key", 'the key "titel" is not known here; leave it out'),
    (("standard",), "x", "unknown-key", 'the key "standard" is not known here; write standards'),
    (("goal",), "x", "unknown-key", 'the key "goal" is not known here; move it under online'),
    (("sponsor",), "x", "unknown-key", 'the key "sponsor" is not known here; leave it out, or write one of: title, question'),
    (("stations", "hands-on", "hazard"), "x", "unknown-key", 'hands-on: the key "hazard" is not known here; leave it out'),
    (("title",), KeyError, "missing-key", '"title" is missing; write title: Float or sink?'),
    (
        ("stations", "hands-on", "hazards"),
        KeyError,
        "hazards-missing",
        'hands-on: "hazards" is missing; write hazards: none, or what can hurt, such as hazards: glass, spill',
    ),
    (
        ("stations", "hands-on", "hazards"),
        "glass",
        "instead-missing",
        'hands-on: "instead" is missing; write instead: and a file in this folder or a sentence: what a student does who may not do it',
    ),
    (
        ("title",),
        2026,
        "needs-quotes",
        'title: this must be text, and 2026 alone is read as the number 2026; put quotes around it: write title: "2026"',
    ),
    (("title",), None, "empty-value", "title: nothing is written here; write title: Float or sink?"),
    (("stretch",), "true", "remove-quotes", 'stretch: "true" in quotes is text; write true without quotes'),
    (
        ("stations", "online", "record"),
        {"columns": ["m"], "rows": "4"},
        "remove-quotes",
        'rows: "4" in quotes is text; write 4 without quotes',
    ),
    (("grades",), Decimal("36.0"), "wrong-shape", "grades: this must be text or a whole number, not the number 36.0"),
    (("grades",), "sixth", "unreadable-value", "grades: this can't be read: sixth; write grades: 6-8, or one grade such as grades: 7"),
    (("round",), 200, "out-of-range", "round: 200 is out of range: this must be at most 120; write round: 20-30 min, or one length"),
    (("stations", "online", "work in"), "pair", "not-in-list", 'online, work in: "pair" is not one of the words known here; write pairs'),
    (("group by",), "leveled", "not-in-list", "leave the key out and choose it at the draw, where it stays private"),
    (("stations", "online", "steps"), [], "empty-value", "online, steps: nothing is written here; write steps: and under it - Weigh"),
    (("rubric",), [{"part": "a", "levels": ["x", "y"]}], "too-few", "rubric row 1, levels: there are 2 here, and at least 3 are needed"),
    (("rubric",), [{"part": "a", "levels": list("wxyz")}], "too-many", "rubric row 1, levels: there are 4 here, and at most 3 are read"),
    (("title",), "x" * 81, "too-long", "title: this has 81 characters, and at most 80 are read; write it shorter"),
    (
        ("write-up",),
        ["x"],
        "wrong-shape",
        "write-up: this must be keys with values under it, not a list; write write-up: and under it claim starts:",
    ),
]


@pytest.mark.parametrize(("path", "value", "code", "said"), CASES)
def test_fault_is_worded(path: tuple[str | int, ...], value: Any, code: str, said: str) -> None:
    """Each kind of fault has its code, its plain words and its remedy."""
    found = sentences(changed(path, value))
    assert any(code == each and said in sentence for each, sentence in found), found


def test_misspelled_key_names_the_missing_one() -> None:
    """A misspelled required key is answered twice: the key that is meant, and that it is missing."""
    unit = good()
    unit["qestion"] = unit.pop("question")
    assert ("unknown-key", 'the key "qestion" is not known here; write question') in sentences(unit)


def test_places_are_the_key_the_parent_and_the_value() -> None:
    """Unknown keys point at the key, missing ones at the parent's key, the rest at the value."""
    unit = changed(("stations", "online", "goal"), KeyError)
    unit["extra"] = 1
    unit["title"] = 5
    places = Places(
        "u.md",
        at={("title",): Place("u.md", 2, 8, 1), ("stations", "online"): Place("u.md", 7, 5)},
        keys={("extra",): Place("u.md", 9, 1, 5), ("stations", "online"): Place("u.md", 6, 3, 6)},
    )
    found = {problem.code: problem.place for problem in validate(unit, "unit", places, "u.md")}
    assert found == {
        "unknown-key": Place("u.md", 9, 1, 5),
        "missing-key": Place("u.md", 6, 3, 6),
        "needs-quotes": Place("u.md", 2, 8, 1),
    }


def test_all_problems_are_errors_without_jargon() -> None:
    """Whatever is wrong, the answer is an error that uses none of the library's words."""
    wild = [None, True, 3, Decimal("1.5"), "", "x", [], [None], {}, {"a": None}]
    for key in good():
        for value in wild:
            for problem in validate(changed((key,), value), "unit", Places("u.md"), "u.md"):
                assert problem.severity is Severity.ERROR
                assert problem.remedy
                for word in ("invalid", "schema", "instance", "property", "None", "pattern", "regex"):
                    assert word not in problem.sentence, problem.sentence
