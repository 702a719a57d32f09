"""Absences of one day: few move, within a station, and cards are handed on."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.planning.grouping.classes import NOT_TEAM, asked, drawn, rule, where
from trivet.model.lock import ROLE_IDS, Groups
from trivet.planning.grouping.day import for_the_day
from trivet.planning.grouping.ledger import seat_of

BASE = asked(31)
GROUPS = drawn(BASE).groups


def sizes(groups: Groups) -> dict[str, list[int]]:
    return {letter: sorted(len(team) for team in group.teams.values()) for letter, group in groups.items()}


def sound(counts: list[int]) -> bool:
    return len(counts) <= 1 or all(3 <= count <= 5 for count in counts)


def test_nobody_away_changes_nothing() -> None:
    """A day on which everyone is there has the kept groups."""
    assert for_the_day(GROUPS, (), BASE).groups == GROUPS


@settings(max_examples=40, deadline=None)
@given(st.sets(st.integers(1, 31), max_size=6))
def test_who_is_there_is_placed_once_at_the_same_station(away: set[int]) -> None:
    """Everyone present is in one team and one pair of the station group as kept; every team holds each duty once; nobody away is named."""
    found = for_the_day(GROUPS, away, BASE)
    team, group = where(found.groups)
    _, kept = where(GROUPS)
    assert set(team) == set(BASE.seats) - away
    assert all(kept[seat] == letter for seat, letter in group.items())
    for each in found.groups.values():
        assert sorted(n for pair in each.pairs for n in pair) == list(each.students)
        for members in each.teams.values():
            assert sorted(role for roles in members.values() for role in roles) == sorted(ROLE_IDS)
    assert set(found.left) == away


@settings(max_examples=25, deadline=None)
@given(st.sets(st.integers(1, 31), min_size=1, max_size=5))
def test_as_few_move_as_can_be(away: set[int]) -> None:
    """No fewer students could move, found by trying all moves of fewer within each station group."""
    found = for_the_day(GROUPS, away, BASE)
    for letter, group in GROUPS.items():
        left = {code: [seat_of(n) for n in team if seat_of(n) not in away] for code, team in group.teams.items()}
        moved = [move for move in found.moves if move.source[0] == letter]
        seats = [(seat, code) for code, team in left.items() for seat in team]
        for fewer in range(len(moved)):
            for movers in combinations(seats, fewer):
                for targets in product(left, repeat=fewer):
                    counts = {code: len(team) for code, team in left.items()}
                    for (_, source), target in zip(movers, targets, strict=True):
                        counts[source] -= 1
                        counts[target] += 1
                    assert not sound([count for count in counts.values() if count])


def test_a_team_of_two_is_mended_by_one_from_a_four() -> None:
    """One student comes over from a team of four rather than two going to a team of three."""
    letter, four = next((letter, code) for letter, group in GROUPS.items() for code, team in group.teams.items() if len(team) == 4)
    three = next(code for code, team in GROUPS[letter].teams.items() if len(team) == 3)
    away = min(seat_of(n) for n in GROUPS[letter].teams[three])
    found = for_the_day(GROUPS, {away}, BASE)
    assert [(move.source, move.target) for move in found.moves] == [(four, three)]


def test_cards_stay_where_the_team_is_whole() -> None:
    """A team that nobody left keeps its cards; in one that lost a student the others keep what they were named for."""
    letter, code = next((letter, code) for letter, group in GROUPS.items() for code, team in group.teams.items() if len(team) == 4)
    team = GROUPS[letter].teams[code]
    reporter = next(n for n, card in team.items() if card[:1] == ("reporter",))
    found = for_the_day(GROUPS, {seat_of(reporter)}, BASE)
    now = found.groups[letter].teams[code]
    assert {n: card[0] for n, card in now.items()} == {n: card[0] for n, card in team.items() if n != reporter}
    assert all(found.groups[other] == GROUPS[other] for other in GROUPS if other != letter)


@pytest.mark.parametrize("why", ["rule", "fixed"])
def test_rules_and_fixed_seats_hold_for_the_day(why: str) -> None:
    """Whoever may not join a team, or has a fixed seat, does not move there; somebody else does."""
    letter, three = next((letter, code) for letter, group in GROUPS.items() for code, team in group.teams.items() if len(team) == 3)
    seats = sorted(seat_of(n) for n in GROUPS[letter].teams[three])
    first = for_the_day(GROUPS, {seats[0]}, BASE).moves[0]
    request = (
        replace(BASE, fixed=frozenset({first.seat})) if why == "fixed" else replace(BASE, rules=(rule(NOT_TEAM, first.seat, seats[1]),))
    )
    second = for_the_day(GROUPS, {seats[0]}, request).moves
    assert [move.seat for move in second] != [first.seat] and len(second) == 1
