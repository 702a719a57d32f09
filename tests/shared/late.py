"""The shared cases of running late: what is asked stands in late.json with its answer, for Python and for the script of the clock.

After a change that is meant: `python -m tests.shared.late --write`, then read the difference.
"""

from __future__ import annotations

import json
import random
import sys
from collections.abc import Iterator
from datetime import date, time
from pathlib import Path
from typing import Any

from trivet.model.plan import Day
from trivet.model.school import Defaults
from trivet.planning.costs import DayParts, costs
from trivet.planning.dates import Meeting
from trivet.planning.day import make_day
from trivet.planning.headcount import by_size
from trivet.planning.late import LateDay, LateRules, Part, late

FILE = Path(__file__).with_name("late.json")
COUNT = 300


def said(day: LateDay) -> dict[str, Any]:
    """Return an answer as both languages write it."""
    return {
        "parts": [_part(part) for part in day.parts],
        "surplus": _number(day.surplus),
        "moved": list(day.moved),
        "write_up": _number(day.write_up),
        "half": day.half,
        "half_left": _number(day.half_left),
    }


def answer(case: dict[str, Any]) -> dict[str, Any]:
    """Return what the rule answers to a case."""
    parts = [Part(part["kind"], part["minutes"], part.get("round"), part.get("before", 0)) for part in case["parts"]]
    return said(late(parts, case["done"], case["left"], LateRules(**case.get("rules", {}))))


def load() -> list[dict[str, Any]]:
    """Return the cases of the file."""
    found: list[dict[str, Any]] = json.loads(FILE.read_text(encoding="utf-8"))
    return found


def _part(part: Part) -> dict[str, Any]:
    found = {"kind": part.kind, "minutes": _number(part.minutes)}
    if part.round is not None:
        found["round"] = part.round
    return {**found, "before": _number(part.before)} if part.before else found


def _number(value: float) -> int | float:
    return int(value) if value == int(value) else value


def planned(chance: random.Random) -> Day:
    """A day as plans have them: one to three rounds or a resumed one, the write-up or none, in a period that holds it."""
    rounds = chance.choice((0, 1, 1, 1, 2, 2, 3))
    made = costs(
        Defaults(),
        by_size(chance.randint(4, 40), 4),
        chance.randint(8, 16),
        full_expectations=chance.random() < 0.5,
        at_home=False,
    )
    parts = DayParts(
        rounds,
        first=rounds > 0 and chance.random() < 0.4,
        write_up=chance.choice((24, 40)) if rounds == 0 or chance.random() < 0.25 else 0,
        resumes=2 * chance.randint(3, 14) if rounds and chance.random() < 0.15 else 0,
    )
    for minutes in range(20, 240):
        meeting = Meeting(date(2026, 12, 1), "regular", time(8, 5), time(12, 5), minutes + chance.choice((0, 1, 3, 8, 20)), 0)
        try:
            return make_day(meeting, parts, chance.choice((1, 1, 2)), chance.randint(20, 26), made)
        except ValueError:
            continue
    raise AssertionError("some period holds any day")


def cases() -> Iterator[dict[str, Any]]:
    """Yield cases: the one drawn in the design, then days at any moment, on time, late by little and by much, and early."""
    yield from BY_HAND
    chance = random.Random("late")
    while True:
        day = planned(chance)
        parts = [_part(Part(block.kind, block.minutes, block.round)) for block in day.blocks]
        resumed = next((place for place, part in enumerate(parts) if part["kind"] == "recap"), None)
        if resumed is not None:  # a round that was stopped had some minutes then
            parts[resumed + 1]["before"] = chance.randint(1, 14)
        stations = [place for place, part in enumerate(parts) if part["kind"] == "station"]
        place = chance.choice(stations) if stations and chance.random() < 0.4 else chance.randrange(len(parts))
        parts = parts[place:]
        done = chance.randint(0, int(2 * parts[0]["minutes"])) / 2
        rest = sum(part["minutes"] for part in parts) - done + day.surplus_minutes
        behind = chance.choice((0, 0.5, 2, 4, 8, 12, 20, 35, -3))
        yield {"parts": parts, "done": _number(done), "left": _number(max(0, rest - behind))}


BY_HAND: tuple[dict[str, Any], ...] = (
    {
        "name": "eight minutes late on a day of 80 with two rounds: round 2 moves, 19 are left",
        "parts": [
            {"kind": "settle_in", "minutes": 4}, {"kind": "expectations", "minutes": 1}, {"kind": "places", "minutes": 2},
            {"kind": "launch", "minutes": 7, "round": 1}, {"kind": "station", "minutes": 23, "round": 1},
            {"kind": "clean_up", "minutes": 1, "round": 1}, {"kind": "move", "minutes": 2}, {"kind": "launch", "minutes": 7, "round": 2},
            {"kind": "station", "minutes": 23, "round": 2}, {"kind": "clean_up", "minutes": 1, "round": 2},
            {"kind": "evidence", "minutes": 2}, {"kind": "reflection", "minutes": 6}, {"kind": "pack_up", "minutes": 1},
        ],
        "done": 0,
        "left": 72,
    },
    {
        "name": "a begun round shrinks, and not below the floor of 15",
        "parts": [
            {"kind": "station", "minutes": 23, "round": 1}, {"kind": "clean_up", "minutes": 1, "round": 1},
            {"kind": "evidence", "minutes": 2}, {"kind": "reflection", "minutes": 10}, {"kind": "pack_up", "minutes": 3},
        ],
        "done": 3,
        "left": 19,
    },
    {
        "name": "below the floor it stops, and half of it is left for the next day",
        "parts": [
            {"kind": "station", "minutes": 23, "round": 1}, {"kind": "clean_up", "minutes": 1, "round": 1},
            {"kind": "evidence", "minutes": 2}, {"kind": "reflection", "minutes": 10}, {"kind": "pack_up", "minutes": 3},
        ],
        "done": 3,
        "left": 14,
    },
    {
        "name": "five minutes before the bell there is nothing but reflection, and 18 minutes were a round",
        "parts": [
            {"kind": "station", "minutes": 23, "round": 1}, {"kind": "clean_up", "minutes": 1, "round": 1},
            {"kind": "reflection", "minutes": 5}, {"kind": "pack_up", "minutes": 1},
        ],
        "done": 18,
        "left": 5,
    },
    {
        "name": "a round in its launch that has no room for 15 minutes moves",
        "parts": [
            {"kind": "launch", "minutes": 7, "round": 2}, {"kind": "station", "minutes": 23, "round": 2},
            {"kind": "clean_up", "minutes": 1, "round": 2}, {"kind": "evidence", "minutes": 2}, {"kind": "reflection", "minutes": 5},
            {"kind": "pack_up", "minutes": 1},
        ],
        "done": 4,
        "left": 20,
    },
    {
        "name": "the write-up moves before a round does",
        "parts": [
            {"kind": "places", "minutes": 2}, {"kind": "launch", "minutes": 7, "round": 3}, {"kind": "station", "minutes": 23, "round": 3},
            {"kind": "clean_up", "minutes": 1, "round": 3}, {"kind": "evidence", "minutes": 2}, {"kind": "write_up", "minutes": 12},
            {"kind": "reflection", "minutes": 5}, {"kind": "pack_up", "minutes": 1},
        ],
        "done": 0,
        "left": 45,
    },
    {
        "name": "a write-up that is going on gives what is too much",
        "parts": [
            {"kind": "write_up", "minutes": 12}, {"kind": "reflection", "minutes": 10}, {"kind": "pack_up", "minutes": 3},
        ],
        "done": 4,
        "left": 10,
    },
    {
        "name": "a reflection that is going on keeps its five minutes over all",
        "parts": [{"kind": "reflection", "minutes": 10}, {"kind": "pack_up", "minutes": 3}],
        "done": 2,
        "left": 3.5,
    },
    {
        "name": "half a minute late, and only the round that is going on can give it",
        "parts": [
            {"kind": "station", "minutes": 23, "round": 1}, {"kind": "clean_up", "minutes": 1, "round": 1},
            {"kind": "reflection", "minutes": 5}, {"kind": "pack_up", "minutes": 1},
        ],
        "done": 2,
        "left": 27.5,
    },
    {
        "name": "a pack-up that is going on has had its minute",
        "parts": [{"kind": "pack_up", "minutes": 3}],
        "done": 1.5,
        "left": 0,
    },
    {
        "name": "a pack-up that is going on keeps what is left of its least",
        "parts": [{"kind": "pack_up", "minutes": 2}],
        "done": 0.5,
        "left": 0.5,
    },
    {
        "name": "a pack-up that is nearly over is not drawn out, however much time there is",
        "parts": [{"kind": "pack_up", "minutes": 3}],
        "done": 2.5,
        "left": 2,
    },
    {
        "name": "the rest of a stopped round is stopped again: 12 min were left, and 9 have room",
        "parts": [
            {"kind": "recap", "minutes": 1, "round": 2}, {"kind": "station", "minutes": 12, "round": 2},
            {"kind": "clean_up", "minutes": 1, "round": 2}, {"kind": "reflection", "minutes": 5}, {"kind": "pack_up", "minutes": 1},
        ],
        "done": 0,
        "left": 17,
    },
    {
        "name": "the rest of a stopped round shrinks: 11 min then and 9 now are over the floor of 15",
        "parts": [
            {"kind": "station", "minutes": 12, "round": 2, "before": 11}, {"kind": "clean_up", "minutes": 1, "round": 2},
            {"kind": "reflection", "minutes": 5}, {"kind": "pack_up", "minutes": 1},
        ],
        "done": 2,
        "left": 14,
    },
    {
        "name": "the rest of a stopped round is stopped again: 5 min then and 9 now are below the floor",
        "parts": [
            {"kind": "station", "minutes": 12, "round": 2, "before": 5}, {"kind": "clean_up", "minutes": 1, "round": 2},
            {"kind": "reflection", "minutes": 5}, {"kind": "pack_up", "minutes": 1},
        ],
        "done": 2,
        "left": 14,
    },
    {
        "name": "other rules: a floor of 10, a reflection of at least 6",
        "parts": [
            {"kind": "station", "minutes": 20, "round": 1}, {"kind": "clean_up", "minutes": 1, "round": 1},
            {"kind": "reflection", "minutes": 8}, {"kind": "pack_up", "minutes": 2},
        ],
        "done": 0,
        "left": 18,
        "rules": {"late_floor": 10, "reflection_least": 6, "reflection_most": 8, "pack_up_least": 1, "pack_up_most": 2},
    },
)  # fmt: skip


def main() -> None:
    """Write the file anew."""
    made = [{**case, "answer": answer(case)} for case, _ in zip(cases(), range(COUNT), strict=False)]
    lines = ",\n".join(" " + json.dumps(case, ensure_ascii=False) for case in made)
    FILE.write_text(f"[\n{lines}\n]\n", encoding="utf-8")


if __name__ == "__main__":
    if "--write" not in sys.argv:
        sys.exit("write: python -m tests.shared.late --write")
    main()
