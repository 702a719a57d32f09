"""The rule of running late a second time, straight from the design's sentences and as plainly as can be: one half minute after the other.

It shares nothing with planning/late.py. What the design says, in its order: reflection keeps five minutes; what was dealt beyond the
least goes first; a write-up that has not begun moves, then rounds not yet begun, the last one first; a begun round shrinks, but not
below its floor: there it stops and is half done, or, where nobody is at the stations yet, moves too. What is free then is dealt: the
written line, reflection, pack-up.
"""

from __future__ import annotations

from typing import Any

NOT_AT_STATIONS = ("settle_in", "expectations", "places", "launch", "recap")
USUAL = {"late_floor": 15, "reflection_least": 5, "reflection_most": 10, "pack_up_least": 1, "pack_up_most": 3}
CUT_LAST = ("pack_up", "clean_up", "move", "places", "expectations", "settle_in", "launch", "recap", "station", "write_up", "reflection")

Part = dict[str, Any]


def by_the_text(  # noqa: PLR0912 - one text to be read from top to bottom, beside the design
    parts: list[Part], done: float, left: float, rules: dict[str, float] | None = None
) -> dict[str, Any]:
    """Return the answer to a case as the shared file writes it."""
    rule = {name: round(2 * minutes) for name, minutes in {**USUAL, **(rules or {})}.items()}
    room = round(2 * left)
    rows = [
        {
            "kind": part["kind"],
            "round": part.get("round"),
            "all": round(2 * part["minutes"]),
            "gone": round(2 * done) if place == 0 else 0,
            "before": round(2 * part.get("before", 0)),
        }
        for place, part in enumerate(parts)
    ]
    for row in rows:
        row["rest"] = max(0, row["all"] - row["gone"])
        row["must"] = {
            "reflection": max(0, rule["reflection_least"] - row["gone"]),
            "pack_up": max(0, rule["pack_up_least"] - row["gone"]),
            "evidence": 0,
        }.get(row["kind"], row["rest"])
    now = rows[0] if rows else None
    moved: list[int] = []
    to_come = 0
    half, half_left = None, 0

    # Everything that may move as a whole, in the order in which it does.
    plans: list[tuple[list[Part], list[int], int]] = [(rows, [], 0)]
    coming = [row for row in rows if row["kind"] == "write_up" and row is not now]
    if coming:
        plans.append(([row for row in rows if row is not coming[0]], [], coming[0]["all"]))
    last = plans[-1]
    for one in [row["round"] for row in rows if row["kind"] == "station" and now and row["round"] != now["round"]][::-1]:
        last = (without(last[0], one, now), [one, *last[1]], last[2])
        plans.append(last)
    kept, moved, to_come = next((plan for plan in plans if sum(row["must"] for row in plan[0]) <= room), plans[-1])

    too_much = sum(row["must"] for row in kept) - room
    if too_much > 0 and now is not None:
        station = next((row for row in kept if row["kind"] == "station"), None)
        if now["kind"] == "write_up":
            to_come = min(too_much, now["rest"])
            now["must"] = now["rest"] = now["rest"] - to_come
        elif now["kind"] in ("launch", "recap", "station", "clean_up") and station is not None:
            stays = max(0, station["rest"] - too_much)
            # A round that was stopped on an earlier day has the minutes of that day too.
            enough = station["before"] + station["gone"] + stays >= min(rule["late_floor"], station["before"] + station["all"])
            if enough or station is now:
                station["must"] = station["rest"] = stays
            if not enough and station is now:
                half, half_left = station["round"], station["all"] - station["gone"] - stays
            elif not enough:
                kept, moved = without(kept, station["round"], now), [station["round"], *moved]

    for kind in CUT_LAST:
        for row in kept[::-1]:
            while row["kind"] == kind and row["must"] > 0 and sum(each["must"] for each in kept) > room:
                row["must"] -= 1

    for row in kept:
        row["gets"] = row["must"]
    for kind, most in (("evidence", 0), ("reflection", rule["reflection_most"]), ("pack_up", rule["pack_up_most"])):
        for row in kept:
            free = room - sum(each["gets"] for each in kept)
            if row["kind"] != kind:
                continue
            if kind == "evidence":
                row["gets"] = row["rest"] if row["rest"] <= free else free if row is now else 0
                continue
            while free > 0 and row["gone"] + row["gets"] < max(most, row["all"]):
                row["gets"] += 1
                free -= 1
    return {
        "parts": [part_of(row) for row in kept if row["gets"] or row is now],
        "surplus": number(room - sum(row["gets"] for row in kept)),
        "moved": moved,
        "write_up": number(to_come),
        "half": half,
        "half_left": number(half_left),
    }


def without(rows: list[Part], round_number: int, now: Part | None) -> list[Part]:
    """The rows without a round, the change of places before it, and, where no round is left or was worked, what only opens one."""
    kept: list[Part] = []
    for place, row in enumerate(rows):
        following = rows[place + 1]["round"] if place + 1 < len(rows) else None
        changes = row["kind"] == "move" and following == round_number
        if row["round"] != round_number and not changes:
            kept.append(row)
    if now is not None and now["kind"] in NOT_AT_STATIONS and not [row for row in kept if row["kind"] == "station"]:
        kept = [row for row in kept if row is now or row["kind"] not in ("expectations", "places", "evidence")]
    return kept


def part_of(row: Part) -> Part:
    found = {"kind": row["kind"], "minutes": number(row["gets"])}
    if row["round"] is not None:
        found["round"] = row["round"]
    return {**found, "before": number(row["before"])} if row["before"] else found


def number(half_minutes: int) -> int | float:
    return half_minutes // 2 if half_minutes % 2 == 0 else half_minutes / 2
