"""Someone comes, someone leaves: few move, exactly as few as can be."""

from __future__ import annotations

from dataclasses import replace
from itertools import product

import pytest

from tests.planning.grouping.classes import NOT_TEAM, asked, drawn, keeps, rule, where
from trivet.model.lock import ROLE_IDS, Groups
from trivet.planning.grouping.change import change, spoken
from trivet.planning.grouping.ledger import seat_of
from trivet.planning.grouping.request import Request


def sound(groups: Groups) -> bool:
    """Station groups within one of each other, teams of three to five (or a group that is one team)."""
    sizes = [len(group.students) for group in groups.values()]
    return max(sizes) - min(sizes) <= 1 and all(
        3 <= len(team) <= 5 or len(group.teams) == 1 for group in groups.values() for team in group.teams.values()
    )


def one_move_is_enough(groups: Groups, gone: int) -> bool:
    """Say whether one student can change teams so that sizes are sound, by trying every student and team."""
    team, _ = where(groups)
    team.pop(gone)
    codes = sorted({code for group in groups.values() for code in group.teams})
    for seat, target in product(sorted(team), codes):
        sizes = {code: sum(1 for s, c in team.items() if (target if s == seat else c) == code) for code in codes}
        totals = [sum(n for code, n in sizes.items() if code[0] == letter) for letter in groups]
        if max(totals) - min(totals) <= 1 and all(not n or 3 <= n <= 5 for n in sizes.values()):
            return True
    return False


@pytest.mark.parametrize(("students", "none"), [(24, 24), (30, 12), (31, 8), (33, 24), (35, 24), (36, 36)])
def test_leavers(students: int, none: int) -> None:
    """As many leavers as counted need no move at all (those in a four of the largest groups); the others need exactly one."""
    base = asked(students)
    groups = drawn(base).groups
    moved = []
    for gone in base.seats:
        found = change(groups, replace(base, seats=tuple(seat for seat in base.seats if seat != gone)))
        assert found is not None and found.left == (gone,) and sound(found.groups)
        moved.append(len(found.moves))
        if found.moves:
            assert one_move_is_enough(groups, gone)
    assert moved.count(0) == none and max(moved) <= 1


def test_nine_threes_lose_a_team() -> None:
    """In nine teams of three a leaver takes a team along: its two others join the two teams beside it."""
    base = asked(27)
    found = change(drawn(base).groups, replace(base, seats=base.seats[1:]))
    assert found is not None and len(found.moves) == 2
    assert sorted(len(group.teams) for group in found.groups.values()) == [2, 3, 3]


@pytest.mark.parametrize("students", [24, 25, 28, 31, 32, 36, 39])
def test_late_arrivals_move_nobody(students: int) -> None:
    """A late arrival takes a free seat, and nobody moves; cards and partners elsewhere stay as they were."""
    base = asked(students)
    groups = drawn(base).groups
    found = change(groups, replace(base, seats=(*base.seats, students + 1)))
    assert found is not None and sound(found.groups)
    assert [(move.seat, move.source) for move in found.moves] == [(students + 1, "")]
    target = found.moves[0].target
    for letter, group in groups.items():
        if letter != target[0]:
            assert found.groups[letter] == group
    for code, team in found.groups[target[0]].teams.items():
        if code != target:
            assert team == groups[target[0]].teams[code]
        if len(team) <= 5:
            assert sorted(role for roles in team.values() for role in roles) == sorted(ROLE_IDS)
    paired = sorted(n for pair in found.groups[target[0]].pairs for n in pair)
    assert paired == list(found.groups[target[0]].students)


def test_rules_are_kept() -> None:
    """An arrival does not come to a team with someone it may not share a team with."""
    base = asked(31, places=tuple(range(1, 33)))
    groups = drawn(base).groups
    free = change(groups, replace(base, seats=(*base.seats, 32)))
    assert free is not None
    letter, target = free.moves[0].target[0], free.moves[0].target
    barred = tuple(rule(NOT_TEAM, 32, seat_of(n)) for n in groups[letter].teams[target])
    found = change(groups, Request(**{**_fields(base), "seats": (*base.seats, 32), "rules": barred}))
    assert found is not None and all(keeps(each, found.groups) for each in barred)


def _fields(request: Request) -> dict[str, object]:
    return {name: getattr(request, name) for name in ("class_id", "seed", "places")}


def test_too_much_change() -> None:
    """More than two moves or more than two arrivals are not a change but a new draw."""
    base = asked(24)
    groups = drawn(base).groups
    assert change(groups, replace(base, seats=(*base.seats, 25, 26, 27))) is None
    whole_group = {seat_of(n) for n in groups["A"].students}
    assert change(groups, replace(base, seats=tuple(seat for seat in base.seats if seat not in whole_group))) is None


def test_spoken() -> None:
    """A change is told as who left, who came where, and who moves from where to where."""
    base = asked(31)
    groups = drawn(base).groups
    name = {seat: f"p1-{seat:02d}" for seat in range(1, 40)}
    for gone in base.seats:
        found = change(groups, replace(base, seats=tuple(seat for seat in base.seats if seat != gone)))
        assert found is not None
        lines = spoken(found, name)
        assert lines[0] == f"left: p1-{gone:02d}"
        if found.moves:
            move = found.moves[0]
            assert lines[-1] == f"1 student moves: p1-{move.seat:02d} {move.source} → {move.target}"
    assert spoken(change(groups, base) or found, name) == ["nobody moves"]
