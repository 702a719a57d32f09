"""One line of materials: `1 balance 0.1 g per 2 teams`, `60 mL water per team, used up`."""

from __future__ import annotations

import re
from decimal import Decimal

from trivet.model.station import Material, Per
from trivet.reading.forms.material_slips import EXAMPLE, nearest
from trivet.reading.forms.measures import QUANTITY, SYMBOL, UNITS
from trivet.reading.forms.unreadable import Unreadable, instead, plain, said

_COUNT = r"[1-9][0-9]{0,3}"
_ITEM = r"[^\s,](?:.*[^\s,])?"
_WHO = r"team|pair|student|station|class|(?:[2-9]|[1-9][0-9]) teams"
_SPARE = r"\s*,\s*spare\s+"
_MEASURES = "|".join(sorted(other for other in SYMBOL if len(other) < 4 or other.endswith("s")))

MATERIAL_PATTERN = (
    rf"^(?:({_COUNT})\s+(?!(?:{_MEASURES}|[x×])\s)({_ITEM})\s+per\s+({_WHO})(\s*,\s*used\s+up)?(?:{_SPARE}([0-9]{{1,4}}))?"
    rf"|({QUANTITY})\s+({'|'.join(UNITS)})\s+({_ITEM})\s+per\s+({_WHO})\s*,\s*used\s+up(?:{_SPARE}([0-9]{{1,5}}(?:\.[0-9]{{1,3}})?))?)$"
)
_MATERIAL = re.compile(MATERIAL_PATTERN[1:-1])


def material(value: object) -> Material | Unreadable:
    """Read one line of materials. The item ends at the last ` per `; an amount with a unit of measure is always used up."""
    text = said(value)
    found = _MATERIAL.fullmatch(text)
    if found:
        count, counted, per, used_up, spare, quantity, unit, item, per_amount, spare_amount = found.groups()
        who, many = _who(per or per_amount)
        more = spare if spare is not None else spare_amount
        return Material(
            quantity=Decimal(count or quantity),
            item=(counted or item).removeprefix("of ") if unit else counted,
            per=who,
            per_count=many,
            unit=unit or "",
            used_up=bool(used_up) or unit is not None,
            spare=Decimal(more) if more is not None else None,
        )
    if not isinstance(value, str) or not text:
        return Unreadable("this is no line of materials", f"write it as one text: - {EXAMPLE}")
    what, likely = nearest(text)
    corrected = write_material(likely) if likely else ""
    if likely is None or _MATERIAL.fullmatch(corrected) is None:
        return Unreadable(what, f"write it like - {EXAMPLE}")
    return instead(what, corrected, item=True)


def write_material(each: Material) -> str:
    """Write a line of materials as `material` reads it."""
    amount = f"{plain(each.quantity)} {each.unit}".strip()
    who = each.per.value if each.per_count == 1 else f"{each.per_count} {each.per.value}s"
    used_up = ", used up" if each.used_up else ""
    spare = f", spare {plain(each.spare)}" if each.spare is not None else ""
    return f"{amount} {each.item} per {who}{used_up}{spare}"


def _who(text: str) -> tuple[Per, int]:
    many, _, team = text.rpartition(" ")
    return (Per.TEAM, int(many)) if many else (Per(team), 1)
