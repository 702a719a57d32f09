"""Whether students can see what a unit expects: two values must differ by more than their tolerances allow."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal
from fractions import Fraction
from itertools import combinations

from trivet.model.problem import Problem, Severity
from trivet.model.station import Expected
from trivet.model.unit import Unit
from trivet.planning.measures import as_decimal
from trivet.planning.say import say_number

_NUMBER = r"[-+−]?(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?|[-+−]?\.\d+"
_VALUE = re.compile(rf"(?:about|ca\.|circa|~|≈)?\s*(?P<number>{_NUMBER})\s*(?P<unit>(?![\d.,(]|to\b|or\b|and\b|[-–—])\S.*)?", re.IGNORECASE)
_TOLERANCE = re.compile(rf"(?:±|\+/-|\+-)?\s*(?P<number>{_NUMBER})\s*(?P<unit>.*)")


@dataclass(frozen=True, slots=True)
class _Known:
    """An expected value that could be read: number and tolerance in one unit, `index` in the author's list."""

    index: int
    of: str
    number: Fraction
    tolerance: Fraction
    unit: str


def check_shows(unit: Unit) -> Iterator[Problem]:
    """Yield a warning for two expected values of one unit of measure that differ by no more than their propagated tolerance.

    Propagated: the root of the sum of the squares (JCGM 100:2008, 5.1.2, for independent quantities). Where the difference exceeds
    it but not the sum of the tolerances, the worst case, that is advice. A value or tolerance that can't be read is left alone, with
    advice; one without a tolerance is left alone. Compared in exact fractions, by squares.
    """
    known: list[_Known] = []
    for index, expected in enumerate(unit.hands_on.expected):
        read = _read(index, expected)
        if isinstance(read, _Known):
            known.append(read)
        elif read:
            yield _unread(unit, index, expected, read)
    for one, other in combinations(known, 2):
        if one.unit == other.unit:
            yield from _apart(unit, one, other)


def _read(index: int, expected: Expected) -> _Known | str:
    """Read an expected value; else the name of the key that can't be read, or "" where there is nothing to compare by."""
    value = _VALUE.fullmatch(expected.value.strip())
    if value is None:
        return "value"
    if not expected.tolerance.strip():
        return ""
    tolerance = _TOLERANCE.fullmatch(expected.tolerance.strip())
    if tolerance is None:
        return "tolerance"
    unit, own = (_plain(match["unit"] or "") for match in (value, tolerance))
    number, many = _fraction(value["number"]), abs(_fraction(tolerance["number"]))
    if own in ("%", "percent") and unit != own:
        return _Known(index, expected.of, number, abs(number) * many / 100, unit)
    if own not in ("", unit):
        return "tolerance"
    return _Known(index, expected.of, number, many, unit)


def _plain(unit: str) -> str:
    """A unit without idle blanks: those around a slash or a dot don't count."""
    return re.sub(r"\s*([/·*])\s*", r"\1", " ".join(unit.split())).rstrip(".")


def _fraction(number: str) -> Fraction:
    return Fraction(Decimal(number.replace(",", "").replace("−", "-")))


def _apart(unit: Unit, one: _Known, other: _Known) -> Iterator[Problem]:
    difference = abs(one.number - other.number)
    squares = one.tolerance**2 + other.tolerance**2
    worst = one.tolerance + other.tolerance
    if difference > worst:
        return
    hidden = difference**2 <= squares
    allowed = _said_up((Decimal(squares.numerator) / squares.denominator).sqrt(), one.unit)
    at_worst = _said_up(Decimal(worst.numerator) / worst.denominator, one.unit)
    apart = f"they differ by {_said(difference, one.unit)}"
    if hidden:
        what = f"students cannot tell {other.of} from {one.of}: {apart}, their tolerances allow {allowed} (at worst {at_worst})"
    else:
        what = f"students may fail to tell {other.of} from {one.of}: {apart}, and at worst their tolerances allow {at_worst}"
    yield Problem(
        code="cannot-tell-apart" if hidden else "barely-told-apart",
        severity=Severity.WARNING if hidden else Severity.ADVICE,
        place=unit.places.find("stations", "hands-on", "expected", other.index, "value"),
        where=f"hands-on, expected {other.index + 1}",
        what=what,
        remedy=f"measure with a finer instrument or a larger sample, or choose cases more than {allowed if hidden else at_worst} apart",
    )


def _said(amount: Fraction, unit: str) -> str:
    return f"{say_number(as_decimal(amount))} {unit}".rstrip()


def _said_up(amount: Decimal, unit: str) -> str:
    """An amount rounded up to three figures, so that what is said is enough."""
    step = Decimal(1).scaleb(amount.adjusted() - 2) if amount else Decimal(1)
    return f"{say_number((amount / step).to_integral_value(ROUND_CEILING) * step)} {unit}".rstrip()


def _unread(unit: Unit, index: int, expected: Expected, key: str) -> Problem:
    said: Sequence[str] = (expected.value, "2.70 g/mL") if key == "value" else (expected.tolerance, "0.17 g/mL")
    hint = "in the unit of the value, or in %, " if key == "tolerance" else ""
    return Problem(
        code="expected-unread",
        severity=Severity.ADVICE,
        place=unit.places.find("stations", "hands-on", "expected", index, key),
        where=f"hands-on, expected {index + 1}",
        what=f"the {key} {said[0]} can't be compared with others",
        remedy=f"write a number and its unit, {hint}such as `{key}: {said[1]}`",
    )
