"""Rules for two students, read from one cell of a list."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.support.department import tiny_class
from trivet.model.roster import WRITTEN_KINDS, PairRule, RuleKind
from trivet.reading.pair_rules import CONTRARY, FIXED, contradictions, is_fixed, rules_of
from trivet.reading.table import Cell, Findings

CLASS = replace(tiny_class(size=24), gone=(25,))


def read(text: str, seat: int = 1) -> tuple[list[PairRule], list[tuple[str, str]]]:
    found = Findings("private/roster-p1.csv")
    told = rules_of(seat, Cell(text, 2, 1, max(1, len(text))), CLASS, found)
    return [rule for rule, _ in told], [(problem.code, problem.remedy) for problem in found.problems]


@given(st.dictionaries(st.sampled_from(WRITTEN_KINDS), st.sets(st.integers(2, 24), min_size=1, max_size=3), max_size=3), st.booleans())
def test_rules_come_back(rules: dict[RuleKind, set[int]], fixed: bool) -> None:
    """Rules written in any order and any capitals, with or without the class before a number, are read with the lower seat first."""
    parts = [f" {kind.value.upper()} : {', '.join(f'p1-{seat}' for seat in sorted(seats))}" for kind, seats in rules.items()]
    text = "; ".join([*parts, *([FIXED] if fixed else [])])
    expected = [PairRule(kind, 1, seat) for kind, seats in rules.items() for seat in sorted(seats)]
    assert read(text) == (expected, [])
    assert is_fixed(Cell(text, 2, 1, 1)) is fixed


@pytest.mark.parametrize(
    ("text", "code", "remedy"),
    [
        ("same tem: 5", "unreadable-rule", "write `same team: 12`, with the class number of the other student"),
        ("fixed seats", "unreadable-rule", "write `fixed seat`"),
        ("same team", "unreadable-rule", "write `same team: 12`, with the class number of the other student"),
        ("same team: 25", "rule-gone-seat", "take the number out"),
        ("same team: 26", "rule-unknown-seat", "mend the number, or take the rule out"),
        ("same team: 1", "rule-with-self", "write the number of the other student"),
    ],
)
def test_a_slip_is_answered(text: str, code: str, remedy: str) -> None:
    """Each slip has its own answer with what to write, and gives no rule."""
    assert read(text) == ([], [(code, remedy)])


@given(st.text(max_size=30))
def test_no_cell_stops_the_reader_or_is_repeated(text: str) -> None:
    """Whatever stands in a cell, each rule read is about two seats of the class; what is said of it repeats none of its words."""
    found = Findings("private/roster-p1.csv")
    rules = [rule for rule, _ in rules_of(1, Cell(f"zebulon {text}", 2, 1, 9), CLASS, found)]
    assert all({rule.low, rule.high} < set(CLASS.seats) for rule in rules)
    assert not any("zebulon" in problem.sentence for problem in found.problems)


@pytest.mark.parametrize(("one", "other"), [(a, b) for a in RuleKind for b in RuleKind if a.value < b.value])
def test_what_can_not_both_hold_is_told_once(one: RuleKind, other: RuleKind) -> None:
    """Two rules for the same two students are told, at the later line, exactly where they can't both hold."""
    found = Findings("private/roster-p1.csv")
    told = [(PairRule(kind, 1, 2), Cell("x", line, 1, 1)) for kind, line in ((one, 5), (other, 3))]
    contradictions(told, found)
    contrary = (one, other) in CONTRARY or (other, one) in CONTRARY
    assert [(problem.code, problem.place.line) for problem in found.problems] == ([("rules-contradict", 5)] if contrary else [])
