"""Links and pictures in prose lead somewhere, and prose keeps to Markdown."""

from __future__ import annotations

import pytest

from trivet.model.problem import Severity
from trivet.reading.checks.links import check
from trivet.reading.checks.targets import Surroundings

AROUND = Surroundings("float-or-sink", ("data/results.csv", "tank.png"), ("float-or-sink",))


@pytest.mark.parametrize(
    ("prose", "code", "severity", "column"),
    [
        ("See [the data](data/result.csv).", "link-to-nothing", Severity.ERROR, 16),
        ("![the tank](tanks.png)", "link-to-nothing", Severity.ERROR, 13),
        ("![](tank.png)", "picture-without-words", Severity.WARNING, 5),
        ("So <b>heavy</b>", "html-in-prose", Severity.ADVICE, 4),
    ],
)
def test_each_stands_at_its_place(prose: str, code: str, severity: Severity, column: int) -> None:
    """A dead link, a picture without words and HTML are answered at the line of the file and the column of the target or tag."""
    first = next(iter(check("units/float-or-sink/index.md", f"Text.\n\n{prose}\n", 40, AROUND)))
    assert (first.code, first.severity, first.place.line, first.place.column) == (code, severity, 42, column)


def test_good_prose_is_quiet() -> None:
    """Links to files, pictures with words, and signs that look like tags in code give nothing."""
    assert list(check("x.md", "[data](data/results.csv) ![a tank](tank.png) `<b>` and 3 < 4", 1, AROUND)) == []


def test_a_long_tag_is_cut() -> None:
    """Of a tag of any length at most forty characters are quoted."""
    (found,) = check("x.md", f"<b title='{'x' * 90}'>", 1, AROUND)
    shown = found.what.removeprefix("HTML is not used in prose, so ").removesuffix(" will show as text")
    assert shown.startswith("<b title=") and shown.endswith("...") and len(shown) == 40
