"""What a link may point at is one rule: the check and the pages agree on every target."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.pages.prose_links import UnitLinks
from trivet.reading.checks.targets import Surroundings, address_fault, file_fault, link_fault, picture_fault

FILES = ("data/results.csv", "pictures/tank.png", "sim/index.html", "story.md", "a b.csv")
UNITS = ("float-or-sink", "rolling-carts")
AROUND = Surroundings("float-or-sink", FILES, UNITS)
PAGES = UnitLinks(slug="float-or-sink", files=FILES, units=UNITS, page="units/float-or-sink/")
GOOD = [
    "data/results.csv",
    "sim/",
    "sim/index.html",
    "../rolling-carts/",
    "../rolling-carts/index.md",
    "https://example.org/a?b#c",
    "mailto:a@example.org",
]
GOOD += ["a%20b.csv", "data/results.csv#part", "./data/results.csv", "sim/../data/results.csv", "index.md", "&#104;ttps://example.org"]
BAD = [
    "",
    "#here",
    "story.md",
    "data/",
    "/data/results.csv",
    "//example.org/x",
    "http://example.org",
    "javascript:alert(1)",
    "JaVaScRiPt:alert(1)",
]
BAD += [
    "data:text/html,x",
    "../../school/classes.yml",
    "../",
    "..",
    ".",
    "data\\results.csv",
    "DATA/results.csv",
    "../other/",
    "https://",
    "file:///etc",
]
BAD += [
    "java\u200bscript:alert(1)",
    "&#106;avascript:alert(1)",
    "ftp://example.org",
    "sim/missing.js",
    "../rolling-carts/notes.md",
    "%2e%2e/%2e%2e/x",
    "?x",
]


@pytest.mark.parametrize("target", GOOD)
def test_good_target_is_followed(target: str) -> None:
    """A file of the folder, another unit and a safe address are links."""
    assert link_fault(target, AROUND) is None or target == "."


@pytest.mark.parametrize("target", BAD)
def test_bad_target_is_answered(target: str) -> None:
    """All else is answered, with something to do."""
    fault = link_fault(target, AROUND)
    assert fault is not None or target == "."
    assert fault is None or fault.remedy


@pytest.mark.parametrize("target", [*GOOD, *BAD, *FILES])
def test_pages_follow_the_same_rule(target: str) -> None:
    """A link or picture is refused by the check exactly where pages refuse to make it."""
    assert (link_fault(target, AROUND) is None) == isinstance(PAGES.link(target), str)
    assert (picture_fault(target, AROUND) is None) == isinstance(PAGES.image(target), str)


@given(
    st.lists(
        st.sampled_from(
            ["..", ".", "/", "sim", "data", "results.csv", "float-or-sink", "rolling-carts", "#", "?", "%2e", ":", "https", "\\", " "]
        ),
        max_size=7,
    )
)
def test_any_target_gets_one_answer(parts: list[str]) -> None:
    """Targets put together from any pieces get the same answer from both."""
    target = "".join(parts)
    assert (link_fault(target, AROUND) is None) == isinstance(PAGES.link(target), str), target
    assert (picture_fault(target, AROUND) is None) == isinstance(PAGES.image(target), str), target


def test_picture_from_another_unit_is_answered() -> None:
    """Pictures come from the unit's own folder."""
    assert picture_fault("../rolling-carts/", AROUND) is not None
    assert picture_fault("pictures/tank.png", AROUND) is None


@pytest.mark.parametrize(
    ("path", "page", "good"),
    [
        ("sim/", True, True),
        ("sim", True, True),
        ("sim/", False, False),
        ("story.md", False, True),
        ("Story.md", False, False),
        ("./story.md", False, False),
        ("data//results.csv", False, False),
        ("./sim/", True, False),
    ],
)
def test_file_is_there_or_answered(path: str, page: bool, good: bool) -> None:
    """A folder counts for a page alone, and letter case matters, since it does on a server."""
    assert (file_fault(path, FILES, page=page) is None) == good


@pytest.mark.parametrize(("path", "near"), [("Story.md", "story.md"), ("data/result.csv", "data/results.csv")])
def test_near_miss_is_named(path: str, near: str) -> None:
    """The file that was probably meant is named."""
    fault = file_fault(path, FILES)
    assert fault is not None
    assert fault.remedy == f"write {near}"


@pytest.mark.parametrize(
    ("files", "remedy"),
    [
        (FILES, "write sim/, or save the page as simulation/index.html"),
        (("story.md",), "save the page as simulation/index.html, or write an https address"),
    ],
)
def test_a_folder_to_open_needs_a_page(files: tuple[str, ...], remedy: str) -> None:
    """A folder that is not there is answered with the page that has to lie in it, and with the other way to open something."""
    fault = file_fault("simulation/", files, page=True)
    assert fault is not None
    assert fault.what == "there is no page simulation/index.html in the unit's folder"
    assert fault.remedy == remedy


def test_only_https_opens() -> None:
    """An address to open is https."""
    assert address_fault("https://example.org/tank") is None
    for bad in ("http://example.org", "mailto:a@example.org", "javascript:alert(1)"):
        assert address_fault(bad) is not None
