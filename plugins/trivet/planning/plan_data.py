"""A plan as plain data, in the order of keys that `plan: 1` publishes (schema/plan.schema.json)."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from trivet.model.lock import Groups
from trivet.model.plan import Block, Day, MaterialTotal, Plan, PreCheck, Quality, Round, SpotCheck

VERSION = 1


def plan_json(plan: Plan) -> dict[str, Any]:
    """Return a plan as data for JSON: dates and clock times as text, minutes as whole or half numbers."""
    return {
        "plan": VERSION,
        "unit": plan.unit,
        "class": plan.class_id,
        "way": plan.way,
        "engine": plan.engine,
        "drawn_on": plan.drawn_on.isoformat() if plan.drawn_on else None,
        "pre_check": _pre_check(plan.pre_check),
        "days": [_day(day) for day in plan.days],
        "rounds": [_round(each) for each in plan.rounds],
        "groups": _groups(plan.groups),
        "quality": _quality(plan.quality),
        "spot_checks": [_spot_check(check) for check in plan.spot_checks],
        "materials": [_material(total) for total in plan.materials],
        "cautions": [{"hazard": each.hazard, "text": each.text, "protect": list(each.protect)} for each in plan.cautions],
        "notes": [{"code": note.code, "text": note.text} for note in plan.notes],
    }


def number(value: float | Decimal) -> int | float:
    """Return a number for JSON: without a point where it is whole."""
    return int(value) if value == int(value) else float(value)


def _pre_check(taken: PreCheck | None) -> dict[str, Any] | None:
    if taken is None:
        return None
    return {"date": taken.date.isoformat(), "start": f"{taken.start:%H:%M}", "minutes": number(taken.minutes)}


def _day(day: Day) -> dict[str, Any]:
    return {
        "date": day.date.isoformat(),
        "day_type": day.day_type,
        "start": f"{day.start:%H:%M}",
        "end": f"{day.end:%H:%M}",
        "minutes": day.minutes,
        "surplus_minutes": number(day.surplus_minutes),
        "blocks": [_block(block) for block in day.blocks],
    }


def _block(block: Block) -> dict[str, Any]:
    found: dict[str, Any] = {"kind": block.kind}
    if block.round is not None:
        found["round"] = block.round
    return {**found, "at": number(block.at), "start": f"{block.start:%H:%M}", "minutes": number(block.minutes)}


def _round(each: Round) -> dict[str, Any]:
    found: dict[str, Any] = {
        "round": each.round,
        "date": each.date.isoformat(),
        "minutes": each.minutes,
        "stations": None if each.stations is None else {letter: str(kind) for letter, kind in each.stations.items()},
    }
    return {**found, "half": True} if each.half else found


def _groups(groups: Groups | None) -> dict[str, Any] | None:
    if groups is None:
        return None
    return {
        letter: {
            "teams": {code: {seat: list(roles) for seat, roles in team.items()} for code, team in group.teams.items()},
            "pairs": [list(pair) for pair in group.pairs],
        }
        for letter, group in groups.items()
    }


def _quality(quality: Quality | None) -> dict[str, Any] | None:
    if quality is None:
        return None
    return {
        "repeats": quality.repeats,
        "pair_repeats": quality.pair_repeats,
        "proved_minimum": quality.proved_minimum,
        "role_spread": quality.role_spread,
    }


def _spot_check(check: SpotCheck) -> dict[str, Any]:
    return {
        "round": check.round,
        "team": check.team,
        "seat": check.seat,
        "kind": check.kind,
        "ask": check.ask,
        "listen_for": check.listen_for,
    }


def _material(total: MaterialTotal) -> dict[str, Any]:
    return {
        "item": total.item,
        "need": number(total.need),
        "unit": total.unit,
        "use": total.use,
        "have": None if total.have is None else number(total.have),
        "short": number(total.short),
    }
