"""The planned days of a run as bars to scale, with a legend that names every length."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from trivet.model.plan import Block, Day, Plan
from trivet.model.station import Kind
from trivet.pages.scale import length_class
from trivet.pages.spoken import clock, minutes, month_day, span, weekday
from trivet.pages.stations import Tag, tag, tags
from trivet.pages.words import Words
from trivet.planning.team_sizes import LETTERS


@dataclass(frozen=True, slots=True)
class Lane:
    """One station in a round: who works there (letters, or "" where groups are not public) and where."""

    letters: str
    station: Tag


@dataclass(frozen=True, slots=True)
class DaySegment:
    """A block of a day. A round has lanes; everything else has a short text that fits."""

    css: str
    short: str
    full: str
    lanes: tuple[Lane, ...] = ()


@dataclass(frozen=True, slots=True)
class DayBar:
    """One day, to scale over the longest day of the run."""

    weekday: str
    date: str
    segments: tuple[DaySegment, ...]


@dataclass(frozen=True, slots=True)
class Week:
    """All days of a run. `over` is the class of the longest day; `legend` names every length once."""

    over: str
    days: tuple[DayBar, ...]
    legend: str


def week(plan: Plan, words: Words) -> Week:
    """Return the days of a plan as bars."""
    longest = max((day.minutes for day in plan.days), default=1)
    return Week(
        length_class("n", longest),
        tuple(_day_bar(plan, day, longest, words) for day in plan.days),
        legend(plan, words),
    )


def lanes(plan: Plan, number: int, on: date, words: Words) -> tuple[Lane, ...]:
    """Return the lanes of a round: by letter where groups are public, one lane for a whole class, else three without letters."""
    where = stations_of(plan, number, on)
    if where is None:
        return tuple(Lane("", station) for station in tags(words))
    if len(set(where.values())) == 1:
        return (Lane("".join(where), tag(next(iter(where.values())), words)),)
    return tuple(Lane(letter, tag(kind, words)) for letter, kind in where.items())


def stations_of(plan: Plan, number: int, on: date) -> Mapping[str, Kind] | None:
    """Return where each group is in a round on a date, in order of letters, or None where it is not public.

    A round that was stopped stands in the plan once for each of its days, and a group may miss one of them.
    """
    found = next((each.stations for each in plan.rounds if (each.round, each.date) == (number, on)), None)
    return None if found is None else {letter: found[letter] for letter in LETTERS if letter in found}


def block_name(block: Block, words: Words) -> str:
    """Return what a block is called."""
    return words(f"block.{block.kind}", n=block.round or 0)


def legend(plan: Plan, words: Words) -> str:
    """Return every kind of block with its minutes, once, in the order of the days."""
    lengths: dict[str, list[float]] = {}
    for day in plan.days:
        for block in day.blocks:
            lengths.setdefault(block.kind, []).append(block.minutes)
    parts = [words("bar.legend", name=words(f"block.in_legend.{kind}"), minutes=span(found, words)) for kind, found in lengths.items()]
    left = words("bar.legend_left") if any(day.surplus_minutes for day in plan.days) else ""
    return ", ".join(parts) + "." + left


def _day_bar(plan: Plan, day: Day, longest: int, words: Words) -> DayBar:
    segments = [_segment(plan, day, block, longest, words) for block in day.blocks]
    if day.surplus_minutes:
        at = day.blocks[-1].at + day.blocks[-1].minutes if day.blocks else 0
        left = words("bar.left", minutes=minutes(day.surplus_minutes))
        fits = _fitting(left, day.surplus_minutes, longest)
        segments.append(DaySegment(_css("spare", at, day.surplus_minutes, longest), fits, left))
    return DayBar(weekday(day.date, words), month_day(day.date, words), tuple(segments))


def _segment(plan: Plan, day: Day, block: Block, longest: int, words: Words) -> DaySegment:
    name = block_name(block, words)
    full = words("bar.block", name=name, minutes=minutes(block.minutes), clock=clock(block.start))
    if block.kind == "station" and block.round is not None:
        found = lanes(plan, block.round, day.date, words)
        who = ", ".join(f"{lane.letters} {lane.station.name}".strip() for lane in found)
        return DaySegment(_css("round", block.at, block.minutes, longest), "", f"{full}: {who}", found)
    short = words("bar.short", name=words(f"block.in_legend.{block.kind}"), minutes=minutes(block.minutes))
    return DaySegment(_css("", block.at, block.minutes, longest), _fitting(short, block.minutes, longest), full)


def _fitting(text: str, length: float, longest: int) -> str:
    """Return the words where they fit beside each other, else the minutes, else nothing. Shares are for a bar of 650 px."""
    percent = length / longest * 100
    if percent >= 1.05 * len(text):
        return text
    return minutes(length) if percent >= 1.2 else ""


def _css(kind: str, at: float, length: float, longest: int) -> str:
    """Place a segment; one too thin for a line of type down the phone is `slim`."""
    slim = "slim" if length / longest < 0.055 else ""
    return " ".join(part for part in (kind, slim, length_class("at", at), length_class("m", length)) if part)
