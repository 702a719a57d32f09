"""The three stations as pages name them: word, letter-independent class, icon; and their minutes as a bar to scale."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby

from trivet.model.station import Kind
from trivet.pages.scale import length_class
from trivet.pages.spoken import minutes
from trivet.pages.words import Words
from trivet.planning.minutes import Part, StationMinutes


@dataclass(frozen=True, slots=True)
class Tag:
    """A station's name and the class that gives it icon, pattern and hue; the class is its anchor too."""

    css: str
    name: str


@dataclass(frozen=True, slots=True)
class Segment:
    """A stretch of a bar: classes that place it, the few characters that fit on it, and the same in full for a screen reader."""

    css: str
    short: str
    full: str


@dataclass(frozen=True, slots=True)
class StationBar:
    """What a station needs, to scale over the round. `over` is the class of the whole."""

    over: str
    segments: tuple[Segment, ...]
    need: str
    round: str


def tag(kind: Kind, words: Words) -> Tag:
    """Return how pages name a station."""
    css = kind.value.replace("_", "-")
    return Tag(css, words(f"station.{kind.value}"))


def tags(words: Words) -> tuple[Tag, ...]:
    """Return all three, in order."""
    return tuple(tag(kind, words) for kind in Kind)


def station_bar(station: StationMinutes, round_minutes: float, words: Words) -> StationBar:
    """Return the parts of a station's minutes and what is left of the round, dashed."""
    whole = max(round_minutes, station.minutes)
    segments = []
    at = 0.0
    for name, part, count in _merged(station.parts, words):
        length = part.minutes * count
        times = part.times * count
        segments.append(
            Segment(_placed(at, length), _short(length, times, whole), words("bar.part", name=name, minutes=minutes(length))),
        )
        at += length
    left = whole - at
    if left > 0:
        segments.append(Segment(f"spare {_placed(at, left)}", minutes(left), words("bar.left", minutes=minutes(left))))
    return StationBar(length_class("n", whole), tuple(segments), minutes(station.minutes), minutes(round_minutes))


def _merged(parts: Iterable[Part], words: Words) -> Iterator[tuple[str, Part, int]]:
    """Put questions, and check items, of equal length into one stretch each."""
    for (kind, _, index), group in groupby(parts, key=lambda p: (p.kind, p.half_minutes, p.index if p.kind == "step" else None)):
        members = list(group)
        yield words(f"bar.{kind}", n=(index or 0) + 1 if kind == "step" else len(members)), members[0], len(members)


def _placed(at: float, length: float) -> str:
    return f"{length_class('at', at)} {length_class('m', length)}"


def _short(length: float, times: int, whole: float) -> str:
    """As much as fits: `4 × 2`, else the sum, else nothing. Widths are for the narrowest phone, 12 px a character."""
    share = length / whole
    if times > 1 and share >= 0.11:
        return f"{times} × {minutes(length / times)}"
    return minutes(length) if share >= 0.035 else ""
