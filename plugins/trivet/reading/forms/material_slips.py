"""What a line of materials probably means that does not fit its form."""

from __future__ import annotations

import re
from decimal import Decimal

from trivet.model.station import Material, Per
from trivet.reading.forms.measures import SYMBOL
from trivet.reading.forms.unreadable import LOOSE_NUMBER, NUMBER_WORDS, as_number, up

EXAMPLE = "1 graduated cylinder 25 mL per team"

_WHO = {
    "team": Per.TEAM, "group": Per.TEAM, "table": Per.TEAM, "squad": Per.TEAM,
    "pair": Per.PAIR, "partner": Per.PAIR, "partners": Per.PAIR,
    "student": Per.STUDENT, "kid": Per.STUDENT, "child": Per.STUDENT, "children": Per.STUDENT, "person": Per.STUDENT,
    "people": Per.STUDENT, "pupil": Per.STUDENT, "learner": Per.STUDENT,
    "station": Per.STATION, "class": Per.CLASS, "classe": Per.CLASS, "classroom": Per.CLASS, "room": Per.CLASS, "period": Per.CLASS,
}  # fmt: skip

_MEASURED = re.compile(
    r"\b(?:bag|balance|ball|balloon|bar|basin|battery|beaker|block|bottle|bowl|box|bucket|bulb|can|clamp|container|cord|cube|cup|cylinder"
    r"|dish|dropper|flask|funnel|jar|jug|magnet|marble|mass|medal|meter|mirror|mug|pan|pipe|pipet|pipette|pitcher|plate|pot|probe|ramp"
    r"|rod|rope|ruler|scale|sheet|spoon|spring|stick|stopper|stopwatch|straw|strip|syringe|tank|tape|thermometer|timer|tray|tub|tube"
    r"|vial|weight|wire)(?:e?s)?\b",
    re.IGNORECASE,
)
"""Things whose size is given as a measure: with one of these, `25 mL` is the size and not an amount that is used up."""

_USED_UP = re.compile(
    r"[\s,;]*[(\[]?\b(?:used?[\s-]*up|consumed|consumables?|disposables?|single[\s-]use|thrown away)\b[)\]]?", re.IGNORECASE
)
_SPARE = re.compile(
    rf"[\s,;]*(?:\bplus\b|\band\b|\+)?\s*(?:\bspares?:?\s*({LOOSE_NUMBER})\b|\b({LOOSE_NUMBER})\s+(?:spares?|extras?)\b)"
    r"|[\s,;]*\+\s*(\d{1,4})\b",
    re.IGNORECASE,
)
_FOR = re.compile(
    rf"[\s,;]*(?:\b(?:per|for|each|every|a)\b|/)\s*(?:(?:each|every|the(?:\s+whole)?|whole)\s+)?(?:({LOOSE_NUMBER})\s*)?"
    rf"({'|'.join(sorted(_WHO, key=len, reverse=True))})s?\b[.\s]*$",
    re.IGNORECASE,
)
_EACH = re.compile(r"[\s,;]*\b(each|apiece|total|altogether|in all)\b[.\s]*$", re.IGNORECASE)
_QUANTITY = re.compile(rf"(?:{LOOSE_NUMBER}\s*(?:[-–—]|to)\s*)?({LOOSE_NUMBER})(?![\w.,]*\d)\s*(?:[x×*](?=\s)\s*)?", re.IGNORECASE)


def nearest(text: str) -> tuple[str, Material | None]:
    """Return what is wrong in words, and the line that was probably meant (None where nothing can be made of it)."""
    rest, used_up = _taken(_USED_UP, text)
    rest, spare = _taken(_SPARE, rest)
    rest, per, many, typed_for = _for_whom(rest)
    quantity, unit, item = _quantity(rest)
    item = re.sub(r"^of\s+|^[\s,;.:-]+|[\s,;.:-]+$|\s+per$", "", item)
    if not item:
        return f"this line names no thing: {text}", None
    amount = unit != "" and quantity is not None
    sized = amount and _MEASURED.search(item) is not None
    if quantity is None:
        what = "this line does not begin with how many"
    elif not typed_for:
        what = "this line does not end with for whom: per team, per 2 teams, per pair, per student, per station or per class"
    elif amount and not used_up:
        what = f"{_typed_amount(rest)} is an amount, and an amount is used up"
    else:
        what = f"this line of materials can't be read: {text}"
    number = quantity if quantity is not None else Decimal(1)
    if sized and not used_up:
        item, number, unit = f"{item} {number.normalize():f} {unit}", Decimal(1), ""
    elif not amount:
        if 0 < number < 1 and per is Per.TEAM and many == 1 and (1 / number) == int(1 / number):
            number, many = Decimal(1), int(1 / number)  # half a lemon each is one lemon for two teams
        number = up(number)
    extra = as_number(next(group for group in spare.groups() if group)) if spare else None
    if extra is not None and unit == "":
        extra = up(extra)
    likely = Material(max(number, Decimal("0.001")), item, per, many, unit, used_up=used_up is not None or unit != "", spare=extra)
    return what, likely


def _taken(form: re.Pattern[str], text: str) -> tuple[str, re.Match[str] | None]:
    found = form.search(text)
    return (text[: found.start()] + " " + text[found.end() :]).strip() if found else text, found


def _for_whom(text: str) -> tuple[str, Per, int, bool]:
    """The line without its end, for whom it counts, for how many of them, and whether that was said with `per`."""
    found = _FOR.search(text)
    if found is None:
        each = _EACH.search(text)
        if each is None:
            return text, Per.TEAM, 1, False
        return text[: each.start()], Per.STUDENT if each[1].lower() in ("each", "apiece") else Per.CLASS, 1, False
    who = _WHO[found[2].lower()]
    many = int(up(as_number(found[1]))) if found[1] and found[1].lower() not in ("a", "an") else 1
    if many > 1 and who is Per.STUDENT:
        return text[: found.start()], Per.PAIR if many == 2 else Per.TEAM, 1, True
    if many > 1 and who is Per.PAIR:
        return text[: found.start()], Per.TEAM, max(1, many // 2), True
    return text[: found.start()], who, many if who is Per.TEAM else 1, True


def _quantity(text: str) -> tuple[Decimal | None, str, str]:
    """How much, in which unit of measure ("" for things that are counted), and of what."""
    found = _QUANTITY.match(text)
    if found is None or (found[1].lower() in NUMBER_WORDS and not re.match(r"\s|$", text[found.end(1) :])):
        return None, "", text
    rest = text[found.end() :]
    word = re.match(r"[A-Za-zµ]+(?![\w-])\.?", rest)
    symbol = SYMBOL.get(word[0].rstrip(".")) if word else None
    named_after = word is not None and word[0] in ("meter", "foot") and re.match(r"\s+(?:stick|rule|tape)", rest[word.end() :])
    if word is None or symbol is None or named_after:
        return as_number(found[1]), "", rest
    return as_number(found[1]), symbol, rest[word.end() :].strip()


def _typed_amount(text: str) -> str:
    return " ".join(text.split()[:2])
