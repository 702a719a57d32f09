"""Strict YAML: plain data with places, and every refusal in plain words with a remedy."""

from __future__ import annotations

import time
from decimal import Decimal

import pytest

from trivet.model.problem import Place, Severity
from trivet.reading.strict import Loaded, load


def said(loaded: Loaded) -> list[tuple[str, int, int, str]]:
    """Code, line, column and sentence of each problem."""
    assert all(problem.remedy for problem in loaded.problems)
    return [(p.code, p.place.line, p.place.column, p.sentence) for p in loaded.problems]


def test_plain_data_and_places() -> None:
    """Every value and key has a place; a list or mapping stands at its key, columns count characters, lines begin where told."""
    loaded = load(
        "name: Möwe 😀 x\nrooms:\n  r12:\n    area: 1200 sq ft\nitems:\n  - item: é\n    price: 6.50\n  - 7\nempty:\n", "school/a.yml", 5
    )
    assert loaded.value == {
        "name": "Möwe 😀 x",
        "rooms": {"r12": {"area": "1200 sq ft"}},
        "items": [{"item": "é", "price": Decimal("6.50")}, 7],
        "empty": None,
    }
    assert loaded.problems == ()
    places = loaded.places
    assert places.find("name") == Place("school/a.yml", 5, 7, 8)
    assert places.key("name") == Place("school/a.yml", 5, 1, 4)
    assert places.find("rooms") == Place("school/a.yml", 6, 1, 5)
    assert places.find("rooms", "r12") == Place("school/a.yml", 7, 3, 3)
    assert places.find("rooms", "r12", "area") == Place("school/a.yml", 8, 11, 10)
    assert places.find("items", 0, "price") == Place("school/a.yml", 11, 12, 4)
    assert places.find("items", 1) == Place("school/a.yml", 12, 5, 1)
    assert places.find("empty") == Place("school/a.yml", 13, 1, 5)
    assert places.find("rooms", "r12", "gone") == places.find("rooms", "r12")


@pytest.mark.parametrize(
    ("text", "value"), [("", None), ("# only a comment\n", None), ("---\na: 1\n", {"a": 1}), ("- a\n- b\n", ["a", "b"])]
)
def test_whole_files(text: str, value: object) -> None:
    """Nothing, a comment, a marked beginning and a list are all read."""
    loaded = load(text, "f.yml")
    assert (loaded.value, loaded.problems, loaded.readable) == (value, (), True)


@pytest.mark.parametrize(
    ("text", "problem", "value"),
    [
        (
            "a: 1\nb: 2\na: 3\n",
            ("duplicate-key", 3, 1, "a is given twice, on line 1 and on line 3; delete one of the two, or move its content to line 1"),
            {"a": 1, "b": 2},
        ),
        (
            "a: &x foo\n",
            ("anchor", 1, 4, '&x is read as a mark to copy from; if it belongs to the text, write a: "&x foo"; else delete &x'),
            {"a": "foo"},
        ),
        (
            "b: *x\n",
            (
                "alias",
                1,
                4,
                '*x stands for something written elsewhere in the file; write out what it stands for, or, if it is a text, write b: "*x"',
            ),
            {"b": "*x"},
        ),
        (
            "a: !!binary abc\n",
            (
                "tag",
                1,
                4,
                '!!binary is read as an order to a program; if it belongs to the text, write a: "!!binary abc"; else delete !!binary',
            ),
            {"a": "abc"},
        ),
        (
            "a: ! 7\n",
            ("tag", 1, 4, '! is read as an order to a program; if it belongs to the text, write a: "! 7"; else delete !'),
            {"a": "7"},
        ),
        (
            "<<: *base\nb: 1\n",
            ("merge-key", 1, 1, "<< copies another part of the file; write the lines out that it stands for"),
            {"b": 1},
        ),
        (
            "meets: [A, B]\n",
            (
                "brackets",
                1,
                8,
                (
                    "brackets stand here, and our files are written without; "
                    "write meets: A, B (or one item a line, each after a dash and a space)"
                ),
            ),
            {"meets": ["A", "B"]},
        ),
        (
            "steps: [Weigh it. (1 min), Go]\n",
            (
                "brackets",
                1,
                8,
                (
                    "brackets stand here, and our files are written without; "
                    "write one item a line, each after a dash and a space: - Weigh it. (1 min)"
                ),
            ),
            {"steps": ["Weigh it. (1 min)", "Go"]},
        ),
        (
            "a: {b: [1, 2]}\n",
            ("brackets", 1, 4, "braces stand here, and our files are written without; write one key a line, indented: b:"),
            {"a": {"b": [1, 2]}},
        ),
        (
            "a: {}\n",
            (
                "brackets",
                1,
                4,
                (
                    "braces stand here, and our files are written without; "
                    "write its items below it, one a line; where there are none, delete this line"
                ),
            ),
            {"a": {}},
        ),
        (
            "%YAML 1.2\n---\na: 1\n",
            ("directive", 1, 1, "a line that begins with % gives orders to a program; delete this line"),
            {"a": 1},
        ),
        (
            'a: "\\0"\n',
            (
                "control-character",
                1,
                4,
                "a backslash makes a zero byte (U+0000) here; write two backslashes for one that belongs to the text",
            ),
            {"a": " "},
        ),
        (
            "go\u00adal: x\n",
            ("odd-key", 1, 1, "an invisible hyphen (U+00AD) stands in this key; write goal:"),
            {"goal": "x"},
        ),
        (
            "set\u00a0up: 2 min\n",
            ("odd-key", 1, 1, "a no-break space (U+00A0) stands in this key; write set up:"),
            {"set up": "2 min"},
        ),
        (
            "go\u200bal: x\n",
            ("odd-space", 1, 3, "an invisible zero-width space (U+200B) stands here; write goal: x"),
            {"goal": "x"},
        ),
        (
            ": x\na: 1\n",
            ("key-missing", 1, 1, "there is no key before the colon; write a key before it, or delete this line"),
            {"a": 1},
        ),
        (
            "X y z\na: 1\n",
            (
                "no-key",
                1,
                1,
                (
                    "this line has no key and no dash before it; "
                    "write a key and a colon before it, or move it up to the end of the line that it belongs to"
                ),
            ),
            {"a": 1},
        ),
        (
            "[a: 1]\nb: 2\n",
            ("special-first", 1, 1, "a key can't begin with [; write a: 1"),
            {"a": 1, "b": 2},
        ),
        (
            "runs:\n  - class p1\n    unit: x\n",
            ("colon-missing", 2, 5, "a key needs a colon after it; write - class: p1"),
            {"runs": [{"class": "p1", "unit": "x"}]},
        ),
        (
            "runs:\n  - class: p1\n  unit: x\n",
            ("not-lined-up", 3, 3, "this line does not line up with the lines it belongs to; write unit: x with 4 spaces before it"),
            {"runs": [{"class": "p1", "unit": "x"}]},
        ),
        ('"": x\na: 1\n', ("key-missing", 1, 1, "there is no key before the colon; write a key before it, or delete this line"), {"a": 1}),
        (
            "a:\n\tb: 1\n",
            ("tab-indent", 2, 1, "a tab (U+0009) stands where only spaces may; write b: 1 with 2 spaces before it"),
            {"a": {"b": 1}},
        ),
        (
            "a:\n\u00a0\u00a0b: 1\n",
            ("odd-space", 2, 1, "a no-break space (U+00A0) stands where only spaces may; write b: 1 with 2 spaces before it"),
            {"a": {"b": 1}},
        ),
        (
            "title: Force: a push\nb: 1\n",
            ("colon-in-text", 1, 13, 'a colon before a space reads as the end of a key; write title: "Force: a push"'),
            {"title": "Force: a push", "b": 1},
        ),
        (
            'p: "C:\\Users"\nb: 1\n',
            ("backslash-in-quotes", 1, 7, 'a backslash in double quotes has a meaning of its own; write p: "C:\\\\Users"'),
            {"p": "C:\\Users", "b": 1},
        ),
        (
            "P1 8:05-8:57\nP2: 9:01-9:53\n",
            ("colon-missing", 1, 1, "a key needs a colon after it; write P1: 8:05-8:57"),
            {"P1": "8:05-8:57", "P2": "9:01-9:53"},
        ),
        (
            "regular:\n  P1:8:05-8:57\n  P2: 9:01-9:53\n",
            ("colon-needs-space", 2, 3, "a colon needs a space after it; write P1: 8:05-8:57"),
            {"regular": {"P1": "8:05-8:57", "P2": "9:01-9:53"}},
        ),
        (
            ">>>>>>> other\na: 1\n",
            (
                "merge-conflict",
                1,
                1,
                (
                    "a line that git writes between two versions stands here; "
                    "keep one version and delete the lines with <<<<<<<, ======= and >>>>>>>"
                ),
            ),
            {"a": 1},
        ),
        (
            "P1:8:05-8:57\nb: 1\n",
            ("colon-needs-space", 1, 1, "a colon needs a space after it; write P1: 8:05-8:57"),
            {"P1": "8:05-8:57", "b": 1},
        ),
        (
            "<<<<<<< HEAD\na: 1\n=======\na: 1\n>>>>>>> other\n",
            (
                "merge-conflict",
                1,
                1,
                (
                    "two people changed this place, and both versions stand here; "
                    "keep one of them and delete the lines with <<<<<<<, ======= and >>>>>>>"
                ),
            ),
            {"a": 1},
        ),
    ],
)
def test_refused_and_read_on(text: str, problem: tuple[str, int, int, str], value: object) -> None:
    """What the format refuses is answered in our own words at its place, and the rest of the file is still read."""
    loaded = load(text, "f.yml")
    assert said(loaded)[0] == problem
    assert len(loaded.problems) == 1
    assert loaded.value == value
    assert loaded.readable


@pytest.mark.parametrize(
    ("text", "code", "line", "column"),
    [
        ("a: 1\n---\nb: 2\n", "second-document", 2, 1),
        ("? [a, b]\n: c\n", "key-not-text", 1, 3),
        ("{a: 1}: b\n", "key-not-text", 1, 1),
        ("a: 1\nb: 2\x07\n", "control-character", 2, 5),
        ('a: "never closed\nb: 1\n', "quote-not-closed", 1, 4),
        ("a: 'x\n", "quote-not-closed", 1, 4),
        ("a: [b\n", "special-first", 1, 4),
        ("a:\n  - b\n c\n", "dash-missing", 3, 2),
        ("a: - b\n", "special-first", 1, 4),
        ("a: @b\n", "special-first", 1, 4),
    ],
)
def test_answered_at_its_place(text: str, code: str, line: int, column: int) -> None:
    """What may stop the reading is answered at its line and column in plain words."""
    loaded = load(text, "f.yml")
    found = [(p.code, p.place.line, p.place.column) for p in loaded.problems]
    assert (code, line, column) in found
    words = " ".join(problem.sentence for problem in loaded.problems).lower()
    assert not any(jargon in words for jargon in ("token", "mapping", "scalar", "sequence", "parser", "invalid", "yaml", "block"))


def test_text_cut_off_at_a_hash_is_a_warning() -> None:
    """`Room #5` reads as Room and is answered; a comment after two spaces and before one is a comment."""
    loaded = load('name: Room #5\npaper: letter     # or a4\nsite: x # y\ncolor: C#\nq: "a" # b\n# c\n', "f.yml")
    assert loaded.value == {"name": "Room", "paper": "letter", "site": "x", "color": "C#", "q": "a"}
    assert [(p.code, p.severity, p.place.line, p.place.column, p.place.length) for p in loaded.problems] == [
        ("hash-cuts-text", Severity.WARNING, 1, 12, 2),
        ("hash-cuts-text", Severity.WARNING, 3, 9, 3),
    ]
    assert 'write name: "Room #5"' in loaded.problems[0].remedy


def test_empty_brackets_in_kept_groups() -> None:
    """A lock may say `{}` and `[]`, and nothing else in brackets."""
    loaded = load("groups: {}\ncounted: []\nx: [1]\n", "l.yml", empty_brackets=True)
    assert loaded.value == {"groups": {}, "counted": [], "x": [1]}
    assert [p.place.line for p in loaded.problems] == [3]


def test_duplicates_inside_lists_and_of_lists() -> None:
    """Only the first of two equal keys counts, whatever stands under the second, and its places stay."""
    loaded = load("a:\n  b: 1\n  b:\n    - 2\na:\n  c: [3]\n", "f.yml")
    assert loaded.value == {"a": {"b": 1}}
    assert [(p.code, p.place.line) for p in loaded.problems] == [("duplicate-key", 3), ("duplicate-key", 5)]
    assert loaded.places.find("a", "b").line == 2


def bounded(text: str, most_seconds: float = 5.0) -> Loaded:
    """Load within a generous time; the measured times are far below."""
    start = time.perf_counter()
    loaded = load(text, "f.yml")
    assert time.perf_counter() - start < most_seconds
    return loaded


@pytest.mark.parametrize(
    "text",
    ["a: " + "[" * 3000 + "]" * 3000, "a: " + "{a: " * 3000, "- " * 3000 + "x", "\n".join("  " * n + f"k{n}:" for n in range(200))],
    ids=["brackets", "braces", "dashes", "keys"],
)
def test_deep_nesting_is_refused(text: str) -> None:
    """Lists inside lists end at twenty, without a traceback."""
    loaded = bounded(text)
    assert not loaded.readable
    assert loaded.value is None
    assert loaded.problems


def test_brackets_that_never_close_are_a_text() -> None:
    """Three thousand open brackets are answered as one text that needs quotes."""
    loaded = bounded("a: " + "[" * 3000)
    assert [p.code for p in loaded.problems] == ["special-first"]
    assert loaded.value == {"a": "[" * 3000}


def test_twenty_levels_are_read() -> None:
    """The limit of nesting is exact."""
    assert load("\n".join("  " * n + f"k{n}:" for n in range(19)) + " x\n", "f.yml").readable
    assert load("\n".join("  " * n + "k:" for n in range(20)) + "\n" + "  " * 20 + "x\n", "f.yml").readable
    deeper = load("\n".join("  " * n + "k:" for n in range(21)) + "\n" + "  " * 21 + "x\n", "f.yml")
    assert [p.code for p in deeper.problems] == ["nested-too-deep"]


def test_too_many_values_are_refused() -> None:
    """A pasted table ends at 20,000 values."""
    loaded = bounded("a:\n" + "  - 1\n" * 30_000)
    assert [p.code for p in loaded.problems] == ["too-many-values"]
    assert load("a:\n" + "  - 1\n" * 19_000, "f.yml").readable


def test_copies_of_copies_are_refused() -> None:
    """Nine levels of lists that copy each other nine times are answered at the first mark, and nothing is multiplied."""
    lines = ["a0: &a0 [x]"] + [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]" for n in range(1, 9)]
    loaded = bounded("\n".join(lines))
    assert {p.code for p in loaded.problems} == {"anchor", "alias", "brackets"}
    assert loaded.value["a8"] == ["*a7"] * 9


def test_huge_texts() -> None:
    """256 KB of one text, of blanks, of quotes and of colons are read or answered in bounded time."""
    for text in (
        "a: " + "x" * 250_000,
        "a:" + " " * 250_000,
        '"' * 250_000,
        "a: " * 80_000,
        "# \n" * 80_000,
        "- '\n" * 60_000,
        "a\n" * 125_000,
    ):
        bounded(text)
