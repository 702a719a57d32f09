"""Which problems are shown, and how they are counted."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tests.reading.report.problems import ALL
from trivet.model.problem import Place, Problem, Severity
from trivet.reading import report
from trivet.reading.report.counts import counted, printable, shown, tally


def test_text_sorts_counts_once_and_keeps_advice_for_all() -> None:
    """Problems are in the order of the file, each once; advice is counted and shown on request."""
    without = report.text(ALL, {})
    assert without.splitlines()[0].startswith("units/a/index.md:2:31: hands-on")
    assert without.splitlines()[-1] == "1 error, 1 warning in 1 file (1 piece of advice with --all)"
    with_advice = report.text(ALL, {}, advice=True)
    assert with_advice.splitlines()[0] == "units/a/index.md:1:1: advice: this is hard to read"
    assert with_advice.splitlines()[-1] == "1 error, 1 warning, 1 piece of advice in 1 file"
    assert report.text([], {}) == "no problems\n"


problems = st.builds(
    Problem,
    st.sampled_from(["a", "b"]),
    st.sampled_from(Severity),
    st.builds(Place, st.sampled_from(["x.md", "y.md"]), st.integers(1, 3)),
    st.sampled_from(["this", "that"]),
    st.just("write it"),
)


@given(st.lists(problems, max_size=8), st.booleans())
def test_what_is_shown_and_what_is_counted_agree(found: list[Problem], advice: bool) -> None:
    """Each different problem is counted once; what is shown is all of them, or all but advice."""
    counts = tally(found)
    hidden = 0 if advice else counts[Severity.ADVICE]
    assert sum(counts.values()) == len(set(found)) == len(shown(found, advice=advice)) + hidden
    said = counted(found, advice=advice)
    assert said.startswith("no problems") == (len(set(found)) == hidden)
    assert ("with --all" in said) == bool(hidden)


@given(st.text())
def test_what_is_printable_keeps_its_length(said: str) -> None:
    """Signs are replaced one for one, so that columns still fit, and what is left can all be printed."""
    assert len(printable(said)) == len(said)
    assert printable(said).isprintable()
