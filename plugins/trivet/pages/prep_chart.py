"""Need against have, drawn: one square a thing, day by day; squares above what there is are hollow."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction
from math import ceil

from trivet.pages.scale import length_class
from trivet.pages.spoken import weekday
from trivet.pages.words import Words
from trivet.planning.stores.moments import Moment
from trivet.planning.stores.needs import Reusable

MOST = 48
"""Squares that fit side by side on the narrowest phone; beyond, a square stands for several things."""

SCHOOL_DAYS = 5


@dataclass(frozen=True, slots=True)
class Stack:
    """Classes that have things out together: squares that are there, squares that are missing; `text` says what the squares show."""

    who: str
    filled: int
    hollow: int
    need: int
    text: str


@dataclass(frozen=True, slots=True)
class ChartDay:
    """A day of the week; `hot` where something is missing. A day without a lesson has no stack."""

    name: str
    hot: bool
    stacks: tuple[Stack, ...]


@dataclass(frozen=True, slots=True)
class Chart:
    """`css` carries how many squares the scale has and at which the dashed line stands."""

    css: str
    caption: str
    line: str
    days: tuple[ChartDay, ...]


def chart(lack: Reusable, monday: date, words: Words) -> Chart:
    """Return the week of something that is short."""
    have = lack.pool.have or Fraction(0)
    each = max(1, -(-ceil(lack.need) // MOST))
    days = sorted({monday + timedelta(days=number) for number in range(SCHOOL_DAYS)} | {moment.date for moment in lack.moments})
    kind = "device" if lack.pool.device else "thing"
    caption = words("prep.in_use") if each == 1 else words("prep.in_use_by", n=each)
    return Chart(
        css=f"{length_class('n', _squares(Fraction(lack.need), each))} {length_class('at', int(have * 2 / each) / 2)}",
        caption=caption,
        line=words(f"prep.line.{kind}", have=int(have)),
        days=tuple(_day(day, [moment for moment in lack.moments if moment.date == day], have, each, words) for day in days),
    )


def _day(day: date, moments: list[Moment], have: Fraction, each: int, words: Words) -> ChartDay:
    stacks = tuple(_stack(moment, have, each, words) for moment in moments)
    return ChartDay(weekday(day, words), any(moment.short for moment in moments), stacks)


def _stack(moment: Moment, have: Fraction, each: int, words: Words) -> Stack:
    whole = _squares(moment.need, each)
    there = min(whole, _squares(have, each)) if moment.short else whole
    text = words("prep.over", n=ceil(moment.short)) if moment.short else ""
    return Stack(" ".join(moment.classes), there, whole - there, ceil(moment.need), text)


def _squares(amount: Fraction, each: int) -> int:
    return ceil(amount / each)
