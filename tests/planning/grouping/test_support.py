"""Support as rules: kept with the adult in one station group, or spread over the teams; language partners."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.planning.grouping.classes import NOT_TEAM, asked, drawn, rule
from trivet.model.roster import PairRule, RuleKind, Student
from trivet.planning.grouping.draw import draw
from trivet.planning.grouping.ledger import seat_of
from trivet.planning.grouping.pairs import apart_and_language
from trivet.planning.grouping.request import Conflict, Draw, Request
from trivet.planning.grouping.sentences import conflict
from trivet.planning.grouping.support import spread, with_adult

LANGUAGE = RuleKind.LANGUAGE


def needing(*seats: int, adult: bool = False) -> tuple[Student, ...]:
    return tuple(Student(seat=seat, needs="a quiet place", adult=adult) for seat in seats)


def teams_of(found: Draw) -> list[set[int]]:
    return [{seat_of(number) for number in team} for group in found.groups.values() for team in group.teams.values()]


def with_support(size: int, students: tuple[Student, ...], rules: tuple[PairRule, ...] = ()) -> Request:
    teams = len(teams_of(drawn(asked(size))))
    given = (*rules, *with_adult(students))
    return replace(asked(size, rules=given), wishes=spread(students, teams, given))


@pytest.mark.parametrize("count", [2, 5, 9, 12])
def test_needs_are_spread(count: int) -> None:
    """Students who need something are at most one in a team, or two where there are more of them than teams."""
    found = drawn(with_support(31, needing(*range(3, 3 + count))))
    most = -(-count // len(teams_of(found)))
    assert max(len(team & set(range(3, 3 + count))) for team in teams_of(found)) == most
    assert not found.limits


def test_many_needs_ask_for_nothing() -> None:
    """Where more than two in each team need something, every team has some anyway."""
    assert spread(needing(*range(1, 20)), 9, ()) == ()


def test_the_adult_is_at_one_station() -> None:
    """All who work with the adult are in one station group, whatever the levels; nobody of them is spread."""
    found = drawn(with_support(31, needing(2, 11, 17, 29, adult=True)))
    groups = [{seat_of(number) for number in group.students} for group in found.groups.values()]
    assert any({2, 11, 17, 29} <= group for group in groups)


def test_too_many_for_one_group_is_said_in_words() -> None:
    """Twelve who work with the adult do not fit a group of eleven, and the answer names the adult."""
    found = draw(with_support(31, needing(*range(1, 13), adult=True)))
    assert isinstance(found, Conflict)
    assert conflict(found, str)[1] == "  with the adult: 1 and 2"


def test_spreading_gives_way_to_rules() -> None:
    """Two whom a rule puts together are not parted; where spreading can't hold beside the rules it is given up and said."""
    students = needing(1, 2, 3, 4)
    together = with_support(12, students, (rule(RuleKind.SAME_TEAM, 1, 2),))
    assert any({1, 2} <= team for team in teams_of(drawn(together)))
    # 5, 6 and 7 are in three teams, and 1 and 2 may be with 7 alone.
    crowded = tuple(rule(NOT_TEAM, *two) for two in ((5, 6), (5, 7), (6, 7), (1, 5), (1, 6), (2, 5), (2, 6)))
    found = draw(with_support(12, students, crowded))
    assert isinstance(found, Draw)
    assert [limit.code for limit in found.limits] == ["support"]


def test_language_partners_share_team_and_device() -> None:
    """Language partners are in one team and on one device in every unit, though partners else come from different teams."""
    for seed in ("a", "b", "c"):
        found = drawn(replace(asked(31, rules=(rule(LANGUAGE, 4, 19), rule(LANGUAGE, 8, 23))), seed=seed))
        pairs = [{seat_of(number) for number in pair} for group in found.groups.values() for pair in group.pairs]
        for two in ({4, 19}, {8, 23}):
            assert any(two <= team for team in teams_of(found))
            assert any(two <= pair for pair in pairs)


def test_who_should_share_a_device_and_who_should_not() -> None:
    """Rules written by the teacher decide about partners; support that is spread does not."""
    kinds = (RuleKind.NOT_ONE_TEAM, RuleKind.NOT_ONE_GROUP, RuleKind.LANGUAGE, RuleKind.SPREAD, RuleKind.WITH_ADULT, RuleKind.SAME_TEAM)
    rules = [PairRule(kind, 1, 2 + place) for place, kind in enumerate(kinds)]
    assert apart_and_language(rules) == (frozenset({(1, 2), (1, 3)}), frozenset({(1, 4)}))
