"""The cases of the small draw that a phone shares: what is asked, as plain data, and what must come out."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from trivet.planning.grouping.ledger import Ledger, meetings
from trivet.planning.grouping.small import Dice32, SmallDraw, SmallRequest, small_draw

FILE = Path(__file__).resolve().parent.parent / "shared" / "draws.json"
ABOUT = "Cases of the small draw: DEVELOPERS.md says how it goes. Written by TRIVET_REFRESH=1 pytest tests/planning/grouping/test_small.py"
Plain = dict[str, Any]


def request_of(asked: Plain) -> SmallRequest:
    """Return the request that a case asks for."""
    return SmallRequest(
        seats=tuple(asked["seats"]),
        seed=asked["seed"],
        how=asked["how"],
        team_size=asked["team_size"],
        levels={int(seat): level for seat, level in asked["levels"].items()},
        tables={int(seat): table for seat, table in asked["tables"].items()},
        apart=tuple((low, high) for low, high in asked["apart"]),
        together=tuple((low, high) for low, high in asked["together"]),
        ledger=ledger_of_history(asked["history"]),
    )


def ledger_of_history(history: list[Plain]) -> Ledger:
    """Return what earlier units count for: teammates, partners and cards held."""
    teams: dict[tuple[int, int], int] = {}
    pairs: dict[tuple[int, int], int] = {}
    duties: dict[tuple[int, str], int] = {}
    for unit in history:
        for two in meetings(unit["teams"]):
            teams[two] = teams.get(two, 0) + 1
        for two in meetings(unit["pairs"]):
            pairs[two] = pairs.get(two, 0) + 1
        for seat, role in unit["duties"]:
            duties[seat, role] = duties.get((seat, role), 0) + 1
    return Ledger(teams, pairs, duties)


def outcome(drawn: SmallDraw) -> Plain:
    """Return a draw as plain data."""
    groups = {
        letter: {
            "teams": {code: {str(seat): list(card) for seat, card in team.items()} for code, team in group.teams.items()},
            "pairs": [list(pair) for pair in group.pairs],
        }
        for letter, group in drawn.groups.items()
    }
    return {"groups": groups, "repeats": drawn.repeats, "broken": [list(two) for two in drawn.broken]}


def as_history(drawn: SmallDraw) -> Plain:
    """Return a draw as one unit of the history of a later one."""
    teams = [team for group in drawn.groups.values() for team in group.teams.values()]
    counted = ("leader", "recorder", "materials")
    return {
        "teams": [sorted(team) for team in teams],
        "pairs": [list(pair) for group in drawn.groups.values() for pair in group.pairs],
        "duties": [
            [seat, role]
            for team in teams
            for seat, card in sorted(team.items())
            for place, role in enumerate(card)
            if role in counted or place == 0
        ],
    }


def asked(name: str, students: int, **changes: Any) -> Plain:
    """Return what a case asks, with everything that is not changed."""
    plain: Plain = {"seats": list(range(1, students + 1)), "seed": name, "how": "mixed", "team_size": 4, "levels": {}, "tables": {}}
    return {**plain, "apart": [], "together": [], "history": [], **changes}


def levels(students: int, most: int, seed: str) -> dict[str, int]:
    """Return drawn levels: 1 to 4, or 0 to 100."""
    dice = Dice32(f"levels {seed}")
    return {str(seat): 1 + dice.below(most) if most == 4 else dice.below(most + 1) for seat in range(1, students + 1)}


def asks() -> Iterator[tuple[str, Plain]]:
    """Yield the name of each case and what it asks."""
    for students in range(1, 41):
        yield f"{students} students", asked(f"{students} students", students)
    for students in (12, 24, 31, 36):
        for most in (4, 100):
            name = f"mixed, {students} students, levels to {most}"
            yield name, asked(name, students, levels=levels(students, most, name))
            name = f"leveled, {students} students, levels to {most}"
            yield name, asked(name, students, how="leveled", levels=levels(students, most, name))
    some = {seat: level for seat, level in levels(31, 4, "some").items() if int(seat) % 5}
    yield "mixed, some without a level", asked("mixed, some without a level", 31, levels=some)
    yield "leveled, some without a level", asked("leveled, some without a level", 31, how="leveled", levels=some)
    for students, size in ((9, 3), (24, 4), (31, 4), (33, 5)):
        name = f"usual, {students} students, tables of {size}"
        tables = {str(seat): f"t{seat * 11 % -(-students // size)}" for seat in range(1, students + 1)}
        yield name, asked(name, students, how="usual", tables=tables)
    without = {str(seat): "window" if seat < 5 else "door" for seat in range(1, 11)}
    yield "usual, two without a table", asked("usual, two without a table", 12, how="usual", tables=without)
    yield "usual, nobody has a table", asked("usual, nobody has a table", 3, how="usual")
    yield "usual, one long table", asked("usual, one long table", 17, how="usual", tables={str(seat): "t" for seat in range(1, 18)})
    yield "away today", asked("away today", 31, seats=[seat for seat in range(1, 32) if seat not in (1, 7, 20)])
    yield "teams of three", asked("teams of three", 31, team_size=3)
    yield "teams of five", asked("teams of five", 31, team_size=5)
    yield from _rules()
    yield from _years()


def _rules() -> Iterator[tuple[str, Plain]]:
    apart = [[2, 10], [3, 17], [8, 12], [8, 26], [14, 29], [19, 24]]
    yield "six not in one team", asked("six not in one team", 31, apart=apart)
    yield "two same team", asked("two same team", 31, together=[[5, 21], [12, 30]])
    yield "both rules", asked("both rules", 31, apart=apart, together=[[5, 21], [12, 30]], levels=levels(31, 4, "both rules"))
    yield "a whole team", asked("a whole team", 24, together=[[1, 9], [9, 17], [17, 24]])
    yield "one more than a team", asked("one more than a team", 12, together=[[1, 2], [2, 3], [3, 4], [4, 5]])
    yield "one apart from everyone", asked("one apart from everyone", 12, apart=[[1, seat] for seat in range(2, 13)])
    yield "together and apart", asked("together and apart", 9, together=[[1, 2]], apart=[[1, 2]])
    yield "a rule with someone away", asked("a rule with someone away", 12, seats=[1, *range(3, 13)], apart=[[1, 5]], together=[[4, 6]])


def _years() -> Iterator[tuple[str, Plain]]:
    """Units one after another, each with the ones before as history."""
    for students in (12, 24, 31, 36):
        history: list[Plain] = []
        for unit in range(1, 6):
            name = f"{students} students, unit {unit} of a year"
            one = asked(name, students, history=list(history), levels=levels(students, 4, "year") if students == 31 else {})
            if unit in (3, 5):
                yield name, one
            history.append(as_history(small_draw(request_of(one))))


def cases() -> list[Plain]:
    """Return all cases, worked out."""
    return [{"name": name, "input": one, "expected": outcome(small_draw(request_of(one)))} for name, one in asks()]


def text(made: list[Plain]) -> str:
    """Return the file: a line a case, so that a change shows which."""
    lines = ",\n".join(json.dumps(case, separators=(",", ":")) for case in made)
    return f'{{"about": {json.dumps(ABOUT)},\n"cases": [\n{lines}\n]}}\n'
