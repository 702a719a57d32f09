"""Table groups kept as teams: their deal over three station groups."""

from __future__ import annotations

from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.planning.grouping.classes import NOT_GROUP, NOT_TEAM, SAME_GROUP, rule, rule_sets
from trivet.planning.grouping.feasible import Answer
from trivet.planning.grouping.rules import broken
from trivet.planning.grouping.usual import best_deal, can_hold, deals, tables_in_order


def seated(sizes: list[int]) -> list[list[int]]:
    """Return tables of these sizes, filled in order of seat."""
    teams, first = [], 1
    for size in sizes:
        teams.append(list(range(first, first + size)))
        first += size
    return teams


@settings(max_examples=50, deadline=None)
@given(st.data())
def test_equal_to_trying_all(data: st.DataObject) -> None:
    """For up to six tables, rules hold where any of all deals keeps them, and sizes are as even as in the best of those."""
    teams = seated(data.draw(st.lists(st.integers(2, 6), min_size=1, max_size=6)))
    rules = data.draw(rule_sets(min(10, teams[-1][-1]), most=5))
    team_of = {seat: place for place, team in enumerate(teams) for seat in team}
    gaps = []
    for deal in product(range(3), repeat=len(teams)):
        if not broken(rules, team_of, {seat: deal[place] for seat, place in team_of.items()}):
            sizes = [sum(len(team) for team, group in zip(teams, deal, strict=True) if group == each) for each in range(3)]
            gaps.append(max(sizes) - min(sizes))
    found = best_deal(teams, rules, {})
    assert (found is None) == (not gaps)
    if found is not None:
        assert found[1] == min(gaps)
    assert can_hold(teams, rules) is (Answer.YES if gaps else Answer.NO)


def test_each_way_comes_once() -> None:
    """Nine tables of four make 280 ways of three groups of three tables (9!/(3!³·3!))."""
    assert sum(1 for _ in deals([4] * 9, 0)) == 280


def test_levels_break_ties() -> None:
    """Among deals of equal sizes, the groups' means lie as near as they can: high and low tables come together."""
    teams = seated([2] * 6)
    deviation = {seat: value for team, value in zip(teams, (5, 5, 1, -1, -5, -5), strict=True) for seat in team}
    found = best_deal(teams, (), deviation)
    assert found is not None
    sums = [0, 0, 0]
    for team, group in zip(teams, found[0], strict=True):
        sums[group] += sum(deviation[seat] for seat in team)
    assert sums == [0, 0, 0]


def test_rules_within_and_between_tables() -> None:
    """A rule that a table breaks by itself can't hold; one between tables is kept by the deal."""
    teams = seated([4, 4, 4, 4])
    assert best_deal(teams, (rule(NOT_TEAM, 1, 2),), {}) is None
    found = best_deal(teams, (rule(SAME_GROUP, 1, 13), rule(NOT_GROUP, 5, 9)), {})
    assert found is not None
    assert found[0][0] == found[0][3] and found[0][1] != found[0][2]


def test_tables_in_order_of_the_lowest_seat() -> None:
    """Tables come in order of the lowest seat at each, whatever they are called."""
    assert tables_in_order((1, 2, 3, 4), {1: "z", 2: "a", 3: "z", 4: "a"}) == ((1, 3), (2, 4))
