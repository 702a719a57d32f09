"""Lines of a calendar file against RFC 5545."""

from __future__ import annotations

import icalendar
from hypothesis import given, settings
from hypothesis import strategies as st

from trivet.pages.ical import component, file_of, folded, text

LETTERS = st.text(st.characters(exclude_categories=("Cs", "Cc")), max_size=400)


def unfolded(written: str) -> str:
    return written.removesuffix("\r\n").replace("\r\n ", "")


@settings(max_examples=200)
@given(line=LETTERS)
def test_folding(line: str) -> None:
    """No written line is longer than 75 octets, no character is cut in two, and unfolding gives the line back (RFC 5545 3.1)."""
    written = folded(line)
    assert written.endswith("\r\n")
    for piece in written.encode("utf-8").removesuffix(b"\r\n").split(b"\r\n"):
        assert len(piece) <= 75
        piece.decode("utf-8")
    assert unfolded(written) == line


def test_folding_at_the_limit() -> None:
    """75 octets stay on one line and the 76th begins the next; of a letter of two octets, both move (RFC 5545 3.1)."""
    assert folded("a" * 75) == "a" * 75 + "\r\n"
    assert folded("a" * 76) == "a" * 75 + "\r\n a\r\n"
    assert folded("a" * 74 + "é") == "a" * 74 + "\r\n é\r\n"
    assert folded("a" * 75 + "b" * 75) == "a" * 75 + "\r\n " + "b" * 74 + "\r\n b\r\n"


def test_escapes() -> None:
    """Commas, semicolons, backslashes and line ends are escaped, as in the standard's own example (RFC 5545 3.3.11)."""
    said = "Project XYZ Final Review\nConference Room - 3B\nCome Prepared."
    assert text(said) == r"Project XYZ Final Review\nConference Room - 3B\nCome Prepared."
    assert text(r"a,b;c\d") == r"a\,b\;c\\d"
    assert text("bell\x07 and\rreturn") == "bell andreturn"


@settings(max_examples=100)
@given(said=st.text(st.characters(exclude_categories=("Cs", "Cc"), include_characters="\n"), min_size=1, max_size=200))
def test_any_text_survives_another_reader(said: str) -> None:
    """What a reader of the format makes of a written text is the text (read with the icalendar package)."""
    lines = component("VCALENDAR", ["VERSION:2.0", "PRODID:-//T//T//EN", *component("VEVENT", ["UID:1", f"SUMMARY:{text(said)}"])])
    event = icalendar.Calendar.from_ical(file_of(lines)).walk("VEVENT")[0]
    assert str(event["SUMMARY"]) == said
