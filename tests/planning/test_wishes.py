"""Wishes on the order of stations: as many met as can be, and the others with what they are given up for."""

from __future__ import annotations

import random
from dataclasses import replace
from itertools import combinations, permutations, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.support.department import STARTS, tiny_class, tiny_department
from tests.support.lock import tiny_lock
from trivet.model.plan import Plan
from trivet.model.school import Run
from trivet.model.station import Kind
from trivet.model.wish import Wish
from trivet.planning.department import plan_department
from trivet.planning.where import StationHistory, choose
from trivet.planning.wishes import asked, met, most_met, refusals, why

ONLINE, HANDS_ON, TEACHER_LED = Kind
STUDENTS = {"A": ("a", "d"), "B": ("b", "e"), "C": ("c", "f")}
ORDERS = [
    dict(zip("ABC", rows, strict=True))
    for rows in product(permutations(Kind), repeat=3)
    if all(len({row[number] for row in rows}) == 3 for number in range(3))
]
"""The orders of three groups over three rounds in which no two are at one station: found here by trying all 216."""

WISHES = st.one_of(
    st.builds(Wish, st.sampled_from(Kind), st.sampled_from("ABC"), st.none(), st.booleans()),
    st.permutations(list(Kind)).flatmap(lambda kinds: st.builds(Wish, st.just(kinds[0]), st.sampled_from(("", *"ABC")), st.just(kinds[1]))),
)


def count(wishes: list[Wish], order: dict[str, tuple[Kind, ...]]) -> int:
    """How much of what is asked an order gives, counted letter by letter."""
    wanted = {(letter, wish.kind, wish.before, wish.last) for wish in wishes for letter in (wish.letter or "ABC")}
    given = 0
    for letter, kind, before, last in wanted:
        stations = order[letter]
        given += stations[-1 if last else 0] is kind if before is None else stations.index(kind) < stations.index(before)
    return given


@settings(max_examples=150, deadline=None)
@given(wishes=st.lists(WISHES, max_size=6), seed=st.integers(0, 99))
def test_as_many_wishes_as_can_be(wishes: list[Wish], seed: int) -> None:
    """Whatever is asked, and whoever began where before, what is met is the most that any of the 12 Latin squares meets, all tried."""
    assert len(ORDERS) == 12
    history, chance = StationHistory(), random.Random(seed)
    for _ in range(seed % 4):
        history.add(STUDENTS, {letter: tuple(chance.sample(list(Kind), 3)) for letter in "ABC"})  # type: ignore[misc]
    square = choose(STUDENTS, history, asked(wishes))
    best = max(count(wishes, order) for order in ORDERS)
    assert len(met(asked(wishes), square)) == count(wishes, dict(square)) == best == most_met(wishes)
    assert dict(square) in ORDERS


@settings(max_examples=100, deadline=None)
@given(wishes=st.lists(WISHES, min_size=1, max_size=6))
def test_a_refusal_has_its_reason(wishes: list[Wish]) -> None:
    """A wish that is not met can't be had with the met ones that are named, and could be had without any one of them."""
    square = choose(STUDENTS, StationHistory(), asked(wishes))
    for refusal in refusals(wishes, square):
        here = [replace(refusal.wish, letter=refusal.letter), *(replace(wish, letter=letter) for letter, wish in refusal.because)]
        assert all(count(here, order) < len(here) for order in ORDERS)
        assert refusal.because
        for fewer in combinations(here[1:], len(here) - 2):
            assert any(count([here[0], *fewer], order) == len(fewer) + 1 for order in ORDERS)


@pytest.mark.parametrize(
    ("wish", "orders"),
    [
        (Wish(TEACHER_LED, "B"), 4),
        (Wish(TEACHER_LED, "B", last=True), 4),
        (Wish(ONLINE, "A", HANDS_ON), 6),
    ],
    ids=["first", "last", "before"],
)
def test_how_many_orders_meet_one_wish(wish: Wish, orders: int) -> None:
    """A given group meets the teacher first, or last, in 4 of the 12 squares, and one precedence holds in half (grouping findings, 6)."""
    assert sum(count([wish], order) for order in ORDERS) == orders
    assert most_met([wish]) == 1


def test_online_before_hands_on_is_met_for_two() -> None:
    """Somebody is at hands-on in round 1, so that at most two of three groups can be online before it, in 6 squares."""
    wishes = [Wish(ONLINE, before=HANDS_ON)]
    assert most_met(wishes) == 2
    assert sum(count(wishes, order) == 2 for order in ORDERS) == 6
    (refusal,) = refusals(wishes, choose(STUDENTS, StationHistory(), asked(wishes)))
    assert why(refusal) == (
        "Group B can't be at the online station before the hands-on one: groups A and C are, "
        "and no order of the stations gives all of that."
    )


def test_a_chain_is_met_for_one() -> None:
    """Online before hands-on before teacher-led is one group's order at most (grouping findings, 6: 1 of 3)."""
    chain = [Wish(ONLINE, before=HANDS_ON), Wish(HANDS_ON, before=TEACHER_LED)]
    assert max(sum(count([replace(wish, letter=each) for wish in chain], order) == 2 for each in "ABC") for order in ORDERS) == 1


def planned(*order: Wish, way: str = "rotate", drawn: bool = True) -> Plan:
    run = Run(class_id="p1", unit="float-or-sink", starts=STARTS, way=way, order=order)
    plans = plan_department(tiny_department(runs=(run,), locks=[tiny_lock(tiny_class())] if drawn else []))
    return plans.plans[0]


def test_a_run_s_wishes_are_met() -> None:
    """A run that asks for it has group C at the teacher's station first, and says how many of its wishes are met."""
    plan = planned(Wish(TEACHER_LED, "C"), Wish(HANDS_ON, "A"))
    assert plan.rounds[0].stations == {"A": HANDS_ON, "B": ONLINE, "C": TEACHER_LED}
    assert [note.text for note in plan.notes if note.code == "order_asked"] == ["2 of 2 wishes on the order are met."]
    assert not [note for note in plan.notes if note.code == "order_wish"]


def test_the_sheet_says_which_wish_is_not_met() -> None:
    """Two groups can't both be at the teacher's first: the plan says which is not, and since when."""
    plan = planned(Wish(TEACHER_LED, "A"), Wish(TEACHER_LED, "B"))
    said, refused = [note.text for note in plan.notes if note.code in ("order_asked", "order_wish")]
    assert said == "1 of 2 wishes on the order are met, the most that any order gives."
    assert refused == ("Group A can't be at the teacher-led station first: group B is, and no order of the stations gives both.")


def test_wishes_leave_no_trace_where_groups_are_not_public() -> None:
    """A run whose groups are not drawn, or stand in the private folder, has the same plan with wishes and without."""
    assert planned(Wish(TEACHER_LED, "C"), drawn=False) == planned(drawn=False)
    assert planned(Wish(TEACHER_LED, "C"), way="whole_class") == planned(way="whole_class")


def test_wishes_in_each_other_s_way_are_advice() -> None:
    """A run whose wishes can't be met together is told so; one that only can't have a thing for all three groups is not."""

    def told(*order: Wish) -> list[str]:
        run = Run(class_id="p1", unit="float-or-sink", starts=STARTS, order=order)
        return [problem.what for problem in plan_department(tiny_department(runs=(run,))).problems if problem.code == "order-not-met"]

    assert told(Wish(TEACHER_LED, "A"), Wish(TEACHER_LED, "B")) == [
        "the wishes under `order` stand in each other's way: of 2 that could be met one by one, 1 can be together"
    ]
    assert told(Wish(TEACHER_LED, "A"), Wish(ONLINE, before=HANDS_ON)) == told() == []


def test_starts_stay_even_over_a_year() -> None:
    """Over nine units with groups drawn anew, starts are more even than in each of 200 years of orders taken at random."""
    chance = random.Random(3)
    students = [f"p1-{number:02d}" for number in range(1, 32)]
    units = []
    for _ in range(9):
        chance.shuffle(students)
        units.append({letter: tuple(students[place::3]) for place, letter in enumerate("ABC")})

    def unevenness(history: StationHistory) -> int:
        return sum(count**2 for count in history.starts.values())

    chosen = StationHistory()
    for groups in units:
        chosen.add(groups, choose(groups, chosen))
    for _ in range(200):
        at_random = StationHistory()
        for groups in units:
            at_random.add(groups, chance.choice(ORDERS))  # type: ignore[arg-type]
        assert unevenness(chosen) < unevenness(at_random)
