"""What the policy of the site would stop in a simulation is said before."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.reading.unit_files import only, read, unit_folder
from trivet.reading.checks.simulation_pages import check
from trivet.reading.unit import read_unit


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


@settings(max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.text(alphabet="<>!?/-[]=\"' abscriptylon:\n", max_size=60))
def test_any_page_is_read(tmp_path: Path, html: str) -> None:
    """No page stops the reader, and what it finds stands on a line of the page."""
    (tmp_path / "more.html").write_text(html, encoding="utf-8")
    for problem in check(tmp_path, "sim/", ("more.html",)):
        assert 1 <= problem.place.line <= html.count("\n") + 1
