"""What a schema can't see in a unit is answered with its code, place and remedy."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.reading.unit_files import codes, only, read, unit_folder
from trivet.model.hazard import HAZARDS
from trivet.reading.checks import closed_questions, hazards
from trivet.reading.checks.closed_questions import rewrite
from trivet.reading.checks.folders import SLUG, slug_fault
from trivet.reading.checks.standards import CODES
from trivet.reading.near import nearest
from trivet.reading.unit import read_unit

HAZARD = "    hazards: none\n"


def test_standards_are_the_59_of_the_catalogue() -> None:
    """There are 59 middle-school codes, 19 + 21 + 15 + 4, and none beyond the last of its idea (NGSS; references 6.1)."""
    assert len(CODES) == len(set(CODES)) == 59
    for idea, count in (("PS", 19), ("LS", 21), ("ESS", 15), ("ETS", 4)):
        assert sum(code.startswith(f"MS-{idea}") for code in CODES) == count
    for beyond in ("MS-PS1-7", "MS-PS4-4", "MS-LS3-3", "MS-ESS1-5", "MS-ETS1-5"):
        assert beyond not in CODES
    for last in ("MS-PS1-6", "MS-PS4-3", "MS-LS3-2", "MS-ESS1-4", "MS-ETS1-4"):
        assert last in CODES


@pytest.mark.parametrize("code", ["MS-PS1-7", "MS-XX1-1", "ms-ps1-2", "MS PS1-2"])
def test_code_that_does_not_exist_is_an_error(tmp_path: Path, code: str) -> None:
    """A code that looks like one of the catalogue and is none stops the unit."""
    assert codes(read(tmp_path, ("MS-PS2-2", code))) == ["unknown-standard"]


def test_every_hazard_word_is_known(tmp_path: Path) -> None:
    """The closed list passes, in a line or under dashes, in any letter case."""
    line = f"    hazards: {', '.join(HAZARDS)}\n    instead: Watch.\n"
    assert codes(read(tmp_path / "a", (HAZARD, line))) == []
    under = "    hazards:\n" + "".join(f"      - {word.upper()}\n" for word in HAZARDS) + "    instead: Watch.\n"
    found = read(tmp_path / "b", (HAZARD, under))
    assert found.unit is not None
    assert found.unit.hands_on.hazards == HAZARDS


def test_other_words_lead_to_hazard_words() -> None:
    """Each word that people say instead leads to a word of the closed list."""
    assert set(hazards.SAID_OTHERWISE.values()) <= set(HAZARDS)
    assert not set(hazards.SAID_OTHERWISE) & set(HAZARDS)
    assert nearest("electrics", HAZARDS) == "electricity"


@pytest.mark.parametrize(
    ("ask", "better"),
    [
        ("What will you do first?", ""),
        ("Why do you measure five times?", ""),
        ("Is it heavier? How do you know?", ""),
        ("Do you understand the steps?", closed_questions.INSTEAD_OF_UNDERSTOOD),
        ("Everyone ready?", closed_questions.INSTEAD_OF_UNDERSTOOD),
        ("OK, got it?", closed_questions.INSTEAD_OF_UNDERSTOOD),
        ("Do you know how to read the scale?", "How will you read the scale?"),
        ("Do you all know what to write?", "What will you write?"),
        ("Can you tell me why it floats?", "Explain why it floats."),
        ("Could you describe the curve?", "What can you say about the curve?"),
        ("Does the block float?", "How could you find out: does the block float?"),
        ("Don’t heavy things sink?", "How could you find out: don't heavy things sink?"),
        ("So, did it sink?", "How could you find out: did it sink?"),
    ],
)
def test_closed_question_gets_an_open_one(ask: str, better: str) -> None:
    """A question for yes or no is rewritten, an open one is let be, and a rewrite is open itself."""
    assert rewrite(ask) == better
    assert rewrite(rewrite(ask) or "What?") == ""


@pytest.mark.parametrize(
    ("slug", "better"),
    [
        ("Float", "call it float"),
        ("1-float", "call it float"),
        ("a", "call it like float-or-sink"),
        ("x y!", "call it x-y"),
        ("guide", "choose another name"),
    ],
)
def test_slug_that_is_no_address_is_answered(slug: str, better: str) -> None:
    """A name that can't stand in an address gets one that can."""
    fault = slug_fault(slug)
    assert fault is not None
    assert fault[1] == better
    assert slug_fault("float-or-sink") is None


@pytest.mark.parametrize("slug", ["ab", "a1", "a-b", "a" * 40])
def test_slugs_of_the_contract_pass(slug: str) -> None:
    """Two to forty characters, a letter first."""
    assert SLUG.fullmatch(slug)
    assert slug_fault(slug) is None


@pytest.mark.parametrize("name", ["x.js", "x.MJS", "sub/x.html", "x.css", "x.wasm", "x.htm", "x.xhtml"])
def test_code_is_refused_until_reviewed(tmp_path: Path, name: str) -> None:
    """A file that a browser runs is refused in a unit that is not listed, and let pass in one that is."""
    folder = unit_folder(tmp_path)
    (folder / name).parent.mkdir(exist_ok=True)
    (folder / name).write_text("x")
    assert codes(read_unit(folder, "rolling-carts", tmp_path, ())).count("code-not-listed") == 1
    assert "code-not-listed" not in codes(read_unit(folder, "rolling-carts", tmp_path, ("rolling-carts",)))


@pytest.mark.parametrize(
    "svg",
    [
        "<script/>",
        "<rect onload='x()'/>",
        "<a href='javascript:x()'/>",
        "<foreignObject/>",
        "<image href='https://x.org/y'/>",
        "<!ENTITY x 'y'>",
    ],
)
def test_picture_with_code_is_never_let_pass(tmp_path: Path, svg: str) -> None:
    """An SVG that holds code or loads something is refused, in a reviewed unit too; a plain one passes."""
    folder = unit_folder(tmp_path)
    (folder / "a.svg").write_text(f"<svg>\n{svg}</svg>")
    (folder / "b.svg").write_text("<svg><title>on = off</title><rect/></svg>")
    found = read_unit(folder, "rolling-carts", tmp_path, ("rolling-carts",), ("float-or-sink",))
    problem = only(found, "picture-with-code")
    assert (problem.place.file, problem.place.line) == ("units/rolling-carts/a.svg", 2)


def test_simulation_as_shipped_passes(tmp_path: Path) -> None:
    """A page whose code and styles stand in files of their own has no problem."""
    assert read(tmp_path, slug="float-or-sink").problems == ()


@pytest.mark.parametrize(
    ("html", "code"),
    [
        ("<script>x()</script>", "inline-script"),
        ("<script type='module'>x()</script>", "inline-script"),
        ("<script type='importmap'>{}</script>", "inline-script"),
        ("<p onclick='x()'>", "inline-handler"),
        ("<a href=' java\nscript:x()'>", "inline-handler"),
        ("<p style='color: red'>", "inline-style"),
        ("<style>p {}</style>", "inline-style"),
        ("<img src='https://example.org/a.png'>", "loads-from-elsewhere"),
        ("<link rel='stylesheet' href='//example.org/a.css'>", "loads-from-elsewhere"),
        ("<img src='a.png' srcset='a.png 1x, https://example.org/b.png 2x'>", "loads-from-elsewhere"),
        ("<picture><source srcset='a.png 480w,//example.org/b.png 1.5x'></picture>", "loads-from-elsewhere"),
        ("<link rel='preload' as='image' imagesrcset='HTTPS://example.org/b.png'>", "loads-from-elsewhere"),
        ("<iframe src='a.html'></iframe>", "framed-page"),
        ("<meta http-equiv='Refresh' content='0'>", "page-moves-away"),
        ("<base href='x/'>", "page-moves-away"),
        ("<![x[ y", "page-not-read"),
    ],
)
def test_page_that_the_policy_stops_is_answered(tmp_path: Path, html: str, code: str) -> None:
    """What the content-security policy would stop is answered at its line."""
    folder = unit_folder(tmp_path, slug="float-or-sink")
    (folder / "sim" / "more.html").write_text(f"<!doctype html>\n<title>x</title>\n{html}\n")
    found = only(read_unit(folder, "float-or-sink", tmp_path, ("float-or-sink",)), code)
    assert (found.place.file, found.place.line) == ("units/float-or-sink/sim/more.html", 3)


@pytest.mark.parametrize(
    "html",
    [
        "<script src='a.js'></script>",
        "<script type='application/json'>{}</script>",
        "<a href='https://example.org'>x</a>",
        "<img src='a.png' alt=''>",
        "<img src='a.png' srcset='a.png 1x, b.png 2x' alt=''>",
        "<svg></svg>",
    ],
)
def test_page_within_the_policy_passes(tmp_path: Path, html: str) -> None:
    """Scripts in files, data, links to elsewhere and pictures of the folder are fine."""
    folder = unit_folder(tmp_path, slug="float-or-sink")
    (folder / "sim" / "more.html").write_text(f"<!doctype html>\n<title>x</title>\n{html}\n")
    assert read_unit(folder, "float-or-sink", tmp_path, ("float-or-sink",)).problems == ()


@pytest.mark.parametrize("title", ["Name", "student name", "**Last name**", "Nombre", "Student_Name"])
def test_names_in_a_table_are_refused(tmp_path: Path, title: str) -> None:
    """A column of names in prose is an error, whatever it is called."""
    found = read(tmp_path, ("See also", f"| {title} | n |\n| --- | --- |\n| A. B. | 1 |\n\nSee also"))
    assert codes(found) == ["student-names"]


def test_counts_of_students_are_no_names(tmp_path: Path) -> None:
    """A column of numbers called students counts them and passes."""
    assert codes(read(tmp_path, ("See also", "| students | teams |\n| --- | --- |\n| 24 | 6 |\n| 31 | 8 |\n\nSee also"))) == []


def test_names_in_code_are_words(tmp_path: Path) -> None:
    """A table inside code is shown, not kept."""
    assert codes(read(tmp_path, ("See also", "```\n| Name | n |\n| --- | --- |\n| A | 1 |\n```\n\nSee also"))) == []


def test_station_of_a_unit_may_repeat_another(tmp_path: Path) -> None:
    """The same activity on purpose names a unit and station that exist."""
    assert codes(read(tmp_path, ("    done when: Ten", "    again: rolling-carts/online\n    done when: Ten"))) == []
    found = read(tmp_path / "b", ("    done when: Ten", "    again: volcano/online\n    done when: Ten"))
    assert codes(found) == ["unknown-unit"]


def test_long_card_is_warned_of_from_the_limit_on(tmp_path: Path) -> None:
    """A card of 1,500 characters passes, one more is a warning, in every language."""
    spare = 1500 - sum(map(len, ("Judge a claim about carts.", "Write a question for the next group.")))
    fits = read(tmp_path / "a", ("    questions:", f"    start alone: {'x' * spare}\n    questions:"))
    over = read(tmp_path / "b", ("    questions:", f"    start alone: {'x' * (spare + 1)}\n    questions:"))
    assert "card-too-long" not in codes(fits)
    assert only(over, "card-too-long").what.startswith("the student card has 1501 characters")


def test_reading_level_warns_above_the_grades(tmp_path: Path) -> None:
    """Hard text above the highest grade is a warning, above the lowest advice, and new words do not count."""
    hard = (
        "Change the slope and guess first.",
        "Investigate systematically which characteristics influence the distance that vehicles travel beforehand and afterwards.",
    )
    words = "systematically, characteristics, influence, investigate, beforehand, vehicles, distance, afterwards"
    assert str(only(read(tmp_path / "a", hard, ("6-8", "1-2")), "reading-level").severity) == "warning"
    assert str(only(read(tmp_path / "b", hard, ("6-8", "1-12")), "reading-level").severity) == "advice"
    assert "reading-level" not in codes(read(tmp_path / "c", hard, ("6-8", "1-2"), ("stations:\n", f"new words: {words}\nstations:\n")))


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.text(alphabet="<>!?/-[]=\"' abscriptylon:\n", max_size=60))
def test_any_page_is_read(tmp_path: Path, html: str) -> None:
    """No page stops the reader."""
    folder = unit_folder(tmp_path, slug="float-or-sink")
    (folder / "sim" / "more.html").write_text(html, encoding="utf-8")
    read_unit(folder, "float-or-sink", tmp_path, ("float-or-sink",))
