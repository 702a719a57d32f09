"""Plain words for what a draw reached and what limited it."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

from tests.planning.grouping.classes import NOT_TEAM, SAME_TEAM, asked, drawn, rule
from trivet.planning.grouping.for_class import Unseated
from trivet.planning.grouping.ledger import Ledger
from trivet.planning.grouping.request import Conflict, Limit
from trivet.planning.grouping.sentences import conflict, limit, quality, together_again, unseated, written


def name(seat: int) -> str:
    return f"p1-{seat:02d}"


def test_quality() -> None:
    """One sentence says how many repeats there are, and whether fewer are possible only where that is proved."""
    one = drawn(asked(12))
    assert quality(one, []) == "No earlier unit of this school year counts yet, so everyone's teammates are new."
    assert quality(one, ["x"]) == "All teammates are new: no two of a team have been in one team before."
    assert "fewer" not in quality(replace(one, repeats=3, own_repeats=3), ["x"])
    own = replace(one, repeats=3, own_repeats=3, own_minimum=3)
    assert quality(own, ["x"]).endswith("; under your rules and levels fewer is not possible.")
    assert quality(replace(one, repeats=3, proved_minimum=3), ["x"]) == "3 pairs have worked together before; fewer is not possible."
    often = quality(replace(one, repeats=3, repeated_pairs=1, proved_minimum=3), ["x"])
    assert often == "One pair has worked together before, 3 times in all; fewer is not possible."
    assert quality(replace(one, repeats=4, proved_minimum=3), ["x"]).endswith("no arrangement has fewer than 3.")
    assert quality(replace(one, pair_repeats=1), ["x"]).endswith("; online, one pair has shared a device before.")


def test_who_is_together_again() -> None:
    """Teammates of earlier units are named, most often first, with the rule that keeps them together; many are cut short."""
    pair = rule(SAME_TEAM, 1, 2)
    request = asked(4, rules=(pair,), ledger=Ledger(teams={(1, 2): 3, (2, 4): 1, (3, 9): 5}), whole_class=True)
    said = together_again(drawn(request), request, name)
    assert said == ["Together before: p1-01 and p1-02, 3 times, by your rule; p1-02 and p1-04."]
    assert together_again(drawn(asked(4)), asked(4), name) == []
    everyone = asked(5, ledger=Ledger(teams=dict.fromkeys(combinations(range(1, 6), 2), 1)), team_size=5, whole_class=True)
    [many] = together_again(drawn(everyone), everyone, name)
    assert many.endswith("; and 4 more pairs.")


def test_conflicts() -> None:
    """A conflict says how many rules, names them in the teacher's words, and what to do; it never claims more than was proved."""
    two = (rule(NOT_TEAM, 1, 2), rule(NOT_TEAM, 1, 3))
    whole = Conflict(rules=two, students=3, shape=((1,), (1,), (1,)))
    said = conflict(whole, name)
    assert said[0] == "these 2 rules can't all hold in a class of 3 with teams of 1"
    assert said[1] == "  not in one team: p1-01 and p1-02"
    assert said[-1] == "leave out any one of them in the private list and the others can hold"
    assert conflict(replace(whole, rules=two[:1]), name)[0].startswith("this rule can't hold")
    assert "there may be some" in conflict(replace(whole, minimal=False), name)[0]


def test_limits() -> None:
    """What limited a draw is said with numbers of teams or students, never a level."""
    assert "one team lies outside the tolerance" in limit(Limit("levels", count=1), name)
    assert "2 teams lie" in limit(Limit("levels", count=2), name)
    assert "differ by 3 students" in limit(Limit("sizes", count=3), name)
    assert "The 4 students who need something could not be spread" in limit(Limit("support", count=4), name)
    assert limit(Limit("partners", seats=(1, 2)), name).startswith("p1-01 and p1-02 may not share a team")


def test_tables() -> None:
    """A missing table and a table of the wrong size are answered with what to write."""
    assert unseated(Unseated("no_table", (4, 7)), name)[0].startswith("no table for p1-04, p1-07")
    assert "tables of 2 to 6" in unseated(Unseated("table_size", (4,)), name)[1]


def test_written_lists() -> None:
    """Groups are written as lists: each team in a line with its cards, then the partners; an empty group says nobody."""
    lines = written(drawn(asked(2)).groups)
    assert lines[0] == "Station group A (1 student)"
    assert lines[1].startswith("  A1  p1-01 (leader")
    assert lines[2] == "  online  p1-01 alone"
    assert lines[-1] == "Station group C: nobody"
