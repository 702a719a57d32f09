"""Every trap of a line is answered with the corrected line, which YAML reads as the text that was meant."""

from __future__ import annotations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from trivet.model.problem import Problem
from trivet.reading.quoting import plain_or_quoted, quoted
from trivet.reading.scan import scan
from trivet.reading.strict import load


def answered(text: str) -> tuple[object, list[Problem]]:
    """The value and all problems of a front matter that begins on line 2."""
    scanned = scan(text, "u.md", 2)
    assert scanned.text.count("\n") == text.count("\n")
    loaded = load(scanned.text, "u.md", 2)
    problems = [*scanned.problems, *loaded.problems]
    assert all(problem.remedy for problem in problems)
    return loaded.value, problems


TEXTS = [
    # after a key or dash: as typed, code, column of the trap in it (from 0), corrected, meant
    ("Room #5", "hash-cuts-text", 5, '"Room #5"', "Room #5"),
    ("#5", "hash-cuts-text", 0, '"#5"', "#5"),
    ("a # b", "hash-cuts-text", 2, '"a # b"', "a # b"),
    ("a  #b", "hash-cuts-text", 3, '"a  #b"', "a  #b"),
    ("Room #5  # the back room", "hash-cuts-text", 5, '"Room #5"  # the back room', "Room #5"),
    ("Record: the mass", "colon-in-text", 6, '"Record: the mass"', "Record: the mass"),
    ("Record the mass:", "colon-in-text", 15, '"Record the mass:"', "Record the mass:"),
    ("Say: it: twice # now", "colon-in-text", 3, '"Say: it: twice # now"', "Say: it: twice # now"),
    ('"Why" is a question', "quote-not-closed", 0, '"\\"Why\\" is a question"', '"Why" is a question'),
    ('"Why" or "how"', "quote-not-closed", 0, '"\\"Why\\" or \\"how\\""', '"Why" or "how"'),
    ('"Never closed', "quote-not-closed", 0, '"Never closed"', "Never closed"),
    ('"A 5" ruler"', "quote-not-closed", 0, '"A 5\\" ruler"', 'A 5" ruler'),
    ("'tis the lightest", "quote-not-closed", 0, '"\'tis the lightest"', "'tis the lightest"),
    ("'it's light'", "quote-not-closed", 0, '"it\'s light"', "it's light"),
    ("'Why' and then", "quote-not-closed", 0, "\"'Why' and then\"", "'Why' and then"),
    ("*Never* taste it.", "special-first", 0, '"*Never* taste it."', "*Never* taste it."),
    ("*", "special-first", 0, '"*"', "*"),
    ("&more", "special-first", 0, '"&more"', "&more"),
    ("> 5 g", "special-first", 0, '"> 5 g"', "> 5 g"),
    (">", "special-first", 0, '">"', ">"),
    ("| x |", "special-first", 0, '"| x |"', "| x |"),
    ("[optional] Weigh it.", "special-first", 0, '"[optional] Weigh it."', "[optional] Weigh it."),
    ("{x} and y", "special-first", 0, '"{x} and y"', "{x} and y"),
    ("] x", "special-first", 0, '"] x"', "] x"),
    ("} x", "special-first", 0, '"} x"', "} x"),
    (", x", "special-first", 0, '", x"', ", x"),
    ("@home", "special-first", 0, '"@home"', "@home"),
    ("`code` here", "special-first", 0, '"`code` here"', "`code` here"),
    ("%5 salt", "special-first", 0, '"%5 salt"', "%5 salt"),
    ("! careful", "special-first", 0, '"! careful"', "! careful"),
    ("!careful", "special-first", 0, '"!careful"', "!careful"),
    ("? what", "special-first", 0, '"? what"', "? what"),
    ("- 5 degrees", "special-first", 0, '"- 5 degrees"', "- 5 degrees"),
    (": so", "special-first", 0, '": so"', ": so"),
    ('"C:\\Users"', "backslash-in-quotes", 3, '"C:\\\\Users"', "C:\\Users"),
    ('"5 \\% of \\"it\\""', "backslash-in-quotes", 3, '"5 \\\\% of \\"it\\""', '5 \\% of "it"'),
    ('* a "b" \\ c', "special-first", 0, '"* a \\"b\\" \\\\ c"', '* a "b" \\ c'),
]


@pytest.mark.parametrize("case", TEXTS, ids=[case[0] for case in TEXTS])
@pytest.mark.parametrize("lead", ["goal: ", "  - ", "- ask: "])
def test_text_traps(lead: str, case: tuple[str, str, int, str, str]) -> None:
    """After a key, in a list of texts and after the key of an item: one problem, the corrected line, the text that was meant."""
    typed, code, at, corrected, meant = case
    above = {"goal: ": "title: x\n", "  - ": "steps:\n  - Go.\n", "- ask: ": "questions:\n- ask: x\n"}[lead]
    value, problems = answered(f"{above}{lead}{typed}\nlast: line")
    (problem,) = problems
    assert (problem.code, problem.place.line, problem.place.column) == (code, 2 + above.count("\n"), len(lead) + at + 1)
    comment = "; if it is a comment, put two spaces before # and one after"
    remedy = f"write {lead.strip()} {corrected}"
    assert problem.remedy == (f"if it belongs to the text, {remedy}{comment}" if code == "hash-cuts-text" else remedy)
    assert problem.place.length <= len(lead + typed) - problem.place.column + 1
    texts = {
        "goal: ": {"title": "x", "goal": meant},
        "  - ": {"steps": ["Go.", meant]},
        "- ask: ": {"questions": [{"ask": "x"}, {"ask": meant}]},
    }
    if code != "hash-cuts-text" or at == 0:
        assert value == {**texts[lead], "last": "line"}
    again, none = answered(f"{above}{lead}{corrected}\nlast: line")
    assert (again, none) == ({**texts[lead], "last": "line"}, [])


@pytest.mark.parametrize(
    "typed",
    [
        "Plain text.", "“Curly quotes”", "‘single’", "Mass – volume", "Mass — volume", "a:b", "http://x.example/#top", "C#", "it's",
        'a 5" ruler',
        "2 * 3", "a & b", "x > y", "a [b]", "50% of it", "me@home", "'quoted'", '"quoted"', '"a: b # c"', "'it''s'", '"a \\"b\\""',
        "-5 degrees", "really?", "10:30", "a!", "~5 g", "·x", "+ 1", "=x", "a | b", "(2 min)",
        "https://trivet.example/?a=1&b=2", "é:x",
    ],
)  # fmt: skip
def test_fine_texts(typed: str) -> None:
    """What YAML reads as it is typed passes, curly quotes and dashes too."""
    value, problems = answered(f"goal: {typed}\nsteps:\n  - {typed}\n")
    assert problems == []
    bare = typed[1:-1].replace("''", "'").replace('\\"', '"') if typed[0] in "\"'" else typed
    assert value == {"goal": bare, "steps": [bare]}


@pytest.mark.parametrize(
    "line",
    [
        "# a note",
        "    # a note",
        "open: sim/  # note",
        "open: sim/              # a page here",
        'open: "sim/" # note',
        "open:  # note",
        "open:",
    ],
)
def test_comments_that_may_stand(line: str) -> None:
    """A comment stands on its own line, or after two spaces and before one, or where it cuts nothing off."""
    assert answered(f"title: x\n{line}\nlast: y\n")[1] == []
    assert answered("steps: # in order\n  - a\nlast: y\n")[1] == []


def test_keys_that_open_an_item() -> None:
    """Only a known key of a list whose items have keys opens an item; elsewhere a colon belongs to the text."""
    text = (
        "questions:\n  - ask: What did they change?\n    listen for: the stone\n  - What else: or not?\n"
        "steps:\n  - ask: your partner (1 min)\n"
        "expected:\n  - of: density\n    value: 2.50\n"
        "spot checks:\n  - station: online\n    ask: a\n"
        "misconceptions:\n  - hear: heavy sinks\n"
        "rubric:\n  - part: claim\n    levels:\n      - low: none\n      - some\n"
    )
    value, problems = answered(text)
    assert [(p.code, p.place.line, p.remedy) for p in problems] == [
        ("colon-in-text", 5, 'write - ask: "What else: or not?"'),
        ("colon-in-text", 7, 'write - "ask: your partner (1 min)"'),
        ("colon-in-text", 19, 'write - "low: none"'),
    ]
    assert isinstance(value, dict)
    assert value["questions"] == [{"ask": "What did they change?", "listen for": "the stone"}, {"ask": "What else: or not?"}]
    assert value["steps"] == ["ask: your partner (1 min)"]
    assert value["expected"][0]["of"] == "density"
    assert value["rubric"] == [{"part": "claim", "levels": ["low: none", "some"]}]


LINES = [
    # the whole front matter, its problems as (code, line, remedy), its value
    ("steps:\n  * Weigh it.\n  • Read it.\n  – Go.\n  2. Stop.\n", [
        ("dash-missing", 3, "write - Weigh it."), ("dash-missing", 4, "write - Read it."),
        ("dash-missing", 5, "write - Go."), ("dash-missing", 6, "write - Stop."),
    ], {"steps": ["Weigh it.", "Read it.", "Go.", "Stop."]}),
    ("steps:\n  - Weigh it.\n  Read: it.\n  -Go.\n", [
        ("dash-missing", 4, 'write - "Read: it."'), ("colon-in-text", 4, 'write - "Read: it."'), ("dash-needs-space", 5, "write - Go."),
    ], {"steps": ["Weigh it.", "Read: it.", "Go."]}),
    ("goal:Find it.\nhazards = glass\nsteps\n  - a\n", [
        ("colon-needs-space", 2, "write goal: Find it."), ("colon-missing", 3, "write hazards: glass"),
        ("colon-missing", 4, "write steps:"),
    ], {"goal": "Find it.", "hazards": "glass", "steps": ["a"]}),
    ("questions:\n  - ask:What?\n    listen for:this\n", [
        ("colon-needs-space", 3, "write - ask: What?"), ("colon-needs-space", 4, "write listen for: this"),
    ], {"questions": [{"ask": "What?", "listen for": "this"}]}),
    ("a:\n  goal: x\n    materials:\n      - y\n    hazards: z\n  instead: w\n", [
        ("not-lined-up", 4, "write materials: with 2 spaces before it"),
    ], {"a": {"goal": "x", "materials": ["y"], "hazards": "z", "instead": "w"}}),
    ("steps:\n  - a\n    - b\n - c\n", [
        ("not-lined-up", 4, "write - b with 2 spaces before it"), ("not-lined-up", 5, "write - c with 2 spaces before it"),
    ], {"steps": ["a", "b", "c"]}),
    ("steps:\n  - a\n  done when: b\n", [
        ("not-lined-up", 4, "write done when: b with no space before it"),
    ], {"steps": ["a"], "done when": "b"}),
    ("steps:\n  - a\n done when: b\n", [
        ("not-lined-up", 4, "write done when: b with no space before it"),
    ], {"steps": ["a"], "done when": "b"}),
    ("questions:\n  - ask: a\n  listen for: b\n", [
        ("not-lined-up", 4, "write listen for: b with 4 spaces before it"),
    ], {"questions": [{"ask": "a", "listen for": "b"}]}),
    ("a: x\n- b\nc: y\n", [
        ("stray-item", 3, (
            "move it under the key of its list, or, if the line above opens the list, take the text away that follows its colon"
        )),
    ], {"a": "x", "c": "y"}),
    ("goal: Find what\n  decides it\nuse: x\n", [], {"goal": "Find what decides it", "use": "x"}),
    ("goal:\n  Find what decides it\nuse: x\n", [], {"goal": "Find what decides it", "use": "x"}),
    ("goal: Find: what\n  decides it\nuse: x\n", [
        ("colon-in-text", 2, 'write goal: "Find: what decides it"'),
    ], {"goal": "Find: what decides it", "use": "x"}),
    ("goal: Find what\n  Decides: it\nuse: x\n", [
        ("colon-in-text", 3, 'write goal: "Find what Decides: it"'),
    ], {"goal": "Find what Decides: it", "use": "x"}),
    ("goal: >\n  Find what\n  decides: it\n\nuse: x\n", [
        ("special-first", 2, 'write goal: "Find what decides: it"'),
    ], {"goal": "Find what decides: it", "use": "x"}),
    ('goal: "Find what\n  decides it"\nuse: x\n', [
        ("quote-not-closed", 2, 'write goal: "Find what decides it"'),
    ], {"goal": "Find what decides it", "use": "x"}),
    ("a:\n\tb: Force: x\n", [
        ("tab-indent", 3, "write b: Force: x with 2 spaces before it"), ("colon-in-text", 3, 'write b: "Force: x"'),
    ], {"a": {"b": "Force: x"}}),
    ("steps:\n\u00a0 -\u00a0Go.\n", [("odd-space", 3, "write - Go. with 2 spaces before it")], {"steps": ["Go."]}),
    ("steps:\n- a\n- b: c\ngoal: x\n", [("colon-in-text", 4, 'write - "b: c"')], {"steps": ["a", "b: c"], "goal": "x"}),
    ("a: x\n...\nb: y\n", [("second-document", 3, "delete this line")], {"a": "x", "b": "y"}),
    ("\n# only comments\n\n", [], None),
    ("hands-on:\n  goal: x\n  hazards none\n  done when You can say it.\n  Clean up 2 min\n", [
        ("colon-missing", 4, "write hazards: none"), ("colon-missing", 5, "write done when: You can say it."),
        ("colon-missing", 6, "write clean up: 2 min"),
    ], {"hands-on": {"goal": "x", "hazards": "none", "done when": "You can say it.", "clean up": "2 min"}}),
    ("a:\n    b: x\n\tc: y\n\td: z\ne: w\n", [
        ("tab-indent", 4, "write c: y with 4 spaces before it"), ("tab-indent", 5, "write d: z with 4 spaces before it"),
    ], {"a": {"b": "x", "c": "y", "d": "z"}, "e": "w"}),
    ("a:\n\tb:\n\t\tc: 1\n\td: 2\n", [
        ("tab-indent", 3, "write b: with 2 spaces before it"), ("tab-indent", 4, "write c: 1 with 4 spaces before it"),
        ("tab-indent", 5, "write d: 2 with 2 spaces before it"),
    ], {"a": {"b": {"c": 1}, "d": 2}}),
    ("questions:\n  - ask: a\n\tlisten for: b\n", [
        ("tab-indent", 4, "write listen for: b with 4 spaces before it"),
    ], {"questions": [{"ask": "a", "listen for": "b"}]}),
    ("grades:\u00a06-8\nuse: mass\u200b, volume\nti\u2060tle: a\n", [
        ("odd-space", 2, "write grades: 6-8"), ("odd-space", 3, "write use: mass, volume"), ("odd-space", 4, "write title: a"),
    ], {"grades": "6-8", "use": "mass, volume", "title": "a"}),
    ("title: ក\u200bខ\n", [], {"title": "ក\u200bខ"}),
]  # fmt: skip


@pytest.mark.parametrize(("text", "problems", "value"), LINES, ids=[str(number) for number in range(len(LINES))])
def test_lines(text: str, problems: list[tuple[str, int, str]], value: object) -> None:
    """A slip at the beginning of a line or in its indentation is answered with the corrected line, and the rest is read as meant."""
    found, said = answered(text)
    assert [(p.code, p.place.line, p.remedy) for p in said] == problems
    assert found == value


def test_brackets_are_left_to_the_loader() -> None:
    """A list in brackets is answered once, by the loader, also over two lines."""
    value, problems = answered("use: [mass,\n  volume]\nx: y\n")
    assert [(p.code, p.place.line) for p in problems] == [("brackets", 2)]
    assert value == {"use": ["mass", "volume"], "x": "y"}


WORDS = st.text(
    st.characters(codec="utf-8", exclude_categories=["Cc", "Cs", "Zl", "Zp", "Cn"], exclude_characters="\ufeff\u200b\u2060"),
    min_size=1,
    max_size=40,
)


@settings(max_examples=400, deadline=None)
@given(WORDS)
def test_quoted_texts_are_read_back(text: str) -> None:
    """Whatever the text, its quoted form is read as that text; so is the plain form where no quotes are asked for."""
    for line in (f"a: {quoted(text)}", f"a: {plain_or_quoted(text)}", f"a:\n  - {plain_or_quoted(text)}"):
        loaded = load(line, "f.yml")
        assert loaded.problems == ()
        assert loaded.value in ({"a": text}, {"a": [text]})


SPECIAL = st.text(st.sampled_from("ab #:'\"-*&>|[]{}@`%!?,\\(2 min)"), min_size=1, max_size=25)


@settings(max_examples=400, deadline=None)
@example("{?}")
@example("[?]")
@given(SPECIAL)
def test_an_answered_line_is_not_answered_twice(text: str) -> None:
    """Where the scan answered a text, the loader has nothing more to say, and the lines around it are read."""
    for lead, tail in (("goal: ", "last: y"), ("steps:\n  - ", "last: y")):
        scanned = scan(f"first: x\n{lead}{text}\n{tail}", "u.md")
        loaded = load(scanned.text, "u.md")
        if scanned.problems:
            assert loaded.problems == ()
        if loaded.readable:
            assert (loaded.value["first"], loaded.value["last"]) == ("x", "y")
        assert {p.code for p in loaded.problems} <= {"brackets", "line-not-read"}
