"""Running late: the shared cases, and what must hold for each of them whatever the rule's own code says."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.shared.late import answer, load
from tests.shared.late_by_the_text import by_the_text
from trivet.planning.late import DEFAULT_RULES, LateDay, Part, late

CASES = load()
RULES = {"late_floor": 15, "reflection_least": 5, "reflection_most": 10, "pack_up_least": 1, "pack_up_most": 3}
OPENING = ("settle_in", "expectations", "places", "launch", "recap")


def test_there_are_enough_cases() -> None:
    """The file holds at least 200 cases, and in them rounds move, shrink and stop, and write-ups move."""
    assert len(CASES) >= 200
    for key in ("moved", "write_up", "half", "surplus"):
        assert sum(bool(case["answer"][key]) for case in CASES) >= 15, key


@pytest.mark.parametrize("block", range(10))
def test_the_shared_cases(block: int) -> None:
    """Each case has the answer that stands beside it."""
    for case in CASES[block::10]:
        assert answer(case) == case["answer"], case


@pytest.mark.parametrize("block", range(10))
def test_the_rule_written_a_second_time(block: int) -> None:
    """Each answer of the file is what the design's sentences say, worked out half minute by half minute without the rule's own code."""
    for case in CASES[block::10]:
        assert by_the_text(case["parts"], case["done"], case["left"], case.get("rules")) == case["answer"], case


HALVES = st.integers(0, 60).map(lambda count: count / 2)


@settings(max_examples=200, deadline=None)
@given(
    case=st.sampled_from(CASES),
    left=HALVES,
    done=st.floats(0, 1),
    rules=st.fixed_dictionaries({}, optional={name: st.integers(0, 30).map(lambda count: count / 2) for name in RULES}),
)
def test_both_ways_to_write_the_rule_agree(case: dict[str, Any], left: float, done: float, rules: dict[str, float]) -> None:
    """At any moment of a day, with any time left and whatever numbers a department sets, the two agree."""
    sound = {**RULES, **rules}
    if sound["reflection_least"] > sound["reflection_most"] or sound["pack_up_least"] > sound["pack_up_most"]:
        return
    asked = {"parts": case["parts"], "done": int(done * 2 * case["parts"][0]["minutes"]) / 2, "left": left, "rules": rules}
    assert answer(asked) == by_the_text(asked["parts"], asked["done"], left, rules)


def of(parts: list[dict[str, Any]], kind: str) -> float:
    return float(sum(part["minutes"] for part in parts if part["kind"] == kind))


def least(parts: list[dict[str, Any]], done: float, rules: dict[str, float]) -> float:
    """The minutes that a rest of a day asks for, worked out from the design's text: everything but the line and what was dealt."""
    total = 0.0
    for place, part in enumerate(parts):
        behind = done if place == 0 else 0
        whole = {"reflection": rules["reflection_least"], "pack_up": rules["pack_up_least"], "evidence": 0}.get(
            part["kind"], part["minutes"]
        )
        total += max(0, whole - behind)
    return total


@pytest.mark.parametrize("block", range(10))
def test_what_holds_for_each_answer(block: int) -> None:
    """The answer fills the time to the bell; reflection has its least; no more is moved than must be; a round that is short was begun."""
    for case in CASES[block::10]:
        rules = {**RULES, **case.get("rules", {})}
        parts, found = case["parts"], case["answer"]
        assert sum(part["minutes"] for part in found["parts"]) + found["surplus"] == case["left"], case
        kinds = [part["kind"] for part in parts]
        behind = case["done"] if kinds[0] == "reflection" else 0
        if "reflection" in kinds:
            assert of(found["parts"], "reflection") + behind >= min(rules["reflection_least"], case["left"] + behind), case
        ahead = iter((part["kind"], part.get("round")) for part in parts)
        assert all((part["kind"], part.get("round")) in ahead for part in found["parts"]), case  # in the order of the day
        if least(parts, case["done"], rules) <= case["left"]:
            assert not found["moved"] and not found["write_up"] and found["half"] is None, case
            for kind in set(kinds) - {"evidence", "reflection", "pack_up"}:
                assert of(found["parts"], kind) == of(parts, kind) - (case["done"] if kinds[0] == kind else 0), case
            continue
        assert found["surplus"] == 0 or found["moved"] or found["write_up"] or found["half"] is not None, case
        assert kinds.count("write_up") == 0 or found["write_up"] > 0 or kinds[0] == "write_up", case
        check_moved(case, rules)
        check_begun(case, rules)


def check_moved(case: dict[str, Any], rules: dict[str, float]) -> None:
    """Rounds move from the last one on, and with one fewer moved the rest would not fit."""
    parts, found = case["parts"], case["answer"]
    begun = parts[0].get("round")
    rounds = [part["round"] for part in parts if part["kind"] == "station"]
    assert found["moved"] == rounds[len(rounds) - len(found["moved"]) :], case
    for number in found["moved"]:
        assert not [part for part in found["parts"] if part.get("round") == number], case
    ahead = [number for number in found["moved"] if number != begun]
    if ahead:
        stays = [part for part in parts if part.get("round") not in ahead[1:] and part["kind"] != "write_up"]
        moves = [place for place, part in enumerate(stays) if part["kind"] == "move"]
        kept = {place for place in moves if place + 1 < len(stays) and stays[place + 1].get("round") is not None}
        stays = [part for place, part in enumerate(stays) if place not in moves or place in kept]
        assert least(stays, case["done"], rules) > case["left"], case


def check_begun(case: dict[str, Any], rules: dict[str, float]) -> None:
    """A station that is shorter than planned was begun; it has the late floor, or is half done with the rest to come."""
    parts, found = case["parts"], case["answer"]
    for part in [part for part in parts if part["kind"] == "station" and part["round"] not in found["moved"]]:
        first = parts[0] is part
        now = next((each["minutes"] for each in found["parts"] if each["kind"] == "station" and each["round"] == part["round"]), 0)
        worked = now + (case["done"] if first else 0)
        before = part.get("before", 0)
        if found["half"] == part["round"]:
            assert first and before + worked < min(rules["late_floor"], before + part["minutes"]), case
            assert found["half_left"] == part["minutes"] - worked, case
        elif worked < part["minutes"]:
            assert part["round"] == parts[0].get("round"), case
            assert before + worked >= min(rules["late_floor"], before + part["minutes"]), case


@settings(max_examples=150, deadline=None)
@given(case=st.sampled_from(CASES), less=st.integers(1, 40))
def test_less_time_never_moves_less(case: dict[str, Any], less: int) -> None:
    """With less time to the bell at least as many rounds move, and as much of the write-up."""
    later = answer({**case, "left": max(0, case["left"] - less / 2)})
    assert set(case["answer"]["moved"]) <= set(later["moved"])
    assert case["answer"]["write_up"] <= later["write_up"]


def test_a_day_that_is_over() -> None:
    """Without a block, or without a minute, nothing is planned and nothing breaks; what can't be is refused."""
    assert late([], 0, 3) == LateDay(parts=(), surplus=3)
    assert late([Part("reflection", 5)], 0, 0).parts == (Part("reflection", 0),)
    with pytest.raises(ValueError, match="never negative"):
        late([Part("reflection", 5)], -1, 3)
    assert DEFAULT_RULES.late_floor == 15
