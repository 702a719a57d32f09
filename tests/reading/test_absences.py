"""Who was absent when: read from the private folder, with every slip told and no line's text repeated."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from tests.support.department import tiny_class
from trivet.reading.absences import absences_of, read_absences

CLASS = tiny_class(size=6)


def test_seats_are_read_by_date() -> None:
    """Each date has its seats, written as a number or with the class's id, in any order of columns."""
    absences, problems = absences_of(f"seat,date\n2,2026-11-30\n{CLASS.id}-03,2026-11-30\n1,2026-12-01\n", "a.csv", CLASS)
    assert not problems
    assert absences == {date(2026, 11, 30): frozenset({2, 3}), date(2026, 12, 1): frozenset({1})}


def test_slips_are_told_without_repeating_them() -> None:
    """A date or a seat that can't be read is told with its line, and its text is not printed."""
    absences, problems = absences_of("date,seat\nlast Tuesday,2\n2026-11-30,Robin\n", "a.csv", CLASS)
    assert absences == {}
    assert [(p.code, p.place.line) for p in problems] == [("unreadable-date", 2), ("unknown-seat", 3)]
    assert not [p for p in problems if "Tuesday" in p.sentence or "Robin" in p.sentence]


def test_no_list_is_no_absence(tmp_path: Path) -> None:
    """Without a file nobody was absent; a file without its titles is told so."""
    assert read_absences(tmp_path, CLASS) == ({}, ())
    assert [p.code for p in absences_of("who\n1\n", "a.csv", CLASS)[1]] == ["missing-column"]
