"""A whole draw: everyone once, sizes, rules, cards, letters, and the same groups everywhere."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.planning.grouping.classes import (
    NOT_GROUP,
    NOT_TEAM,
    SAME_GROUP,
    SAME_TEAM,
    all_apart,
    asked,
    drawn,
    keeps,
    rule,
    rule_sets,
    where,
    year,
)
from trivet.model.lock import ROLE_IDS, Groups
from trivet.planning.grouping.draw import draw
from trivet.planning.grouping.ledger import seat_of
from trivet.planning.grouping.request import Conflict, Way
from trivet.planning.team_sizes import class_shape

some_classes = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def check_seats(groups: Groups, seats: tuple[int, ...]) -> None:
    """Everyone stands in one team and in one pair or trio; a trio only where odd, one alone only in a group of one."""
    assert list(groups) == ["A", "B", "C"]
    assert sorted(seat_of(n) for g in groups.values() for team in g.teams.values() for n in team) == list(seats)
    for group in groups.values():
        count = len(group.students)
        assert sorted(n for pair in group.pairs for n in pair) == list(group.students)
        assert sorted(len(pair) for pair in group.pairs) == ([1] if count == 1 else [2] * (count // 2 - count % 2) + [3] * (count % 2))


def check_cards(groups: Groups) -> None:
    """Every duty is held exactly once in every team."""
    for group in groups.values():
        for team in group.teams.values():
            assert sorted(role for roles in team.values() for role in roles) == sorted(ROLE_IDS)


def check_letters(groups: Groups) -> None:
    """Letters and team numbers follow the smallest seat inside, and everything inside ascends."""
    filled = [group for group in groups.values() if group.teams]
    assert [bool(g.teams) for g in groups.values()] == sorted((bool(g.teams) for g in groups.values()), reverse=True)
    lows = [min(group.students) for group in filled]
    assert lows == sorted(lows)
    for letter, group in groups.items():
        assert list(group.teams) == [f"{letter}{i}" for i in range(1, len(group.teams) + 1)]
        firsts = [min(team) for team in group.teams.values()]
        assert firsts == sorted(firsts)
        assert all(list(team) == sorted(team) for team in group.teams.values())
        assert list(group.pairs) == sorted(group.pairs) and all(list(pair) == sorted(pair) for pair in group.pairs)


@pytest.mark.parametrize("students", range(1, 61))
def test_every_size_of_class(students: int) -> None:
    """From 1 to 60 students: everyone once in team and pair, agreed sizes, every duty once, letters by the smallest seat."""
    groups = drawn(asked(students)).groups
    check_seats(groups, tuple(range(1, students + 1)))
    check_cards(groups)
    check_letters(groups)
    sizes = sorted(tuple(sorted((len(team) for team in g.teams.values()), reverse=True)) for g in groups.values())
    assert sizes == sorted(class_shape(students))


@some_classes
@given(st.data())
def test_rules_hold_or_are_named(data: st.DataObject) -> None:
    """For any rules a draw keeps all of them, or names some of them that can't all hold."""
    students = data.draw(st.integers(1, 40))
    rules = data.draw(rule_sets(students))
    levels = data.draw(st.one_of(st.none(), st.dictionaries(st.integers(1, students), st.integers(1, 4))))
    found = draw(asked(students, rules=rules, levels=levels))
    if isinstance(found, Conflict):
        assert found.rules and set(found.rules) <= set(rules)
    else:
        assert all(keeps(each, found.groups) for each in rules)
        check_seats(found.groups, tuple(range(1, students + 1)))
        check_cards(found.groups)


def test_each_kind_of_rule_bites() -> None:
    """Each kind of rule is kept where the draw without it breaks it."""
    plain = drawn(asked(31)).groups
    team, group = where(plain)
    mate = next(s for s in range(2, 32) if team[s] == team[1])
    stranger = next(s for s in range(2, 32) if team[s] != team[1] and group[s] == group[1])
    far = next(s for s in range(2, 32) if group[s] != group[1])
    for each in (rule(NOT_TEAM, 1, mate), rule(SAME_TEAM, 1, stranger), rule(NOT_GROUP, 1, stranger), rule(SAME_GROUP, 1, far)):
        assert not keeps(each, plain)
        assert keeps(each, drawn(asked(31, rules=(each,))).groups)


def test_conflicts_name_a_smallest_set() -> None:
    """Four who must stand in different station groups can't, since there are three; rules beside them are not blamed (pigeonhole)."""
    clash = all_apart(NOT_GROUP, [2, 5, 7, 11])
    found = draw(asked(31, rules=(*clash, rule(NOT_TEAM, 1, 2), rule(SAME_GROUP, 3, 4))))
    assert isinstance(found, Conflict)
    assert found.rules == clash and found.minimal


def test_levels_are_spread() -> None:
    """With levels 1 to 4 in equal shares, every team's mean lies within a quarter of a level of the class mean."""
    levels = {seat: 1 + (seat - 1) // 8 for seat in range(1, 33)}
    found = drawn(asked(32, levels=levels))
    assert found.limits == ()
    for group in found.groups.values():
        for team in group.teams.values():
            total = sum(levels[seat_of(n)] for n in team)
            assert abs(2 * total - 5 * len(team)) * 2 <= len(team)


def test_levels_that_cannot_be_spread_say_so() -> None:
    """Where no team can lie within the tolerance, the draw says how many lie outside it."""
    found = drawn(asked(12, levels={seat: 100 if seat == 1 else 0 for seat in range(1, 13)}))
    assert [limit.code for limit in found.limits] == ["levels"]
    assert found.limits[0].count >= 1


def test_leveled_groups_cut_the_ordered_list() -> None:
    """Leveled: no student of one station group lies above a student of a higher group, and the lowest levels have the smallest group."""
    levels = {seat: (seat * 7) % 31 for seat in range(1, 32)}
    groups = drawn(asked(31, levels=levels, way=Way.LEVELED)).groups
    held = sorted((sorted(levels[seat_of(n)] for n in g.students) for g in groups.values()), key=lambda v: v[0])
    assert all(one[-1] <= other[0] for one, other in pairwise(held))
    assert [len(each) for each in held] == [10, 10, 11]


def test_usual_tables_stay_together() -> None:
    """Usual: the teams are the tables, and station groups are as even as the tables allow."""
    tables = {seat: f"t{(seat - 1) // 4}" for seat in range(1, 32)}
    groups = drawn(asked(31, tables=tables, way=Way.USUAL)).groups
    teams = sorted(tuple(seat_of(n) for n in team) for g in groups.values() for team in g.teams.values())
    assert teams == [tuple(range(a, min(a + 4, 32))) for a in range(1, 32, 4)]
    assert sorted(len(g.students) for g in groups.values()) == [8, 11, 12]
    check_cards(groups)


def test_usual_and_a_rule_inside_a_table() -> None:
    """Usual: two of one table who may not share a team are named; the tables are not broken up in silence."""
    tables = {seat: f"t{(seat - 1) // 4}" for seat in range(1, 13)}
    clash = rule(NOT_TEAM, 1, 2)
    found = draw(asked(12, tables=tables, way=Way.USUAL, rules=(clash, rule(NOT_TEAM, 1, 12))))
    assert isinstance(found, Conflict) and found.rules == (clash,)


def test_students_choose_their_own_cards() -> None:
    """Where the cards are the students' choice, none is dealt."""
    groups = drawn(asked(12, deal_roles=False)).groups
    assert all(roles == () for g in groups.values() for team in g.teams.values() for roles in team.values())


def test_a_year_of_new_teammates() -> None:
    """A class of 31 gets eight units without a repeated teammate or partner, and cards at most two apart."""
    units = year(31, 8)
    assert [one.repeats for one in units] == [0] * 8
    assert [one.pair_repeats for one in units] == [0] * 8
    assert max(one.role_spread for one in units) <= 2
