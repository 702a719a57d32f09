"""The search: its running cost is the true cost, and it finds what can be found."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.planning.grouping.classes import rule_sets
from trivet.planning.grouping.board import board, cost_of, spread_of
from trivet.planning.grouping.dice import Dice
from trivet.planning.grouping.exchange import State
from trivet.planning.grouping.rules import tables_of
from trivet.planning.grouping.search import search
from trivet.planning.team_sizes import class_shape


@settings(max_examples=40, deadline=None)
@given(st.data())
def test_the_running_cost_is_the_cost(data: st.DataObject) -> None:
    """After any number of exchanges the cost kept in hand equals the cost counted from scratch."""
    students = data.draw(st.integers(2, 20))
    seats = tuple(range(1, students + 1))
    tables = tables_of(class_shape(students))
    met = data.draw(st.dictionaries(st.tuples(st.integers(1, 10), st.integers(11, 20)), st.integers(1, 3)))
    levels = data.draw(st.dictionaries(st.integers(1, students), st.integers(1, 4)))
    costs = board(
        seats, tables, met=met, rules=data.draw(rule_sets(students)), spread=spread_of(seats, levels, tables, 25), blocks=((1, 2),)
    )
    slots = [team for team, size in enumerate(tables.sizes) for _ in range(size)]
    state = State(costs, slots)
    dice = Dice("exchanges")
    for step in range(6):
        exchange = state.best_exchange(step, state.cost, dice, wide=step % 2 == 0)
        if exchange is None:
            break
        state.make(exchange, step + 3)
        assert state.cost == cost_of(costs, state.team)


def test_twelve_students_second_unit() -> None:
    """After one unit of three teams of four, a second has at least 3 repeats and 3 is found (pigeonhole; by trying all 5,775 splits)."""
    tables = tables_of(((4,), (4,), (4,)))
    met = {(a, b): 1 for first in (1, 5, 9) for a in range(first, first + 4) for b in range(a + 1, first + 4)}
    costs = board(tuple(range(1, 13)), tables, met=met)
    dice = Dice("twelve")
    assert search(costs, dice.shuffled([0, 1, 2] * 4), dice, 200).cost == 3


def test_dice_are_fair_and_the_same_everywhere() -> None:
    """The same text gives the same throws; throws stay in range and reach both ends."""
    throws = [Dice("a text").below(6) for _ in range(3)]
    assert throws == [throws[0]] * 3
    many = Dice("another")
    seen = {many.below(6) for _ in range(200)}
    assert seen == set(range(6))
    assert sorted(many.shuffled(range(40))) == list(range(40))
