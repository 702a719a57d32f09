"""Code in a unit folder waits for a review."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.reading.unit_files import codes, only, unit_folder
from trivet.reading.unit import read_unit


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
