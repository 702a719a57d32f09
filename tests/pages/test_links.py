"""One page points at another as a browser resolves it (RFC 3986, by the standard library's urljoin)."""

from __future__ import annotations

from urllib.parse import urljoin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trivet.pages.links import calendar_address, lesson_address, relative, student_address, unit_address, whom_address

PARTS = st.lists(st.sampled_from(("units", "lesson", "p1", "float-or-sink", "student")), max_size=3)
PAGES = PARTS.map(lambda parts: "".join(f"{part}/" for part in parts))
TARGETS = st.tuples(PAGES, st.sampled_from(("", "plan.json", "#online", "a.css"))).map("".join)


@given(PAGES, TARGETS, st.sampled_from(("https://trivet.example/", "https://trivet.example/science/grade-7/")))
def test_a_browser_finds_the_target(source: str, target: str, site: str) -> None:
    """From any page to any page, file or anchor, under any sub-path, the link leads where it should."""
    assert urljoin(site + source, relative(source, target)) == site + target


@pytest.mark.parametrize(
    ("source", "target", "link"), [("", "", "./"), ("a/", "a/", "./"), ("a/", "a/#x", "#x"), ("a/b/", "", "../../"), ("", "a/", "a/")]
)
def test_no_link_is_empty(source: str, target: str, link: str) -> None:
    """A page that points at itself says so, and an anchor on it stands alone."""
    assert relative(source, target) == link


def test_addresses_of_the_contract() -> None:
    """Printed addresses never change: those of the design's contracts."""
    assert unit_address("float-or-sink") == "units/float-or-sink/"
    assert student_address("float-or-sink") == "units/float-or-sink/student/"
    assert student_address("float-or-sink", "es") == "units/float-or-sink/student/es/"
    assert lesson_address("p1", "float-or-sink") == "lesson/p1/float-or-sink/"
    assert calendar_address("p1") == "calendar/p1.ics"
    assert whom_address("p1") == "whom/p1/"
