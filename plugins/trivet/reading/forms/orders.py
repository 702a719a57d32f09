"""What a teacher asks of the order of stations: `B teacher-led first`, `C hands-on last`, `online before hands-on`."""

from __future__ import annotations

import re

from trivet.model.station import Kind
from trivet.model.wish import Wish
from trivet.reading.forms.unreadable import Unreadable, instead, said
from trivet.reading.near import nearest

STATIONS = {"online": Kind.ONLINE, "hands-on": Kind.HANDS_ON, "teacher-led": Kind.TEACHER_LED}
_STATION = "online|hands-on|teacher-led"
_GROUP = r"(?:group\s+)?([ABC])\s+"
ORDER_PATTERN = rf"^(?:{_GROUP}({_STATION})\s+(first|last)|(?:{_GROUP})?({_STATION})\s+before\s+(?!\5$)({_STATION}))$"

_LOOSE_STATION = re.compile(r"on-?line|hands?[- ]?on|teacher(?:[- ]?led)?|computers?|sim(?:ulation)?", re.IGNORECASE)
_EXAMPLE = "B teacher-led first"


def order(value: object) -> Wish | Unreadable:
    """Read a wish. One with `before` may name a group, or is asked for as many groups as can have it."""
    text = said(value)
    found = re.fullmatch(ORDER_PATTERN[1:-1], text)
    if found is None:
        return _slip(text)
    letter, kind, place, letter_before, earlier, later = found.groups()
    if place is not None:
        return Wish(STATIONS[kind], letter, last=place == "last")
    return Wish(STATIONS[earlier], letter_before or "", STATIONS[later])


def write_order(wish: Wish) -> str:
    """Return a wish as the one line that reads as it."""
    names = {kind: name for name, kind in STATIONS.items()}
    place = f"before {names[wish.before]}" if wish.before is not None else "last" if wish.last else "first"
    return " ".join(part for part in (wish.letter, names[wish.kind], place) if part)


def _slip(text: str) -> Unreadable:
    """Answer with what was probably meant: the stations, the group and the place that are named, in their order."""
    kinds = [_named(each) for each in _LOOSE_STATION.findall(text)]
    letter = re.search(r"\b([ABC])\b", text) or re.search(r"\bgroup ([abc])\b", text)
    group = f"{letter[1].upper()} " if letter else ""
    what = f"this order of stations can't be read: {text}" if text else "the order of stations is missing"
    if len(kinds) > 1 and kinds[0] != kinds[1]:
        earlier, later = kinds[1::-1] if re.search(r"\bafter\b", text, re.IGNORECASE) else kinds[:2]
        return instead(what, f"{group}{earlier} before {later}")
    if len(kinds) > 1:
        other = next(name for name in STATIONS if name != kinds[0])
        return instead(f"one station can't come before itself: {text}", f"{group}{kinds[0]} before {other}")
    if kinds:
        place = "last" if re.search(r"\b(?:last|end)", text, re.IGNORECASE) else "first"
        return instead(what, f"{group or 'B '}{kinds[0]} {place}")
    return instead(what, _EXAMPLE)


def _named(text: str) -> str:
    if text.lower().startswith(("computer", "sim")):
        return "online"
    return nearest(text, STATIONS, cutoff=0.4) or "teacher-led"
