"""Numbers, times and amounts as a teacher reads them on a page."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, time
from decimal import Decimal
from fractions import Fraction

from trivet.model.station import Material
from trivet.pages.words import Words
from trivet.planning.measures import as_decimal, briefly

TEN_THOUSAND = 10_000


def minutes(value: float) -> str:
    """Return whole minutes as `7` and half minutes as `7½` (`½` for half a minute)."""
    whole = int(value)
    half = value - whole >= 0.5
    return f"{whole or ''}½" if half else str(whole)


def clock(when: time) -> str:
    """Return a clock time as a school says it: 8:05, 1:35."""
    return f"{(when.hour - 1) % 12 + 1}:{when.minute:02d}"


def short_date(day: date, words: Words) -> str:
    """Return a date without its year: Mon Nov 30."""
    return words("date.short", weekday=weekday(day, words), month=month(day, words), day=day.day)


def long_date(day: date, words: Words) -> str:
    """Return a date with its year: Mon Nov 30, 2026."""
    return words("date.long", weekday=weekday(day, words), month=month(day, words), day=day.day, year=day.year)


def month_day(day: date, words: Words) -> str:
    """Return a date without weekday and year: Nov 30."""
    return words("date.month_day", month=month(day, words), day=day.day)


def weekday(day: date, words: Words) -> str:
    """Return the short name of the day of the week."""
    return words(f"date.weekdays.{day.weekday()}")


def month(day: date, words: Words) -> str:
    """Return the short name of the month."""
    return words(f"date.months.{day.month}")


def number(value: Decimal) -> str:
    """Return a quantity without trailing zeros and without an exponent: 2.25, 60, 0.1, 40,000."""
    return f"{value.normalize():,f}"


def amount(value: Decimal, unit: str) -> str:
    """Return a quantity with its unit of measure, where it has one: 60 mL, 12."""
    return f"{number(value)} {unit}".rstrip()


def stock(value: Decimal, unit: str) -> str:
    """Return what a store holds, in a larger unit where it is ten thousand or more: 40 L, and 1,000 mL beside a need of 1,782 mL."""
    if value < TEN_THOUSAND:
        return amount(value, unit)
    said, brief = briefly(Fraction(value), unit)
    return amount(as_decimal(said), brief)


def material(line: Material, words: Words) -> str:
    """Return a line of materials as the author wrote it: 1 balance 0.1 g per 2 teams."""
    what = f"{amount(line.quantity, line.unit)} {line.item}"
    per = words("material.per", n=line.per_count, what=words(f"material.{line.per}", n=line.per_count))
    used_up = words("material.used_up") if line.used_up else ""
    spare = words("material.spare", count=number(line.spare)) if line.spare else ""
    return f"{what} {per}{used_up}{spare}"


def grades(span: tuple[int, int], words: Words) -> str:
    """Return the grades of a unit: grade 7, grades 6 to 8."""
    low, high = span
    return words("grades.one", grade=low) if low == high else words("grades.span", low=low, high=high)


def times(value: float, count: int, words: Words) -> str:
    """Return the time of a step: 3 min; 1 min, 3 times."""
    once = words("time.min", minutes=minutes(value))
    return once if count == 1 else words("time.repeated", once=once, count=count)


def span(values: Iterable[float], words: Words) -> str:
    """Return one number, or the least and the most: 2; 2 or 3; 2 to 5."""
    low, high = min(values := sorted(set(values))), max(values)
    if low == high:
        return minutes(low)
    key = "time.two" if len(values) == 2 else "time.many"
    return words(key, low=minutes(low), high=minutes(high))


def sentence_list(items: Iterable[str], words: Words) -> str:
    """Return names as a list inside a sentence: a; a and b; a, b and c."""
    parts = tuple(items)
    if len(parts) < 2:
        return "".join(parts)
    return words("list.and", first=", ".join(parts[:-1]), last=parts[-1])


def number_of(student: str) -> str:
    """Return the two digits of a student's number: 07 of p1-07."""
    return student.rpartition("-")[2]
