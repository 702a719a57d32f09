"""The small draw that a phone shares."""

from __future__ import annotations

import json
import os
from collections import Counter
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support.draws import FILE, as_history, asked, asks, cases, outcome, request_of, text
from trivet.planning.grouping.small import Dice32, small_draw
from trivet.planning.team_sizes import class_shape

KEPT = json.loads(FILE.read_text(encoding="utf-8"))["cases"] if FILE.exists() else []


def test_the_file_is_what_is_asked() -> None:
    """tests/shared/draws.json holds at least 60 cases, each once, and is written again by TRIVET_REFRESH=1."""
    if os.environ.get("TRIVET_REFRESH"):
        FILE.write_text(text(cases()), encoding="utf-8")
    kept = json.loads(FILE.read_text(encoding="utf-8"))["cases"]
    assert [(case["name"], case["input"]) for case in kept] == list(asks())
    assert len({case["name"] for case in kept}) == len(kept) >= 60


@pytest.mark.parametrize("case", KEPT, ids=lambda case: case["name"])
def test_a_case_comes_out_to_the_letter(case: dict[str, Any]) -> None:
    """Groups, partners, cards, repeats and broken rules of a shared case are those in the file."""
    assert outcome(small_draw(request_of(case["input"]))) == case["expected"]


def test_the_seed_is_hashed_as_published() -> None:
    """FNV-1a of "a" and "foobar" on 32 bits (test vectors of its authors, Fowler, Noll and Vo; from memory)."""
    assert (Dice32("a").state, Dice32("foobar").state) == (0xE40C292C, 0xBF9CF968)


def test_the_dice_are_the_published_ones() -> None:
    """Xorshift 13, 17, 5 from 2463534242, the start in Marsaglia 2003, goes on as other makers' does (from memory)."""
    dice = Dice32("")
    dice.state = 2463534242
    assert [dice.below(2**32) for _ in range(3)] == [723471715, 2497366906, 2064144800]


@settings(max_examples=40)
@given(st.integers(1, 45), st.sampled_from(("mixed", "leveled")), st.sampled_from((3, 4, 5)), st.text(max_size=5), st.data())
def test_everyone_has_one_place(students: int, how: str, size: int, seed: str, data: st.DataObject) -> None:
    """Whatever is asked, sizes are those of the class's shape, and each student has one team, one card and one device."""
    seats = sorted(data.draw(st.sets(st.integers(1, 60), min_size=students, max_size=students)))
    levels = {str(seat): data.draw(st.integers(1, 4)) for seat in seats if data.draw(st.booleans())}
    drawn = small_draw(request_of({**asked(seed, 0), "seats": seats, "how": how, "team_size": size, "levels": levels}))
    teams = [team for group in drawn.groups.values() for team in group.teams.values()]
    assert sorted(seat for team in teams for seat in team) == seats
    assert Counter(map(len, teams)) == Counter(size for sizes in class_shape(students, size) for size in sizes)
    assert sorted(seat for group in drawn.groups.values() for pair in group.pairs for seat in pair) == seats
    lengths = [sum(map(len, group.teams.values())) for group in drawn.groups.values()]
    assert max(lengths) - min(lengths) <= 1
    assert drawn.repeats == 0 and not drawn.broken


def test_rules_that_can_hold_do_and_others_are_named() -> None:
    """Six pairs kept apart and two kept together hold for 31; one student apart from all others cannot, and who it is with is told."""
    apart, together = [[2, 10], [3, 17], [8, 12], [8, 26], [14, 29], [19, 24]], [[5, 21], [12, 30]]
    drawn = small_draw(request_of(asked("x", 31, apart=apart, together=together)))
    assert drawn.broken == ()
    alone = small_draw(request_of(asked("x", 12, apart=[[1, seat] for seat in range(2, 13)])))
    mates = next(team for group in alone.groups.values() for team in group.teams.values() if 1 in team)
    assert alone.broken == tuple((1, seat) for seat in sorted(mates) if seat != 1)


def test_history_is_kept_away_from() -> None:
    """In four units of 36 students nobody meets a teammate again."""
    history: list[dict[str, Any]] = []
    for unit in range(4):
        drawn = small_draw(request_of(asked(f"unit {unit}", 36, history=list(history))))
        assert drawn.repeats == 0
        history.append(as_history(drawn))
