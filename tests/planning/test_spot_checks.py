"""Which question goes to whom."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support.department import ROLES, tiny_class, tiny_unit
from tests.support.lock import tiny_lock
from trivet.model.plan import SpotCheck
from trivet.model.station import HandsOnStation, Kind, SpotCheckLine, Step
from trivet.model.unit import Unit
from trivet.planning.catch_up import places
from trivet.planning.hazards import HAZARDS
from trivet.planning.spot_check_lines import SPOT_CHECK_KINDS
from trivet.planning.spot_checks import AskedHistory, spot_checks
from trivet.planning.where import latin_squares, whole_class_square

SQUARE = latin_squares()[0]


def asked(unit: Unit, size: int = 31, history: AskedHistory | None = None, *, whole_class: bool = False) -> tuple[SpotCheck, ...]:
    groups = tiny_lock(tiny_class(size=size)).groups
    square = whole_class_square() if whole_class else SQUARE
    return spot_checks(unit, groups, places(square, {}), ROLES, history or AskedHistory(), whole_class=whole_class)


@settings(max_examples=60, deadline=None)
@given(st.integers(1, 60), st.booleans(), st.sampled_from(((), ("glass",), ("glass", "spill", "sharp"))))
def test_who_is_asked(size: int, whole_class: bool, hazards: tuple[str, ...]) -> None:
    """Each team the teacher leaves (in a whole-class round every team) is asked once a round, nobody twice before all teammates once."""
    unit = tiny_unit(hands_on={"hazards": hazards})
    groups = tiny_lock(tiny_class(size=size)).groups
    square = whole_class_square() if whole_class else SQUARE
    checks = asked(unit, size, whole_class=whole_class)
    for number in range(3):
        expected = sorted(
            team
            for letter, group in groups.items()
            for team in group.teams
            if whole_class or square[letter][number] is not Kind.TEACHER_LED
        )
        assert sorted(check.team for check in checks if check.round == number + 1) == expected
        at_hands_on = [c for c in checks if c.round == number + 1 and square[c.team[0]][number] is Kind.HANDS_ON]
        assert any(check.kind == "safety" for check in at_hands_on) == bool(hazards and at_hands_on)
    for group in groups.values():
        for team, members in group.teams.items():
            times = Counter(dict.fromkeys(members, 0) | Counter(c.seat for c in checks if c.team == team))
            assert set(times) == set(members)
            assert max(times.values()) - min(times.values()) <= 1
    assert all(check.kind in SPOT_CHECK_KINDS and check.ask.strip() and check.listen_for.strip() for check in checks)
    assert all(check.ask.endswith((".", "?")) and not check.ask.startswith(("Do ", "Is ", "Are ", "Can ")) for check in checks)


def test_least_asked_this_year_comes_first() -> None:
    """Over several units with the same teams, every student's turns differ by at most one from the teammates'."""
    history = AskedHistory()
    groups = tiny_lock(tiny_class()).groups
    for _ in range(5):
        checks = asked(tiny_unit(), history=history)
        history.add(checks)
        for group in groups.values():
            for members in group.teams.values():
                counts = [history.asked[seat] for seat in members]
                assert max(counts) - min(counts) <= 1


def test_a_newcomer_is_not_asked_every_time() -> None:
    """Somebody asked less than teammates all year is asked first, but not again before the others in this unit."""
    history = AskedHistory(Counter({f"p1-{seat:02d}": 9 for seat in range(1, 32) if seat != 3}), 4)
    own = [check.seat for check in asked(tiny_unit(), history=history) if check.team == "A1"]
    assert own == ["p1-03", "p1-01"]


def test_questions_come_from_the_unit() -> None:
    """First step, duty, columns and done-when are the unit's own words."""
    unit = tiny_unit(hands_on={"hazards": ()})
    by_kind = {(check.kind, SQUARE[check.team[0]][check.round - 1]): check for check in asked(unit)}
    assert by_kind["first_step", Kind.HANDS_ON].listen_for == "Weigh the dry solid. (3 times)"
    assert by_kind["first_step", Kind.ONLINE].listen_for == unit.online.steps[0].text
    assert by_kind["record", Kind.ONLINE].listen_for == "volume (mL), mass (g), floats?; 4 rows"
    assert by_kind["done", Kind.ONLINE].listen_for == unit.online.done_when
    assert by_kind["done", Kind.HANDS_ON].listen_for == unit.hands_on.done_when
    job = by_kind["your_job", Kind.HANDS_ON]
    groups = tiny_lock(tiny_class()).groups
    role = next(role for role in ROLES if role.id in groups[job.team[0]].teams[job.team][job.seat])
    assert job.listen_for == f"{role.name}: {role.does}"
    assert not any(kind == "your_job" and at is Kind.ONLINE for kind, at in by_kind)


def test_questions_vary() -> None:
    """No team hears one kind of question twice in a unit while another kind is left, and teams side by side are asked different ones."""
    checks = asked(tiny_unit())
    for team in {check.team for check in checks}:
        kinds = [check.kind for check in checks if check.team == team]
        assert len(kinds) == len(set(kinds))
    for number in (1, 2, 3):
        for letter in "ABC":
            kinds = [check.kind for check in checks if check.round == number and check.team.startswith(letter)]
            assert len(kinds) == len(set(kinds))


def test_safety_moves_on() -> None:
    """Which team and which hazard the safety question takes changes from round to round and from unit to unit."""
    unit = tiny_unit(hands_on={"hazards": ("glass", "spill")})

    def about_safety(units: int) -> list[tuple[str, str]]:
        checks = asked(unit, history=AskedHistory(units=units))
        return [(check.team, check.ask) for check in checks if check.kind == "safety"]

    assert [team for team, _ in about_safety(0)] == ["B1", "A2", "C3"]
    assert [team for team, _ in about_safety(1)] == ["B2", "A3", "C1"]
    assert {ask for _, ask in about_safety(0)} == {HAZARDS["glass"].ask, HAZARDS["spill"].ask}


def test_own_lines_come_first() -> None:
    """An author's lines are taken before built ones, each by another team; safety still has its team."""
    own = (SpotCheckLine(Kind.HANDS_ON, "Where is eye level?", "crouches"), SpotCheckLine(Kind.HANDS_ON, "Why dry?", "mass"))
    checks = asked(tiny_unit(spot_checks=own))
    first = [check for check in checks if check.round == 1 and check.team.startswith("B")]
    assert [check.kind for check in first] == ["safety", "own", "own"]
    assert {check.ask for check in first if check.kind == "own"} == {"Where is eye level?", "Why dry?"}


def test_blank_cards() -> None:
    """Where students choose their roles the question listens for the duty on the card, and names nobody's role."""
    checks = asked(tiny_unit(roles="students", hands_on={"hazards": ()}))
    jobs = [check for check in checks if check.kind == "your_job"]
    assert jobs
    assert all(role.name not in check.listen_for for role in ROLES for check in jobs)


@pytest.mark.parametrize("whole_class", [False, True])
def test_bare_unit_still_has_questions(whole_class: bool) -> None:
    """A unit with one step and nothing else gives every team a question."""
    bare = tiny_unit(
        online={"record": None, "done_when": ""},
        hands_on={"done_when": "", "hazards": (), "record": None, "steps": (Step("Weigh it.", 5),)},
        teacher_led={"start_alone": "", "read": None, "done_when": ""},
    )
    assert isinstance(bare.hands_on, HandsOnStation)
    checks = asked(bare, whole_class=whole_class)
    assert len(checks) == (27 if whole_class else 18)
    assert all(check.listen_for for check in checks)
